import { describe, expect, it } from 'vitest';
import { platesApart } from '#engine/rules/plates-apart.ts';
import { pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

/** What is said of a wanted twin at 2000 mm along and 450 mm up, with another point on the same wall. */
const said = (
  alongMm: number,
  heightMm: number,
  other: { side?: 'left' | 'right'; status?: 'existing' | 'removed' | 'replaced' } = {},
) => {
  const { side = 'left', status = 'existing' } = other;
  const point = pointOf('q', { status, place: { wall: 's', side, alongMm, heightMm } });
  return saidBy(platesApart, houseOf({ points: [wantedOn(2000, 450), point] }));
};

// BS 4662 plates, from memory: a twin is 146 mm wide, a single 86 mm, and both are 86 mm high.
describe('the plate of a new point', () => {
  it('[PO13] fails on top of another, and beside it where the two overlap', () => {
    expect(said(2000, 450)).toMatchObject([
      { outcome: 'fails', messageId: 'covers', subjectId: 'p', actual: 0 },
    ]);
    expect(said(2144, 450)).toMatchObject([{ outcome: 'fails', actual: 144, limit: 146 }]);
    expect(said(2000, 534)).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[PO13] is silent where the two touch, one beside or above the other', () => {
    expect(said(2146, 450)).toEqual([]);
    expect(said(2000, 536)).toEqual([]);
  });

  it('[PO13] is silent on the other face of the wall', () => {
    expect(said(2000, 450, { side: 'right' })).toEqual([]);
  });

  it('[PO13] is silent on what goes: a point that is removed or replaced', () => {
    expect(said(2000, 450, { status: 'removed' })).toEqual([]);
    expect(said(2000, 450, { status: 'replaced' })).toEqual([]);
  });

  it('[PO13] speaks of both of two new points', () => {
    const facts = houseOf({ points: [wantedOn(2000, 450), { ...wantedOn(2050, 450), id: 'q' }] });
    expect(saidBy(platesApart, facts).map(({ subjectId }) => subjectId)).toEqual(['p', 'q']);
  });
});
