import { describe, expect, it } from 'vitest';
import type { CableCapacity } from '#engine/proof/cable-capacity.ts';
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
      { outcome: 'passes', actual: 37 },
      { outcome: 'decide', messageId: 'needsDesign', actual: 4 },
    ]);
    expect(saidBy(spurCable, facts({ izA: 27 }, 2.5, ['w1', 'w2']))).toHaveLength(1);
  });

  it('[SP5] is not proven without a size or a way', () => {
    expect(saidBy(spurCable, facts({ izA: 27 }, null))).toMatchObject([
      { outcome: 'not-proven', messageId: 'sizeUnknown' },
    ]);
    expect(saidBy(spurCable, facts({ izA: null, knownIzA: 27 }))).toMatchObject([
      { outcome: 'not-proven', messageId: 'methodUnknown' },
    ]);
  });

  it('[SP5] fails on a stretch that is told even where another is not', () => {
    expect(saidBy(spurCable, facts({ izA: null, knownIzA: 17, method: '101' }))).toMatchObject([
      { outcome: 'fails', actual: 17 },
    ]);
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
