import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { ringNeighbours } from '#engine/rules/ring-neighbours.ts';
import type { Leg, Point } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { Connection } from '#model/scheme.ts';
import {
  circuitOf,
  type FactsLiteral,
  factsOf,
  jobOf,
  legOf,
  networkOf,
  pointOf,
  saidBy,
  schemeOf,
  shapeOf,
} from './facts-builder.ts';

const extension: Extract<Connection, { kind: 'ring-extension' }> = {
  id: 'k1',
  kind: 'ring-extension',
  circuit: 'c',
  between: [{ point: 'r1' }, { point: 'r2' }],
  out: { how: 'terminals' },
  back: { how: 'terminals' },
  through: ['w1'],
};

interface Literal {
  readonly legs?: Leg[];
  readonly order?: Certainty;
  readonly r2?: Partial<Point>;
  readonly connection?: Connection;
  readonly proposed?: FactsLiteral['proposed'];
}

const factsWith = ({ legs = [], order, r2, connection = extension, proposed }: Literal) => {
  const job = jobOf({
    circuits: [circuitOf('c', { shape: 'ring', ...(order === undefined ? {} : { certainty: { order } }) })],
    points: [pointOf('r1'), pointOf('r2', r2), pointOf('w1', { status: 'wanted' })],
    legs,
  });
  return factsOf({
    job,
    plan: buildPlan(job),
    scheme: schemeOf([connection]),
    ...(proposed === undefined ? {} : { proposed }),
  });
};
const said = (literal: Literal) => saidBy(ringNeighbours, factsWith(literal));

describe('the two ends between which a ring is opened', () => {
  it('[RG5] are not proven where no cable is recorded between them, as the scheme’s own gap', () => {
    expect(said({})).toMatchObject([
      { outcome: 'not-proven', messageId: 'noLeg', subjectId: 'k1', origin: 'scheme' },
    ]);
    expect(ringNeighbours.couldFail).toBe(true);
  });

  it('[RG5] are not proven by an order of the ring that was measured while no cable says which', () => {
    expect(said({ order: 'measured' })).toMatchObject([{ outcome: 'not-proven', messageId: 'noLeg' }]);
  });

  it('[RG5] are not proven where the order of the ring is assumed, cables recorded or not', () => {
    for (const order of ['assumed', 'unknown'] as const)
      expect(said({ legs: [legOf('l', 'r2', 'r1')], order })).toMatchObject([
        { outcome: 'not-proven', messageId: 'orderAssumed', origin: 'scheme' },
      ]);
  });

  it('[RG5] pass where a cable of that circuit is recorded between them, whichever way', () => {
    expect(said({ legs: [legOf('l', 'r2', 'r1')] })).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ legs: [legOf('l', 'r1', 'r2', { circuit: 'other' })] })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
  });

  it('[RG5] fail at a point where a spur, or one cable, was seen; not where that is assumed', () => {
    expect(said({ r2: { asFound: { role: 'spur' } } })).toMatchObject([
      { outcome: 'fails', messageId: 'offRing' },
    ]);
    expect(said({ r2: { asFound: { cablesSeen: 1 } } })).toMatchObject([{ outcome: 'fails' }]);
    expect(said({ r2: { asFound: { cablesSeen: 2 } } })).toMatchObject([{ outcome: 'not-proven' }]);
    expect(said({ r2: { asFound: { role: 'spur' }, certainty: { asFound: 'assumed' } } })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
  });

  it('[RG5] reads the origin as an end too', () => {
    const connection = { ...extension, between: [{ origin: 'c', end: 'A' }, { point: 'r2' }] } as Connection;
    expect(said({ connection })).toMatchObject([{ outcome: 'not-proven' }]);
    expect(said({ connection, legs: [legOf('l', 'c', 'r2')] })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[RG5] leaves what cannot be made as written to the rule that says so', () => {
    const problem = { code: 'not-neighbours', connectionId: 'k1', subjectId: 'k1' } as const;
    expect(said({ proposed: networkOf({ problems: [problem] }) })).toEqual([]);
  });

  it('[RG5] of a radial speak of what one feeds, and a point where it ends may be one of them', () => {
    const ofRadial = (literal: Literal) =>
      saidBy(ringNeighbours, {
        ...factsWith(literal),
        foundShapes: new Map([['c', shapeOf('c', { shape: 'radial', claimed: 'radial' })]]),
      });
    const legs = [legOf('l', 'r1', 'r2')];
    expect(ofRadial({ legs })).toMatchObject([{ outcome: 'passes', messageId: 'radialJoined' }]);
    expect(ofRadial({ legs, order: 'assumed' })).toMatchObject([
      { outcome: 'not-proven', messageId: 'radialOrderAssumed', origin: 'scheme' },
    ]);
    expect(ofRadial({ r2: { asFound: { cablesSeen: 1 } } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'radialNoLeg' },
    ]);
  });

  it('[RG5] tells how to prove it', () => {
    for (const word of ['plates of both', 'continuity between the two'])
      expect(ringNeighbours.remedies.noLeg).toContain(word);
  });
});
