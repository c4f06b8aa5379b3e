import { describe, expect, it } from 'vitest';
import { capacityOfRun } from '#engine/proof/capacity-of-run.ts';
import { ringCable } from '#engine/rules/ring-cable.ts';
import {
  capacityOf,
  edgeOf,
  factsOf,
  nodeOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  twinOf,
} from './facts-builder.ts';

const facts = (edge: ReturnType<typeof edgeOf>, capacity: ReturnType<typeof capacityOf>) =>
  factsOf({
    proposed: { nodes: [nodeOf('r1'), nodeOf('w1')], edges: [edge] },
    capacities: [capacity],
    shapes: [shapeOf('c', { ringEdges: [edge] })],
  });

const leg = edgeOf('e1', 'r1', 'w1', { state: 'new' });

describe('the cable of the ring as installed', () => {
  it('[CA1] passes at exactly 20 A', () => {
    expect(saidBy(ringCable, facts(leg, capacityOf('e1', { izA: 20, method: 'A' })))).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'e1',
        origin: 'scheme',
        actual: 20,
        limit: 20,
        unit: 'A',
      },
    ]);
  });

  it('[CA1] fails two legs in one channel: 18.4 A, and names the metre', () => {
    const run = runOf('e1', [
      segmentOf({ lengthMm: 2100 }),
      segmentOf({ medium: 'surface-channel', containment: 'channel', bundle: 'pair' }),
    ]);
    const capacity = capacityOfRun(run, { plan: factsOf().plan, cablesInBundle: new Map([['pair', 2]]) });
    const known = facts(leg, capacity);
    expect(saidBy(ringCable, known)).toMatchObject([
      { outcome: 'fails', messageId: 'grouped', actual: 18.4, limit: 20 },
    ]);
    expect(ringCable.check(known)[0]?.values).toMatchObject({
      along: ', from 2.1 m along',
      how: 'method B × 0.8 for cables together',
    });
  });

  it('[CA1] fails 1.5 mm² in a ring', () => {
    const thin = edgeOf('e1', 'r1', 'w1', { state: 'new', cable: twinOf(1.5, 1) });
    expect(saidBy(ringCable, facts(thin, capacityOf('e1')))).toMatchObject([
      { outcome: 'fails', messageId: 'tooThin', actual: 1.5, limit: 2.5 },
    ]);
  });

  it('[CA1] is not proven for a new leg whose way is not told', () => {
    expect(saidBy(ringCable, facts(leg, capacityOf('e1', { izA: null })))).toMatchObject([
      { outcome: 'not-proven', messageId: 'methodUnknown', origin: 'scheme' },
    ]);
  });

  it('[CA1] is not proven for a new leg in a void of unknown insulation', () => {
    const run = runOf('e1', [segmentOf({ medium: 'void-along' })]);
    const capacity = capacityOfRun(run, { plan: factsOf().plan, cablesInBundle: new Map() });
    expect(saidBy(ringCable, facts(leg, capacity))).toMatchObject([
      { outcome: 'not-proven', messageId: 'methodUnknown' },
    ]);
  });

  it('[CA1] tells found legs whose path nobody saw once a circuit, as found', () => {
    const unseen = facts(edgeOf('l1', 'r1', 'w1'), capacityOf('l1', { izA: 17, method: '101' }));
    expect(saidBy(ringCable, unseen)).toEqual([
      {
        outcome: 'not-proven',
        messageId: 'foundNotSeen',
        subjectId: 'c',
        origin: 'found',
        limit: 20,
        unit: 'A',
      },
    ]);
    expect(ringCable.remedies.foundNotSeen).toBeDefined();
    const seen = { ...unseen, foundRuns: new Map([['l1', runOf('l1', [segmentOf()], { pinned: true })]]) };
    expect(saidBy(ringCable, seen)).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle', origin: 'found' },
    ]);
    const guessed = runOf('l1', [segmentOf({ certainty: 'assumed' })], { pinned: true });
    expect(saidBy(ringCable, { ...seen, foundRuns: new Map([['l1', guessed]]) })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
  });
});
