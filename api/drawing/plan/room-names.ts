import type { Worked } from '#engine/connections/worked.ts';
import type { PlanRoom } from '#engine/plan/plan.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { boxCorners, type LabelPlacer, type Rectangle, textBox } from '../label-placer.ts';
import { line, type Shape, words } from '../scene.ts';
import { placeForName, roomPlaces } from './room-places.ts';
import type { SheetLayout } from './sheet-layout.ts';

/** Lettering of rooms' names, mm on paper: the usual, and where there is little room. */
const SIZES_MM = [3.5, 2.5] as const;

/** A strip of paper under a name: what must go through is interrupted there, and both can be read. */
const ground = (box: Rectangle): Shape => line('halo', boxCorners(box), true);

function nameOf(
  room: PlanRoom,
  layout: Pick<SheetLayout, 'frame'>,
  free: LabelPlacer,
  leaveOut?: (name: string) => void,
): readonly Shape[] {
  const { name } = room.room;
  const boxAt = (at: SheetPoint, sizeMm: number): Rectangle => textBox(at, name, sizeMm);
  const own = roomPlaces(room, layout.frame);
  const placed = placeForName(own, SIZES_MM, boxAt, free);
  if (placed === null && leaveOut !== undefined) {
    leaveOut(name);
    return [];
  }
  const [, small] = SIZES_MM;
  const { at, sizeMm } = placed ?? { at: free.place(name, small, own.places), sizeMm: small };
  if (placed !== null) free.take(boxAt(at, sizeMm));
  const middle = sheetPoint(at[0], at[1] + sizeMm * 0.35);
  return [ground(boxAt(at, sizeMm)), words('text-soft', middle, name, { sizeMm, anchor: 'middle' })];
}

/**
 * Writes each room's name in the room: where nothing is in its way, else across cables, on a ground of its own.
 *
 * @param leaveOut is told of a name that could only stand on something else, which then is not written.
 */
export const roomNames = (
  worked: Worked,
  storeyId: string,
  layout: Pick<SheetLayout, 'frame'>,
  free: LabelPlacer,
  leaveOut?: (name: string) => void,
): readonly Shape[] =>
  [...worked.plan.roomById.values()]
    .filter((room) => room.storeyId === storeyId && room.outline.length > 0)
    .flatMap((room) => nameOf(room, layout, free, leaveOut));
