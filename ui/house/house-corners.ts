import { planPointOf } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { outlineCorners, outlineEdges } from '#engine/plan/room-outline.ts';
import type { Storey, Wall } from '#model/building.ts';
import { dot, minus, plus, times, unit, type Vector } from './vector.ts';
import { isSamePlace } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** Where a corner lies in its room, seen on the plan; the order that corners are told in. */
const quarters = ['lower left', 'lower right', 'upper left', 'upper right'] as const;
type Quarter = (typeof quarters)[number];

/** A right-angled corner of the outer walls in which a room can be put. */
export interface HouseCorner {
  /** "upper right"; of several of them also "the left one", "1 of 3 from the left". Each of a storey has words of its own. */
  readonly words: string;
  readonly quarter: Quarter;
  /** Where the inner faces meet, mm. */
  readonly at: Vector;
}

/** A wall from one of its ends away. */
interface Arm {
  readonly at: Vector;
  readonly away: Vector;
  readonly halfMm: number;
}

/** A room has a corner where a place so far in is its own, mm. */
const IN_MM = 50;
/** Walls this much out of square make no corner for a room of right angles. */
const SQUARE_SINE = 0.02;

const armsOf = ({ from, to, thicknessMm }: Wall): readonly Arm[] => {
  const halfMm = thicknessMm / 2;
  return [
    { at: from, away: unit(minus(to, from)), halfMm },
    { at: to, away: unit(minus(from, to)), halfMm },
  ];
};

/** Whether a wall runs along the plan's edges: rooms by two sides do. */
const isLevel = ({ away: [x, y] }: Arm): boolean => Math.min(Math.abs(x), Math.abs(y)) < SQUARE_SINE;

/** Whether a place is within walls that close round it: a ray from it crosses an odd number of them. */
function isWithin(walls: readonly Wall[], [x, y]: Vector): boolean {
  const crossed = walls.filter(({ from, to }) => {
    if (from[1] > y === to[1] > y) return false;
    return from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0]) > x;
  });
  return crossed.length % 2 === 1;
}

/** The corner between two walls that meet, on the side where both go away from it; null where they are not square to each other. */
function cornerBetween(one: Arm, other: Arm): Omit<HouseCorner, 'words'> | null {
  if (!isSamePlace(one.at, other.at) || Math.abs(dot(one.away, other.away)) > SQUARE_SINE) return null;
  const at = plus(one.at, plus(times(one.away, other.halfMm), times(other.away, one.halfMm)));
  const [right, up] = plus(one.away, other.away);
  return { at, quarter: `${up > 0 ? 'lower' : 'upper'} ${right > 0 ? 'left' : 'right'}` };
}

/** A little way into the room that a corner would be of. */
const withinCorner = ({ at, quarter }: Omit<HouseCorner, 'words'>): Vector =>
  plus(at, [quarter.endsWith('left') ? IN_MM : -IN_MM, quarter.startsWith('lower') ? IN_MM : -IN_MM]);

/** Corners of one quarter are told apart by where they lie. */
function named(alike: readonly Omit<HouseCorner, 'words'>[]): readonly HouseCorner[] {
  const spread = (axis: 0 | 1): number => {
    const along = alike.map(({ at }) => at[axis]);
    return Math.max(...along) - Math.min(...along);
  };
  const axis = spread(0) >= spread(1) ? 0 : 1;
  const [first, last] = axis === 0 ? ['left', 'right'] : ['lower', 'upper'];
  const inOrder = alike.toSorted((a, b) => a.at[axis] - b.at[axis]);
  return inOrder.map((corner, i) => {
    const { quarter } = corner;
    if (inOrder.length === 1) return { ...corner, words: quarter };
    if (inOrder.length === 2) return { ...corner, words: `${quarter}, the ${i === 0 ? first : last} one` };
    const from = axis === 0 ? 'from the left' : 'from below';
    return { ...corner, words: `${quarter}, ${i + 1} of ${inOrder.length} ${from}` };
  });
}

/** The corners of the outer walls in which a room can be put: walls meet square there round the house, and no room has it yet. */
export function freeCorners(storey: Pick<Storey, 'walls' | 'rooms'>): readonly HouseCorner[] {
  const map = wallMap(storey);
  const rooms = storey.rooms.map((room) => outlineCorners(outlineEdges(room, map)));
  const outer = storey.walls.filter(({ external, party }) => external || party === true);
  const arms = outer.flatMap(armsOf).filter(isLevel);
  const corners = arms.flatMap((one, i) =>
    arms.slice(i + 1).flatMap((other) => cornerBetween(one, other) ?? []),
  );
  const free = corners.filter((corner) => {
    const within = withinCorner(corner);
    const isTaken = rooms.some(
      (outline) => outline.length > 2 && isInside(outline, planPointOf([...within])),
    );
    return !isTaken && isWithin(outer, within);
  });
  return quarters.flatMap((quarter) => named(free.filter((corner) => corner.quarter === quarter)));
}

/** Where the first room goes within walls that are there already: the first corner that is free, or the lower left of all where none is square. */
export function firstCorner(storey: Pick<Storey, 'walls' | 'rooms'>): HouseCorner {
  const [free] = freeCorners(storey);
  if (free !== undefined) return free;
  const least = (axis: 0 | 1): number =>
    Math.min(
      ...storey.walls.flatMap(({ from, to, thicknessMm }) =>
        [from, to].map((end) => end[axis] + thicknessMm / 2),
      ),
    );
  const quarter = 'lower left';
  return { words: quarter, quarter, at: storey.walls.length === 0 ? [0, 0] : [least(0), least(1)] };
}

/** Puts an outline into a corner of the outer walls, against their inner faces. */
export function inCorner(outline: readonly Vector[], { at, quarter }: HouseCorner): readonly Vector[] {
  const reach = (axis: 0 | 1, isHigh: boolean): number => {
    const along = outline.map((place) => place[axis]);
    return isHigh ? Math.max(...along) : Math.min(...along);
  };
  const own: Vector = [reach(0, quarter.endsWith('right')), reach(1, quarter.startsWith('upper'))];
  return outline.map((place) => plus(place, minus(at, own)));
}
