import type { Plan } from '#engine/plan/plan.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { outlineCorners, outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Storey } from '#model/building.ts';
import type { RoomSide } from './room-sides.ts';
import { dot, leftOf, minus, plus, tidy, times, unit, type Vector } from './vector.ts';
import { wallMap } from './wall-map.ts';

/** Where a box stands along a side of a room, as somebody in the room sees it who looks at that side. */
export interface AlongSide {
  /** From the inside corner on the left hand to its near edge, mm. */
  readonly leftMm: number;
  /** From the wall's face to its back, mm. */
  readonly offMm: number;
  /** Along the wall, mm. */
  readonly widthMm: number;
  /** Away from the wall, mm. */
  readonly depthMm: number;
}

type Ends = Pick<RoomSide, 'from' | 'to'>;

/** The corners of a box along a side, from its back left corner, clockwise as seen from in the room. */
export function boxAlong({ from, to }: Ends, box: AlongSide): [number, number][] {
  const along = unit(minus(to, from));
  const { leftMm, offMm, widthMm, depthMm } = box;
  // Going round anticlockwise the end of a side is on the left hand of who looks at it, and the room on the left of the way.
  const corner = (mm: number, away: number): [number, number] =>
    tidy(plus(to, plus(times(along, -mm), times(leftOf(along), away))));
  return [
    corner(leftMm, offMm),
    corner(leftMm + widthMm, offMm),
    corner(leftMm + widthMm, offMm + depthMm),
    corner(leftMm, offMm + depthMm),
  ];
}

/** How an outline stands along a side: the box round it that is square to the side. To the tenth of a millimetre. */
export function alongSide({ from, to }: Ends, outline: readonly Vector[]): AlongSide {
  const along = unit(minus(to, from));
  const lefts = outline.map((at) => dot(minus(to, at), along));
  const offs = outline.map((at) => dot(minus(at, to), leftOf(along)));
  const [leftMm, offMm] = [Math.min(...lefts), Math.min(...offs)];
  const [left, off, width, depth] = [
    leftMm,
    offMm,
    Math.max(...lefts) - leftMm,
    Math.max(...offs) - offMm,
  ].map(tenth);
  return { leftMm: left ?? 0, offMm: off ?? 0, widthMm: width ?? 0, depthMm: depth ?? 0 };
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10 || 0;

/** The side that an outline stands at: of those that it is beside the one whose wall is nearest to its back; null for no sides. */
export function sideBehind(sides: readonly RoomSide[], outline: readonly Vector[]): number | null {
  let best: { readonly at: number; readonly offMm: number } | null = null;
  for (const [at, side] of sides.entries()) {
    const { leftMm, widthMm, offMm } = alongSide(side, outline);
    const besideMm = Math.min(leftMm + widthMm, side.lengthMm) - Math.max(leftMm, 0);
    const farMm = Math.abs(offMm) + (besideMm > 0 ? 0 : 1e6);
    if (best === null || farMm < best.offMm) best = { at, offMm: farMm };
  }
  return best?.at ?? null;
}

/** Whether a box reaches past the side that it stands at, or through its wall; a millimetre is let pass. */
export const isPastSide = (side: RoomSide, { leftMm, offMm, widthMm }: AlongSide): boolean =>
  leftMm < -1 || offMm < -1 || leftMm + widthMm > side.lengthMm + 1;

/** The room that holds the middle of an outline; null where none does. */
export function roomHolding(
  storey: Pick<Storey, 'walls' | 'rooms'>,
  outline: readonly Vector[],
  map: Plan['wallById'] = wallMap(storey),
): Room | null {
  const sum = outline.reduce<Vector>((all, at) => plus(all, at), [0, 0]);
  const [x, y] = times(sum, 1 / Math.max(1, outline.length));
  return (
    storey.rooms.find((room) => {
      const corners = outlineCorners(outlineEdges(room, map));
      return corners.length > 2 && isInside(corners, planPointOf([x, y]));
    }) ?? null
  );
}
