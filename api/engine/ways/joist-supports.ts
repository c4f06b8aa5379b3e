import type { Plan, PlanRoom, PlanWall } from '../plan/plan.ts';
import { distanceMm, type PlanPoint, planPoint } from '../plan/plane.ts';
import { outlineEdges } from '../plan/room-outline.ts';
import { roomAt, wallsOfStorey } from '../plan/surroundings.ts';
import type { JoistSpan } from './joist-window.ts';
import { isMasonry } from './lay-in-wall.ts';
import { isAcross, isWithin, outlineCutsMm, wallCutsMm } from './path-cuts.ts';

/** A place this near a support is at it, mm. */
const AT_SUPPORT_MM = 0.5;
/** A step along a joist that surely leaves a support. */
const STEP_MM = 5;

/** A joist at a place: its bearings measured along it from there, so that the place itself is at 0. */
export interface JoistSupports {
  /** Null where no support is drawn on one side, and over a wall that carries the joist. */
  readonly span: JoistSpan | null;
  /** True where the place is over a wall that carries the joist. */
  readonly isOverWall: boolean;
  /**
   * True where an end of the span is only the room's edge, at a wall that is not known to carry joists, and on the lowest
   * storey, where nobody sees the sleeper walls (common practice, no source).
   */
  readonly isAssumed: boolean;
}

/** A joist to find the supports of. */
export interface JoistAt {
  readonly storeyId: string;
  readonly at: PlanPoint;
  /** Unit vector along the joist. */
  readonly direction: readonly [number, number];
  /** The room over it; null where none is known. */
  readonly room: PlanRoom | null;
}

/** Something that a joist's line meets, mm along it from the place asked about. */
interface Met {
  readonly mm: number;
  readonly carries: boolean;
}

/** Whether joists may bear on a wall: masonry, or what the survey calls structural. */
function carries(wall: PlanWall): boolean {
  return isMasonry(wall) || wall.wall.structural === true;
}

/**
 * Where the joist under a place bears: on either side the nearest of the room's edge and a wall of masonry or of structure,
 * on its own storey or on the one below. As far as a drawing tells: joists may go on beyond, or end on a trimmer.
 */
export function joistSupports(plan: Plan, joist: JoistAt): JoistSupports {
  const belowId = plan.storeyById.get(joist.storeyId)?.belowId ?? null;
  const walls = [joist.storeyId, ...(belowId === null ? [] : [belowId])]
    .flatMap((storeyId) => wallsOfStorey(plan, storeyId))
    .filter((wall) => carries(wall) && isAcross(wall, joist.direction));
  if (walls.some((wall) => isWithin(wall, joist.at)))
    return { span: null, isOverWall: true, isAssumed: false };
  const met = [...walls.flatMap((wall) => metAtWall(wall, joist)), ...metAtEdge(plan, joist)];
  const [low, high] = nearestOf(met, goesOnInRoom(plan, joist));
  return {
    span: low === null || high === null ? null : { fromMm: low.mm, toMm: high.mm },
    isOverWall: false,
    isAssumed: belowId === null || low?.carries !== true || high?.carries !== true,
  };
}

function placeAlong({ at, direction }: JoistAt, mm: number): PlanPoint {
  return planPoint(at[0] + direction[0] * mm, at[1] + direction[1] * mm);
}

/** Whether the room lies on the far side of a support that the place itself is at. */
function goesOnInRoom(plan: Plan, joist: JoistAt): boolean {
  const beyond = roomAt(plan, joist.storeyId, placeAlong(joist, STEP_MM));
  return joist.room !== null && beyond?.room.id === joist.room.room.id;
}

function metAtWall(wall: PlanWall, joist: JoistAt): readonly Met[] {
  const reachMm = wall.wall.thicknessMm / 2 + AT_SUPPORT_MM;
  return wallCutsMm(wall, joist.at, joist.direction)
    .filter((mm) => {
      const place = placeAlong(joist, mm);
      const [x, y] = [place[0] - wall.wall.from[0], place[1] - wall.wall.from[1]];
      const alongMm = x * wall.direction[0] + y * wall.direction[1];
      const offMm = x * wall.leftNormal[0] + y * wall.leftNormal[1];
      return alongMm > -AT_SUPPORT_MM && alongMm < wall.lengthMm + AT_SUPPORT_MM && Math.abs(offMm) < reachMm;
    })
    .map((mm) => ({ mm, carries: true }));
}

function metAtEdge(plan: Plan, joist: JoistAt): readonly Met[] {
  if (joist.room === null) return [];
  return outlineEdges(joist.room.room, plan.wallById).flatMap(({ wallId, from, to }) => {
    const wall = plan.wallById.get(wallId);
    const isBearing = wall !== undefined && carries(wall);
    const [mm] = outlineCutsMm([from, to], joist.at, joist.direction);
    if (mm === undefined) return [];
    const place = placeAlong(joist, mm);
    const isOnEdge = distanceMm(from, place) + distanceMm(place, to) < distanceMm(from, to) + AT_SUPPORT_MM;
    return isOnEdge ? [{ mm, carries: isBearing }] : [];
  });
}

/** The nearest on either side; one at the place itself is on the side away from the room. Of two at one place the one that carries. */
function nearestOf(met: readonly Met[], goesOn: boolean): readonly [Met | null, Met | null] {
  const byReach = met.toSorted(
    (a, b) => Math.abs(a.mm) - Math.abs(b.mm) || Number(b.carries) - Number(a.carries),
  );
  const isHere = ({ mm }: Met): boolean => Math.abs(mm) <= AT_SUPPORT_MM;
  const here = byReach.some(isHere)
    ? { mm: 0, carries: byReach.some((each) => isHere(each) && each.carries) }
    : null;
  const sideOf = (sign: 1 | -1): Met | null => {
    const nearest = byReach.find(({ mm }) => mm * sign > AT_SUPPORT_MM);
    if (nearest === undefined) return null;
    const carried = byReach.some((each) => each.carries && Math.abs(each.mm - nearest.mm) <= AT_SUPPORT_MM);
    return { mm: nearest.mm, carries: carried };
  };
  if (here === null) return [sideOf(-1), sideOf(1)];
  return goesOn ? [here, sideOf(1)] : [sideOf(-1), here];
}
