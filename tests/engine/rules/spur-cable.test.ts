import { describe, expect, it } from 'vitest';
import type { CableCapacity, WorstStretch } from '#engine/proof/cable-capacity.ts';
import { spurCable } from '#engine/rules/spur-cable.ts';
import {
  capacityOf,
  edgeOf,
  factsOf,
  nodeOf,
  pointOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  spurOf,
  twinOf,
} from './facts-builder.ts';

function facts(capacity: Partial<CableCapacity>, lineMm2: number | null = 2.5, accessories = ['w1']) {
  const cable = lineMm2 === null ? null : twinOf(lineMm2);
  return factsOf({
    job: { points: ['r1', 'w1', 'w2'].map((id) => pointOf(id)) },
    proposed: {
      nodes: ['r1', 'w1', 'w2'].map((id) => nodeOf(id)),
      edges: [edgeOf('e1', 'r1', 'w1', { state: 'new', cable })],
    },
    capacities: [capacityOf('e1', capacity)],
    shapes: [
      shapeOf('c', {
        spurs: [spurOf('spur@e1', { edgeIds: ['e1'], accessoryNodes: accessories, isNew: true })],
      }),
    ],
  });
}

const atBest = (izA: number, method: string): WorstStretch => ({
  izA,
  method,
  worstSegment: 0,
  worstFromMm: 0,
  groupFactor: 1,
  insulationFactor: 1,
  grade: 'seen',
});

describe('the cable of an unfused spur', () => {
  it('[SP5] passes at exactly 20 A', () => {
    expect(saidBy(spurCable, facts({ izA: 20, method: 'A' }))).toEqual([
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

  it.each([
    ['101', 17],
    ['103', 13.5],
  ])('[SP5] fails 2.5 mm² by method %s, %d A', (method, izA) => {
    expect(saidBy(spurCable, facts({ izA, method, worstFromMm: 1400 }))).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle', actual: izA, limit: 20 },
    ]);
  });

  it('[SP5] fails 1.5 mm², whatever it carries, and shows that sources differ', () => {
    expect(saidBy(spurCable, facts({ izA: 20 }, 1.5))).toMatchObject([
      { outcome: 'fails', messageId: 'tooThin', actual: 1.5, limit: 2.5, unit: 'mm²' },
    ]);
    expect(spurCable.messages.tooThin).toContain('Sources differ');
  });

  it('[SP5] leaves 4 mm² to several outlets to a designer', () => {
    expect(saidBy(spurCable, facts({ izA: 37 }, 4, ['w1', 'w2']))).toMatchObject([
      { outcome: 'decide', messageId: 'needsDesign', actual: 4 },
    ]);
    expect(saidBy(spurCable, facts({ izA: 17.5, method: '103' }, 4, ['w1', 'w2']))).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle', actual: 17.5 },
    ]);
    expect(saidBy(spurCable, facts({ izA: 27 }, 2.5, ['w1', 'w2']))).toHaveLength(1);
  });

  it('[SP5] is not proven without a size or a way', () => {
    expect(saidBy(spurCable, facts({ izA: 27 }, null))).toMatchObject([
      { outcome: 'not-proven', messageId: 'sizeUnknown' },
    ]);
    expect(saidBy(spurCable, facts({ izA: null, atBest: atBest(27, 'C') }))).toMatchObject([
      { outcome: 'not-proven', messageId: 'methodUnknown' },
    ]);
  });

  it('[SP5] fails on a stretch that is told even where another is not', () => {
    expect(saidBy(spurCable, facts({ izA: null, atBest: atBest(17, '101') }))).toMatchObject([
      { outcome: 'fails', actual: 17 },
    ]);
  });

  it('[SP5] is not proven in a void of unknown insulation: 17 A at the worst, 27 A at the best', () => {
    const band = { izA: 17, method: '101', atBest: atBest(27, 'C') };
    expect(saidBy(spurCable, facts(band))).toMatchObject([
      { outcome: 'not-proven', messageId: 'methodUnknown', limit: 20 },
    ]);
  });

  it('[SP5] shows the factor of insulation all round, and another way only where insulation is there', () => {
    const values = (capacity: Partial<CableCapacity>) => spurCable.check(facts(capacity))[0]?.values;
    const surrounded = values({ izA: 13.5, method: 'C', insulationFactor: 0.5 });
    expect(surrounded).toMatchObject({ how: 'method C × 0.5 for insulation all round it' });
    expect(surrounded?.otherWay).toContain('insulation');
    expect(values({ izA: 13.5, method: '103' })?.otherWay).toContain('insulation');
    expect(values({ izA: 18.4, method: 'B', groupFactor: 0.8 })?.otherWay).not.toContain('insulation');
    expect(values({ izA: 16, method: 'C' })).toMatchObject({ otherWay: '', along: '' });
  });

  it('[SP5] has words of its own for 1.5 mm² up to a fused unit, which is no single outlet', () => {
    const known = facts({ izA: 20 }, 1.5);
    const points = new Map([['w1', pointOf('w1', { kind: 'fused-unit' })]]);
    expect(saidBy(spurCable, { ...known, plan: { ...known.plan, pointById: points } })).toMatchObject([
      { outcome: 'fails', messageId: 'tooThinToUnit', actual: 1.5, limit: 2.5 },
    ]);
    expect(`${spurCable.messages.tooThinToUnit}${spurCable.remedies.tooThinToUnit}`).not.toContain('outlet');
  });

  it('[SP5] never calls a found cable short by a path that is only likely', () => {
    const known = facts({ izA: 17, method: '101' });
    const edges = [edgeOf('e1', 'r1', 'w1')];
    const found = { ...known, proposed: { ...known.proposed, edges } };
    expect(saidBy(spurCable, found)).toMatchObject([{ outcome: 'not-proven', origin: 'found' }]);
    const pinned = { ...found, foundRuns: new Map([['e1', runOf('e1', [segmentOf()], { pinned: true })]]) };
    expect(saidBy(spurCable, pinned)).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });
});
