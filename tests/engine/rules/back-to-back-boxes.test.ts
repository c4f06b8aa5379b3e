import { describe, expect, it } from 'vitest';
import { backToBackBoxes } from '#engine/rules/back-to-back-boxes.ts';
import { boxOf, pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

// Two twin plates of 146 mm: their centres stand 146 mm further apart than their edges.
const said = (otherAlongMm: number, party = false, side: 'left' | 'right' = 'right') =>
  saidBy(
    backToBackBoxes,
    houseOf({
      wall: { party },
      points: [
        wantedOn(2000, 450),
        pointOf('q', { place: { wall: 's', side, alongMm: otherAlongMm, heightMm: 450 } }),
      ],
      things: { boxes: [boxOf('p')] },
    }),
  );

describe('boxes on the two faces of a wall', () => {
  it('[BX4] is silent at exactly 150 mm apart, edge to edge', () => {
    expect(said(2296)).toEqual([]);
  });

  it('[BX4] advises just nearer, and leaves it to be decided in a party wall', () => {
    expect(said(2295)).toMatchObject([{ outcome: 'advice', messageId: 'inside', actual: 149 }]);
    expect(said(2295, true)).toMatchObject([{ outcome: 'decide', messageId: 'separating' }]);
  });

  it('[BX4] is silent on neighbours on one face', () => {
    expect(said(2150, false, 'left')).toEqual([]);
  });
});
