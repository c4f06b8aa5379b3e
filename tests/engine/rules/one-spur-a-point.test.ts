import { describe, expect, it } from 'vitest';
import { oneSpurAPoint } from '#engine/rules/one-spur-a-point.ts';
import { edgeOf, factsOf, nodeOf, nodePlaceOf, pointOf, saidBy, shapeOf, spurOf } from './facts-builder.ts';

const ring = (
  spurs: number,
  rootNode = 'r1',
  role: 'ring' | 'origin' | 'claimed-ring' = 'ring',
  cablesSeen?: number,
) =>
  factsOf({
    job: { points: [pointOf('r1', cablesSeen === undefined ? {} : { asFound: { cablesSeen } })] },
    proposed: { nodes: [nodeOf('r1'), nodeOf('c', { kind: 'origin', circuitId: 'c' })] },
    shapes: [
      shapeOf('c', {
        shape: role === 'claimed-ring' ? 'unknown' : 'ring',
        claimed: 'ring',
        spurs: Array.from({ length: spurs }, (_, i) => spurOf(`spur@e${i}`, { rootNode, isNew: i === 0 })),
        places: [nodePlaceOf(rootNode, { role })],
      }),
    ],
  });

describe('spurs from one point', () => {
  it('[SP2] passes at exactly one', () => {
    expect(saidBy(oneSpurAPoint, ring(1))).toEqual([
      { outcome: 'passes', messageId: 'one', subjectId: 'r1', origin: 'scheme', actual: 1, limit: 1 },
    ]);
  });

  it('[SP2] fails at two', () => {
    expect(saidBy(oneSpurAPoint, ring(2))).toMatchObject([
      { outcome: 'fails', messageId: 'several', actual: 2 },
    ]);
  });

  it('[SP2] leaves several at the origin to a designer', () => {
    expect(saidBy(oneSpurAPoint, ring(2, 'c', 'origin'))).toMatchObject([
      { outcome: 'decide', messageId: 'severalAtOrigin', subjectId: 'c' },
    ]);
  });

  it('[SP2] is not proven where nobody took the plate off', () => {
    expect(saidBy(oneSpurAPoint, ring(1, 'r1', 'claimed-ring'))).toMatchObject([
      { outcome: 'not-proven', messageId: 'cablesNotSeen' },
    ]);
  });

  it('[SP2] takes three cables seen for a spur that is there already, two for none', () => {
    expect(saidBy(oneSpurAPoint, ring(1, 'r1', 'claimed-ring', 3))).toMatchObject([{ outcome: 'fails' }]);
    expect(saidBy(oneSpurAPoint, ring(1, 'r1', 'claimed-ring', 2))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[SP2] takes a third cable that no leg tells of for a spur, as the terminals do', () => {
    const legs = (count: number) => Array.from({ length: count }, (_, i) => edgeOf(`l${i}`, 'r1', `p${i}`));
    const withLegs = (cablesSeen: number, count: number) => {
      const facts = ring(1, 'r1', 'ring', cablesSeen);
      return { ...facts, found: { ...facts.found, edges: legs(count) } };
    };
    expect(saidBy(oneSpurAPoint, withLegs(3, 2))).toMatchObject([
      { outcome: 'fails', messageId: 'alreadyThree' },
    ]);
    expect(saidBy(oneSpurAPoint, withLegs(3, 3))).toMatchObject([{ outcome: 'passes' }]);
    expect(saidBy(oneSpurAPoint, withLegs(2, 2))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[SP2] is not proven by a number that was only assumed', () => {
    const facts = ring(1, 'r1', 'claimed-ring', 2);
    const point = pointOf('r1', { asFound: { cablesSeen: 2 }, certainty: { cablesSeen: 'assumed' } });
    const plan = { ...facts.plan, pointById: new Map([['r1', point]]) };
    expect(saidBy(oneSpurAPoint, { ...facts, plan })).toMatchObject([
      { outcome: 'not-proven', messageId: 'cablesNotSeen' },
    ]);
  });
});
