import { describe, expect, it } from 'vitest';
import { spurCount } from '#engine/rules/spur-count.ts';
import { factsOf, nodeOf, pointOf, saidBy, shapeOf, spurOf, unitOf } from './facts-builder.ts';

/** Two ring points (a twin and a single) and a joint; so many spurs of one outlet, and fused ones beside. */
function facts(spurs: number, fused = 0, maximumSpurs?: number) {
  const ids = Array.from({ length: spurs }, (_, i) => `w${i}`);
  const units = Array.from({ length: fused }, (_, i) => `u${i}`);
  return factsOf({
    job: {
      points: [
        pointOf('r1'),
        pointOf('r2', { kind: 'socket-single' }),
        ...ids.map((id) => pointOf(id)),
        ...units.map((id) => pointOf(id, { kind: 'fused-unit' })),
      ],
    },
    proposed: {
      nodes: [
        nodeOf('r1'),
        nodeOf('r2'),
        nodeOf('j', { kind: 'joint' }),
        ...[...ids, ...units].map((id) => nodeOf(id)),
      ],
    },
    things: { fusedUnits: units.map((id) => unitOf(id)) },
    limits: maximumSpurs === undefined ? {} : { maximumSpurs },
    shapes: [
      shapeOf('c', {
        ringNodes: ['r1', 'j', 'r2'],
        spurs: [...ids, ...units].map((id) => spurOf(`spur@${id}`, { accessoryNodes: [id], isNew: true })),
      }),
    ],
  });
}

describe('the number of unfused spurs', () => {
  it('[SP4] passes at exactly the number of points in the ring, joints left out', () => {
    expect(saidBy(spurCount, facts(2))).toEqual([
      { outcome: 'passes', messageId: 'within', subjectId: 'c', origin: 'scheme', actual: 2, limit: 2 },
    ]);
  });

  it('[SP4] never counts fused spurs', () => {
    expect(saidBy(spurCount, facts(2, 5))).toMatchObject([{ outcome: 'passes', actual: 2 }]);
  });

  it('[SP4] asks for a decision past it, and shows the count by outlets where that differs', () => {
    expect(saidBy(spurCount, facts(3))).toMatchObject([
      { outcome: 'decide', messageId: 'within-twice', actual: 3, limit: 2 },
    ]);
    expect(saidBy(spurCount, facts(4))).toMatchObject([
      { outcome: 'decide', messageId: 'over', actual: 4, limit: 2 },
    ]);
  });

  it('[SP4] follows the firm’s own limit', () => {
    expect(saidBy(spurCount, facts(2, 0, 1))).toMatchObject([
      { outcome: 'decide', messageId: 'over-firm', limit: 1 },
    ]);
    expect(saidBy(spurCount, facts(1, 0, 1))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[SP4] is not proven where the ring is not told', () => {
    const untold = factsOf({ shapes: [shapeOf('c', { shape: 'unknown', claimed: 'ring' })] });
    expect(saidBy(spurCount, untold)).toMatchObject([{ outcome: 'not-proven', messageId: 'notTold' }]);
  });
});
