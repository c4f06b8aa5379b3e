import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { textWidthMm } from '../label-placer.ts';
import { type Shape, words } from '../scene.ts';

/** A side of a room, the room on its left hand; its length is written along it. */
export interface FiguredSide {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly lengthMm: number;
}

/** From a wall's face to the middle of a figure in the room, in heights of the lettering. */
const INTO_ROOM = 0.85;

const planAt = ([x, y]: FiguredSide['from']): PlanPoint => planPoint(x, y);

/**
 * The lengths of sides of rooms in millimetres, each in the room along its side. A side that is shorter on the sheet than its
 * figure has none.
 *
 * @param sizeMm of the figures, units of the scene.
 */
export const sideFigures = (
  frame: SheetFrame,
  sides: readonly FiguredSide[],
  sizeMm: number,
): readonly Shape[] => sides.flatMap((side) => figure(frame, side, sizeMm));

function figure(frame: SheetFrame, { from, to, lengthMm }: FiguredSide, sizeMm: number): readonly Shape[] {
  const [a, b] = [toSheet(frame, planAt(from)), toSheet(frame, planAt(to))];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dx, dy);
  const text = String(Math.round(lengthMm));
  if (long < textWidthMm(text, sizeMm)) return [];
  // The room is to the left of its side on plan, which on the sheet, where y goes down, is this way.
  const into = [dy / long, -dx / long] as const;
  const turned = (Math.atan2(dy, dx) * 180) / Math.PI;
  // Lettering is read from below or from the right, never upside down.
  const angleDeg = turned > 90.5 ? turned - 180 : turned <= -89.5 ? turned + 180 : turned;
  const readable = Math.abs(angleDeg - 90) < 1 ? -90 : angleDeg;
  const middle = [
    (a[0] + b[0]) / 2 + into[0] * sizeMm * INTO_ROOM,
    (a[1] + b[1]) / 2 + into[1] * sizeMm * INTO_ROOM,
  ] as const;
  // Lettering stands on its base line, which is below its middle as it is read.
  const radians = (readable * Math.PI) / 180;
  const base = sizeMm * 0.35;
  const at = sheetPoint(middle[0] - Math.sin(radians) * base, middle[1] + Math.cos(radians) * base);
  return [words('text-new', at, text, { sizeMm, anchor: 'middle', strong: true, angleDeg: readable })];
}
