import type { Worked } from '#engine/connections/worked.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { LabelPlacer } from '../label-placer.ts';
import { type Shape, words } from '../scene.ts';
import type { SheetLayout } from './sheet-layout.ts';

/** Writes each room's name in its middle, or above or below it where the middle is taken. */
export function roomNames(
  worked: Worked,
  storeyId: string,
  layout: Pick<SheetLayout, 'frame'>,
  free: LabelPlacer,
): readonly Shape[] {
  const shapes: Shape[] = [];
  for (const room of worked.plan.roomById.values()) {
    if (room.storeyId !== storeyId || room.outline.length === 0) continue;
    const xs = room.outline.map((at) => at[0]);
    const ys = room.outline.map((at) => at[1]);
    const middle = toSheet(
      layout.frame,
      planPointOf([(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]),
    );
    const candidates = [0, 5, -5, 10, -10].map((dy) => sheetPoint(middle[0], middle[1] + dy));
    const at = free.place(room.room.name, 3.5, candidates);
    shapes.push(
      words('text-soft', sheetPoint(at[0], at[1] + 1.2), room.room.name, { sizeMm: 3.5, anchor: 'middle' }),
    );
  }
  return shapes;
}
