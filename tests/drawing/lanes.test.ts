import { describe, expect, it } from 'vitest';
import { labelSpots, shifted } from '#drawing/plan/cable-shapes.ts';
import { inLanes } from '#drawing/plan/lanes.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';

describe('cables side by side', () => {
  it('leaves a cable that is alone where it is', () => {
    const path = [sheetPoint(0, 0), sheetPoint(10, 0)];
    expect(inLanes([path])).toEqual([path]);
  });

  it('sets cables on the same way beside each other', () => {
    const path = [sheetPoint(0, 0), sheetPoint(10, 0)];
    const ys = inLanes([path, path, path]).map((lane) => lane[0]?.[1]);
    expect(new Set(ys).size).toBe(3);
  });

  it('leaves cables that only cross each other alone', () => {
    const across = [sheetPoint(0, 0), sheetPoint(10, 0)];
    const down = [sheetPoint(5, -5), sheetPoint(5, 5)];
    expect(inLanes([across, down])).toEqual([across, down]);
  });

  it('shifts a corner so that both of its stretches keep their distance', () => {
    const moved = shifted([sheetPoint(0, 0), sheetPoint(10, 0), sheetPoint(10, 10)], 1);
    expect(moved[1]?.[0]).toBeCloseTo(9);
    expect(moved[1]?.[1]).toBeCloseTo(1);
  });

  it('offers the middle of the longest stretch first for a label', () => {
    const spots = labelSpots([sheetPoint(0, 0), sheetPoint(2, 0), sheetPoint(2, 30)]);
    expect(spots[0]).toEqual(sheetPoint(2, 15));
  });
});
