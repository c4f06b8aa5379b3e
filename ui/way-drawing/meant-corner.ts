import type { Plan } from '#engine/plan/plan.ts';
import { distanceMm, type PlanPoint, type Position, planPoint } from '#engine/plan/plane.ts';
import { freePosition } from '#engine/plan/position-of-place.ts';
import type { VoidSpace } from '#engine/plan/voids.ts';
import { joistsCrossed, liesAlongJoists } from '#engine/ways/joists.ts';
import type { Waypoint } from '#model/cable.ts';
import { counted, metres } from '../written.ts';
import { levelOf, waypointAt } from './levels.ts';
import {
  alongFaces,
  facesAbout,
  nearestOf,
  nearestOn,
  type OnFace,
  positionOn,
  steppedRound,
} from './room-faces.ts';
import {
  floorOver,
  type HoldLine,
  heldPlace,
  joistLines,
  nextLine,
  wallLines,
  whyNotThere,
} from './void-lines.ts';

/** Where a way that is drawn has got to, and what it is drawn in. */
export interface DrawnSoFar {
  readonly plan: Plan;
  /** Its last corner, or where it begins. */
  readonly here: Position;
  /** Where it is to end. */
  readonly end: Position;
  /** The storey that is shown. */
  readonly storeyId: string;
}

/** The corner that a place means, with those that lead to it. */
export interface MeantCorner {
  /** The place, held to walls, joists and ends. */
  readonly at: PlanPoint;
  /** The corners that would be put down, the meant one last. */
  readonly waypoints: readonly Waypoint[];
  /** How it would go there: "2.40 m along the joists". */
  readonly words: string;
  /** Why it cannot go there; null where it can. */
  readonly whyNot: string | null;
}

/** How far off a hand may be, mm. */
type Reach = number;

const lengthOf = (here: Position, places: readonly PlanPoint[]): number =>
  places.reduce((sum, at, i) => sum + distanceMm(places[i - 1] ?? here.at, at), 0);

/** Nothing to go to: the place itself, and why. */
const nowhere = (at: PlanPoint, whyNot: string): MeantCorner => ({ at, waypoints: [], words: '', whyNot });

/** The corner that a place on the plan means, from where the way has got to. */
export function meantCorner(so: DrawnSoFar, at: PlanPoint, reachMm: Reach): MeantCorner {
  const level = levelOf(so.plan, so.here);
  return level.kind === 'void' ? inVoid(so, level.space, at, reachMm) : onWalls(so, at, reachMm);
}

function onWalls({ plan, here, end, storeyId }: DrawnSoFar, at: PlanPoint, reachMm: Reach): MeantCorner {
  if (storeyId !== here.storeyId) {
    const name = plan.storeyById.get(here.storeyId)?.storey.name ?? '';
    return nowhere(at, `it is on a wall of ${name}: show that storey to go on`);
  }
  const round = facesAbout(plan, here);
  const near = nearestOf(round.faces, at);
  if (near === null) return nowhere(at, 'no wall leads on from here: go up or down first');
  const to = heldOnFace(near, [here.at, end.at], reachMm);
  const { corners, whyNot } = alongFaces(round, here, to);
  if (whyNot !== null) return nowhere(to.at, whyNot);
  const waypoints = corners.flatMap((corner) => {
    const position = positionOn(plan, nearestOn(corner.face, corner.at, 1), here.heightMm);
    return position === null ? [] : [waypointAt({ ...position, at: corner.at })];
  });
  const mm = lengthOf(
    here,
    corners.map((corner) => corner.at),
  );
  if (mm < 1) return nowhere(to.at, 'it is there already');
  const turns = corners.length - 1;
  return {
    at: to.at,
    waypoints,
    whyNot: null,
    words: `${metres(mm)} along the wall${turns > 0 ? `, round ${counted(turns, 'corner')}` : ''}`,
  };
}

/** Held to the place over or under an end, and to the face's own ends. */
function heldOnFace(near: OnFace, ends: readonly PlanPoint[], reachMm: Reach): OnFace {
  const places = [near.face.from, near.face.to, ...ends]
    .map((place) => nearestOn(near.face, place, 1))
    .filter((on) => distanceMm(on.at, near.at) <= reachMm)
    .sort((a, b) => distanceMm(a.at, near.at) - distanceMm(b.at, near.at));
  return places[0] ?? near;
}

/** What corners in a void hold to: the walls of the storey that is shown, and lines along and across joists through both ends. */
function holds({ plan, here, end, storeyId }: DrawnSoFar, space: VoidSpace): readonly HoldLine[] {
  const walls = wallLines(plan, storeyId);
  return [...joistLines(plan, space, here.at), ...joistLines(plan, space, end.at), ...walls];
}

function inVoid(so: DrawnSoFar, space: VoidSpace, place: PlanPoint, reachMm: Reach): MeantCorner {
  const { plan, here, end } = so;
  const at = heldPlace(place, { places: [end.at], lines: holds(so, space), reachMm });
  const mm = distanceMm(here.at, at);
  if (mm < 1) return nowhere(at, 'it is there already');
  const whyNot = whyNotThere(plan, space, here.at, at);
  if (whyNot !== null) return nowhere(at, whyNot);
  const floorMm = plan.storeyById.get(space.storeyId)?.storey.floorLevelMm ?? 0;
  const there = freePosition(plan, space.storeyId, at, space.levelMm - floorMm);
  if (there === null) return nowhere(at, 'the storey is not drawn');
  return {
    at,
    waypoints: [waypointAt(there)],
    words: `${metres(mm)}${joistWords(so, space, at)}`,
    whyNot: null,
  };
}

function joistWords({ plan, here }: DrawnSoFar, space: VoidSpace, at: PlanPoint): string {
  const floor = floorOver(plan, space, at);
  if (floor === null) return ' in the loft';
  if (floor.build !== 'suspended-timber') return ' above the ceiling';
  if (floor.joistsRunDeg === undefined) return ', which way the joists run is not known';
  if (liesAlongJoists(floor, here.at, at)) return ' along the joists';
  const crossed = joistsCrossed(floor, here.at, at);
  return ` across the joists${crossed === 0 ? '' : `, through ${crossed}`}`;
}

/** What arrows mean on plan, where y goes up. */
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A place under the keys: where it is, and the way of the arrow that was pressed last. */
export interface KeyedPlace {
  readonly at: PlanPoint;
  readonly way: readonly [number, number];
}

/**
 * Where a key brings the place of the next corner: arrows by 50 mm, by 10 mm with Shift, on walls along them and round
 * their corners; ] on to the next wall, line or end the way of the last arrow, [ back; Home to the last corner, End over or
 * under the end.
 *
 * @returns null for a key that moves nothing.
 */
export function keyedCorner(
  so: DrawnSoFar,
  { at, way }: KeyedPlace,
  key: string,
  isFine: boolean,
): KeyedPlace | null {
  const level = levelOf(so.plan, so.here);
  if (key === 'Home') return { at: so.here.at, way };
  if (key === 'End') return { at: so.end.at, way };
  const arrow = arrows[key];
  const byMm = isFine ? 10 : 50;
  if (level.kind === 'room') return onFacesByKey(so, { at, way }, key, byMm);
  if (arrow !== undefined)
    return { at: planPoint(at[0] + arrow[0] * byMm, at[1] + arrow[1] * byMm), way: arrow };
  if (key !== '[' && key !== ']') return null;
  const onwards = key === ']' ? way : ([-way[0], -way[1]] as const);
  return { at: nextLine(holds(so, level.space), at, onwards) ?? at, way };
}

function onFacesByKey(
  { plan, here }: DrawnSoFar,
  { at, way }: KeyedPlace,
  key: string,
  byMm: number,
): KeyedPlace | null {
  const round = facesAbout(plan, here);
  const near = nearestOf(round.faces, at, 1);
  if (near === null) return null;
  const { from, to } = near.face;
  if (key === ']' || key === '[') {
    // Past this face's end, into the next one.
    const target = key === ']' ? from : to;
    const mm = distanceMm(near.at, target) + 1;
    return { at: steppedRound(round, near, key === ']' ? mm : -mm), way };
  }
  const arrow = arrows[key];
  if (arrow === undefined) return null;
  const lengthMm = distanceMm(from, to) || 1;
  // Round the room anticlockwise: from the right hand to the left of who looks at the wall.
  const along = (arrow[0] * (to[0] - from[0]) + arrow[1] * (to[1] - from[1])) / lengthMm;
  const toTheRight = Math.abs(along) < 0.3 ? arrow[0] - arrow[1] > 0 : along < 0;
  return { at: steppedRound(round, near, toTheRight ? byMm : -byMm), way: arrow };
}
