import { describe, expect, it } from 'vitest';
import type { CableJoint } from '#engine/connections/things.ts';
import { jointRating } from '#engine/rules/joint-rating.ts';
import { circuitOf, factsOf, jointOf, saidBy, shapeOf } from './facts-builder.ts';

const said = (joint: Partial<CableJoint>) =>
  saidBy(jointRating, factsOf({ shapes: [shapeOf('c')], things: { joints: [jointOf('k1/joint', joint)] } }));

describe('the rating of joints', () => {
  it('[JN1] passes at exactly the device, 32 A on 32 A', () => {
    expect(said({})).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'k1/joint',
        origin: 'scheme',
        actual: 32,
        limit: 32,
        unit: 'A',
      },
    ]);
  });

  it('[JN1] fails a new joint of 30 A, and of 20 A, on a 32 A ring', () => {
    expect(said({ ratingA: 30 })).toMatchObject([{ outcome: 'fails', messageId: 'tooSmall', actual: 30 }]);
    expect(said({ ratingA: 20 })).toMatchObject([{ outcome: 'fails', actual: 20 }]);
  });

  it('[JN1] passes a 20 A joint behind a 13 A fuse', () => {
    const upstream = { kind: 'fuse', ratingA: 13 } as const;
    expect(said({ ratingA: 20, upstream, inRing: false })).toMatchObject([{ outcome: 'passes', limit: 13 }]);
  });

  it('[JN1] advises on a 30 A box found on a 32 A ring, and fails a 20 A one', () => {
    expect(said({ ratingA: 30, state: 'found' })).toMatchObject([
      { outcome: 'advice', messageId: 'oldBox', origin: 'found' },
    ]);
    expect(said({ ratingA: 20, state: 'found' })).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  it('[JN1] advises 32 A in a ring whose device is smaller', () => {
    const upstream = { kind: 'device', ratingA: 30 } as const;
    expect(said({ ratingA: 30, upstream })).toMatchObject([
      { outcome: 'advice', messageId: 'ringPractice', limit: 32 },
    ]);
  });

  it('[JN1] gives a found joint to the scheme where the scheme fits a larger device before it', () => {
    const facts = factsOf({
      job: { circuits: [circuitOf('c')] },
      shapes: [shapeOf('c')],
      things: {
        joints: [jointOf('j', { state: 'found', upstream: { kind: 'device', ratingA: 40 } })],
      },
    });
    const device = { standard: 'BS-EN-61009', ratingA: 40 } as const;
    const circuits = facts.found.circuits.map((circuit) => ({ ...circuit, device }));
    const raised = { ...facts, proposed: { ...facts.proposed, circuits } };
    expect(saidBy(jointRating, raised)).toMatchObject([{ outcome: 'fails', origin: 'scheme' }]);
    expect(saidBy(jointRating, facts)).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  it('[JN1] is not proven without the device or the rating', () => {
    expect(said({ upstream: { kind: 'unknown', ratingA: null } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'upstreamUnknown' },
    ]);
    expect(said({ source: 'unknown', ratingA: 0, state: 'found' })).toMatchObject([
      { outcome: 'not-proven', messageId: 'ratingUnknown', origin: 'found' },
    ]);
  });
});
