import { describe, expect, it } from 'vitest';
import { pointsInOrder } from '#drawing/proof/points-in-order.ts';
import { pointProofOf } from '#tests/engine/rules/proof-facts.ts';
import { demoPicture, demoPictures } from './demo-pictures.ts';

describe('the points of a circuit in order', () => {
  it('begins at end A of the ring', () => {
    const { proof, picture } = demoPicture('saltglass-row found ring-house handbook');
    expect(pointsInOrder(proof, picture).map(({ point }) => point.slice(0, 2))).toEqual([
      ...['r1', 'r2', 'r3', 'r4', 'r5', 'r6', 'r7', 'r8', 'r9'],
      's1',
    ]);
  });

  it('tells every point once, those that no cable reaches after all others', () => {
    for (const { proof, picture } of demoPictures()) {
      const points = [pointProofOf('nowhere', { dropV: null }), ...proof.points];
      const inOrder = pointsInOrder({ ...proof, points }, picture);
      expect(new Set(inOrder)).toEqual(new Set(points));
      expect(inOrder).toHaveLength(points.length);
      const isReached = inOrder.map(({ dropV }) => dropV !== null);
      expect(isReached).toEqual(isReached.toSorted((a, b) => Number(b) - Number(a)));
    }
  });
});
