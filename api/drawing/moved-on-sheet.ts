import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';

/** A place on paper moved so many mm along a way, a unit vector. */
export const movedOnSheet = (at: SheetPoint, [x, y]: readonly [number, number], byMm: number): SheetPoint =>
  sheetPoint(at[0] + x * byMm, at[1] + y * byMm);
