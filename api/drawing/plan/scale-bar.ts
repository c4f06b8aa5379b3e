import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape, words } from '../scene.ts';
import type { SheetLayout } from './sheet-layout.ts';

/** A scale bar of whole metres, true to the sheet's scale, below the plan on the left. */
export function scaleBar(layout: SheetLayout): readonly Shape[] {
  const metres = layout.frame.scale <= 50 ? 2 : 4;
  const metreMm = 1000 / layout.frame.scale;
  const left = layout.border.leftMm + 6;
  const top = layout.border.bottomMm - 7;
  const tick = (m: number): Shape =>
    line('scale-bar', [sheetPoint(left + m * metreMm, top - 1), sheetPoint(left + m * metreMm, top + 1)]);
  const marks = Array.from({ length: metres + 1 }, (_, m) => m);
  return [
    line('scale-bar', [sheetPoint(left, top), sheetPoint(left + metres * metreMm, top)]),
    ...marks.map(tick),
    ...marks.map((m) =>
      words('text-soft', sheetPoint(left + m * metreMm, top + 3.6), m === metres ? `${m} m` : String(m), {
        sizeMm: 2.5,
        anchor: 'middle',
      }),
    ),
    words(
      'text-soft',
      sheetPoint(left + metres * metreMm + 8, top + 0.9),
      `1:${layout.frame.scale} on ${layout.sheetName}`,
      {
        sizeMm: 2.5,
      },
    ),
  ];
}
