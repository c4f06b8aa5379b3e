import type { Plan } from '#engine/plan/plan.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import { isInStairwell, roomAt } from '#engine/plan/surroundings.ts';
import type { VoidSpace } from '#engine/plan/voids.ts';
import { joistAxes } from '#engine/ways/joist-axes.ts';
import type { Floor } from '#model/building.ts';
import { facesOfStorey, nearestOf } from './room-faces.ts';

/** A line in a void that a corner holds to: through a place, one way; for so long, or without end. */
export interface HoldLine {
  readonly through: PlanPoint;
  /** Unit vector. */
  readonly direction: readonly [number, number];
  /** From the place to the end of the line; null where it goes on both ways. */
  readonly lengthMm: number | null;
}

/** The floor that a void lies under at a place; null for a loft. */
export function floorOver(plan: Plan, { kind, storeyId }: VoidSpace, at: PlanPoint): Floor | null {
  if (kind === 'loft') return null;
  return roomAt(plan, storeyId, at)?.room.floor ?? plan.storeyById.get(storeyId)?.storey.floor ?? null;
}

/** How far outside its rooms a house still is: the thickness of a wall, mm. */
const WALL_MM = 400;
/** A stretch is looked at every so many mm. */
const LOOK_MM = 200;

/** Why there is no void at a place; null where there is. */
function whyNoVoid(plan: Plan, space: VoidSpace, at: PlanPoint): string | null {
  const { kind, storeyId } = space;
  if (roomAt(plan, storeyId, at) === null) {
    const faces = facesOfStorey(plan, storeyId);
    const wall = nearestOf(faces, at, 1);
    if (faces.length > 0 && (wall === null || wall.offMm > WALL_MM)) return 'that is outside the house';
  }
  if (kind === 'loft') return null;
  if (isInStairwell(plan, storeyId, at)) return 'a stairwell is there, and no void';
  return floorOver(plan, space, at)?.build === 'solid' ? 'the floor is solid there' : null;
}

/** Why a straight stretch cannot lie in a void; null where it can. */
export function whyNotThere(plan: Plan, space: VoidSpace, from: PlanPoint, to: PlanPoint): string | null {
  const parts = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / LOOK_MM));
  for (let i = 1; i <= parts; i++) {
    const share = i / parts;
    const at = planPoint(from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share);
    const why = whyNoVoid(plan, space, at);
    if (why !== null) return why;
  }
  return null;
}

/** The way joists run at a place; along the plan where that is not known, and in a loft. */
export function joistsAt(plan: Plan, space: VoidSpace, at: PlanPoint): readonly [number, number] {
  const floor = floorOver(plan, space, at);
  return (floor === null ? null : joistAxes(floor)?.along) ?? [1, 0];
}

/** The faces of a storey's walls, as lines on plan. */
export const wallLines = (plan: Plan, storeyId: string): readonly HoldLine[] =>
  facesOfStorey(plan, storeyId).flatMap(({ from, to }): HoldLine[] => {
    const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (lengthMm < 1) return [];
    const direction = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm] as const;
    return [{ through: from, direction, lengthMm }];
  });

/** The lines along and across the joists through a place. */
export function joistLines(plan: Plan, space: VoidSpace, at: PlanPoint): readonly HoldLine[] {
  const [x, y] = joistsAt(plan, space, at);
  return [
    { through: at, direction: [x, y], lengthMm: null },
    { through: at, direction: [-y, x], lengthMm: null },
  ];
}

/** The place on a line nearest to another, and how far off it is. */
function nearestOnLine(
  { through, direction: [dx, dy], lengthMm }: HoldLine,
  [x, y]: PlanPoint,
): { readonly at: PlanPoint; readonly offMm: number } {
  const along = (x - through[0]) * dx + (y - through[1]) * dy;
  const held = lengthMm === null ? along : Math.min(lengthMm, Math.max(0, along));
  const at = planPoint(through[0] + dx * held, through[1] + dy * held);
  return { at, offMm: Math.hypot(at[0] - x, at[1] - y) };
}

const nearest = (places: readonly PlanPoint[], [x, y]: PlanPoint, reachMm: number): PlanPoint | null => {
  let best: { readonly at: PlanPoint; readonly offMm: number } | null = null;
  for (const at of places) {
    const offMm = Math.hypot(at[0] - x, at[1] - y);
    if (offMm <= reachMm && (best === null || offMm < best.offMm - 1e-6)) best = { at, offMm };
  }
  return best?.at ?? null;
};

/** Where two of the lines cross, or one of them ends, within reach of a place. */
function crossings(lines: readonly HoldLine[], at: PlanPoint, reachMm: number): readonly PlanPoint[] {
  const near = lines.filter((line) => nearestOnLine(line, at).offMm <= reachMm);
  const ends = near.flatMap(({ through, direction: [dx, dy], lengthMm }) =>
    lengthMm === null ? [] : [through, planPoint(through[0] + dx * lengthMm, through[1] + dy * lengthMm)],
  );
  const met = near.flatMap((one, i) =>
    near.slice(i + 1).flatMap((other) => {
      const meeting = lineMeeting(one.through, one.direction, other.through, other.direction);
      const onBoth = meeting !== null && [one, other].every((line) => nearestOnLine(line, meeting).offMm < 1);
      return onBoth && meeting !== null ? [meeting] : [];
    }),
  );
  return [...met, ...ends];
}

/**
 * The place that a hand means: one of some places within reach, else where two lines cross, else the nearest line, else where
 * it is, in whole steps of 10 mm.
 */
export function heldPlace(
  at: PlanPoint,
  to: {
    readonly places: readonly PlanPoint[];
    readonly lines: readonly HoldLine[];
    readonly reachMm: number;
  },
): PlanPoint {
  const { places, lines, reachMm } = to;
  const held =
    nearest(places, at, reachMm) ??
    nearest(crossings(lines, at, reachMm), at, reachMm) ??
    nearest(
      lines.map((line) => nearestOnLine(line, at).at),
      at,
      reachMm,
    );
  return held ?? planPoint(Math.round(at[0] / 10) * 10, Math.round(at[1] / 10) * 10);
}

/** The next place from one in a direction at which a line is met; null where none is. */
export function nextLine(
  lines: readonly HoldLine[],
  from: PlanPoint,
  direction: readonly [number, number],
): PlanPoint | null {
  let best: { readonly at: PlanPoint; readonly awayMm: number } | null = null;
  for (const line of lines) {
    const at = lineMeeting(from, direction, line.through, line.direction);
    if (at === null || nearestOnLine(line, at).offMm > 1) continue;
    const awayMm = (at[0] - from[0]) * direction[0] + (at[1] - from[1]) * direction[1];
    if (awayMm > 5 && (best === null || awayMm < best.awayMm)) best = { at, awayMm };
  }
  return best?.at ?? null;
}
