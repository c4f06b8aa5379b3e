import { describe, expect, it } from 'vitest';
import type { CableCapacity } from '#engine/proof/cable-capacity.ts';
import { capacityOfRun } from '#engine/proof/capacity-of-run.ts';
import { ringCable } from '#engine/rules/ring-cable.ts';
import {
  capacityOf,
  edgeOf,
  factsOf,
  legOf,
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

  describe('beside new cable in one channel', () => {
    const leg = edgeOf('l1', 'r1', 'w1');
    const seen = runOf('l1', [segmentOf()], { pinned: true });
    const crowded = (izA: number, before: number, partial: Partial<CableCapacity> = {}) => ({
      ...facts(
        leg,
        capacityOf('l1', { izA, groupFactor: 0.8, ...partial, asFound: capacityOf('l1', { izA: before }) }),
      ),
      foundRuns: new Map([['l1', seen]]),
    });
    const told = (known: ReturnType<typeof crowded>) =>
      saidBy(ringCable, known).map(({ outcome, messageId, subjectId, origin }) => [
        outcome,
        messageId,
        subjectId,
        origin,
      ]);

    it('[CA1] blames the scheme for a found leg that met the limit without it', () => {
      expect(told(crowded(18.4, 23))).toEqual([['fails', 'grouped', 'l1', 'scheme']]);
      expect(told(crowded(18.4, 20))).toEqual([['fails', 'grouped', 'l1', 'scheme']]);
    });

    it('[CA1] blames what was found for a leg that fell short before', () => {
      expect(told(crowded(16.1, 18.4))).toEqual([['fails', 'grouped', 'l1', 'found']]);
    });

    it('[CA1] says nothing of a leg that still carries enough', () => {
      expect(told(crowded(21.6, 27))).toEqual([]);
    });

    it('[CA1] has not proved a leg that was proved before', () => {
      const best = {
        izA: 21.6,
        method: 'C',
        worstSegment: 0,
        worstFromMm: 0,
        groupFactor: 0.8,
        insulationFactor: 1,
        grade: 'seen',
      } as const;
      expect(told(crowded(17, 21, { atBest: best }))).toEqual([
        ['not-proven', 'methodUnknown', 'l1', 'scheme'],
      ]);
    });

    it('[CA1] tells the worse of two parts of one leg, once', () => {
      const part = (id: string) => edgeOf(id, 'r1', 'w1', { legId: 'l1' });
      const edges = ['l1/part-1', 'l1/part-2', 'l1/part-3'].map(part);
      const known = factsOf({
        proposed: { nodes: [nodeOf('r1'), nodeOf('w1')], edges },
        capacities: [18.4, 16.1, 17.3].map((izA, index) => capacityOf(`l1/part-${index + 1}`, { izA })),
        shapes: [shapeOf('c', { ringEdges: edges })],
        foundRuns: [seen],
      });
      expect(saidBy(ringCable, known)).toMatchObject([{ outcome: 'fails', subjectId: 'l1', actual: 16.1 }]);
    });

    it('[CA1] looks at circuits that the scheme does not touch otherwise, for what it brings about alone', () => {
      const beside = (before: number) => ({
        ...crowded(18.4, before),
        circuitIds: ['another'],
        job: { ...crowded(18.4, before).job, legs: [legOf('l1', 'r1', 'w1')] },
      });
      expect(told(beside(23))).toEqual([['fails', 'grouped', 'l1', 'scheme']]);
      expect(told(beside(18.4))).toEqual([]);
    });
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
    expect(ringCable.check(unseen)[0]?.values?.legs).toBe('1 leg');
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
