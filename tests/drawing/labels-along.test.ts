import { describe, expect, it } from 'vitest';
import { labelPlacer } from '#drawing/label-placer.ts';
import { labelsAlong } from '#drawing/plan/screen-cables.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';

const bounds = { leftMm: 0, topMm: 0, rightMm: 100, bottomMm: 100 };
const path = [sheetPoint(20, 50), sheetPoint(60, 50)];

describe('the length of a new cable on screen', () => {
  it('stands on its cable, beside what stands there already', () => {
    const free = labelPlacer(bounds);
    const label = labelsAlong(free, false, 2.5);
    const places = [1, 2].map(() => label('2.10 m', path)[0]);
    expect(places.map((one) => one?.kind)).toEqual(['text', 'text']);
    const [first, second] = places.map((one) => (one?.kind === 'text' ? one.at : null));
    expect(first).not.toEqual(second);
  });

  it('stands round about a cable too short for it, between others', () => {
    const free = labelPlacer(bounds);
    const short = [sheetPoint(40, 50), sheetPoint(43, 50)];
    free.take({ leftMm: 34, topMm: 46, rightMm: 49, bottomMm: 54 });
    const [figure] = labelsAlong(free, false, 2.5)('2.10 m', short);
    if (figure?.kind !== 'text') throw new Error('It has no length.');
    expect(Math.hypot(figure.at[0] - 41.5, figure.at[1] - 50)).toBeLessThan(11);
  });

  it('is left out where every place is over another label or a symbol', () => {
    const free = labelPlacer(bounds);
    free.take({ leftMm: 10, topMm: 40, rightMm: 70, bottomMm: 60 });
    expect(labelsAlong(free, false, 2.5)('2.10 m', path)).toEqual([]);
  });
});
