import { planPointOf } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { outlineCorners, outlineEdges } from '#engine/plan/room-outline.ts';
import type { Storey } from '#model/building.ts';
import { plus, type Vector } from './vector.ts';
import { wallMap } from './wall-map.ts';

/** A corner of the house, as it lies on the plan. */
export type HouseCorner = 'lower-left' | 'lower-right' | 'upper-left' | 'upper-right';

/** What they are called on the plan. */
export const houseCornerWords: Readonly<Record<HouseCorner, string>> = {
  'lower-left': 'lower left',
  'lower-right': 'lower right',
  'upper-left': 'upper left',
  'upper-right': 'upper right',
};

const all: readonly HouseCorner[] = ['lower-left', 'lower-right', 'upper-left', 'upper-right'];

/** The inner faces of the outermost walls that meet in a corner; where there is no wall, nought. */
function innerCorner({ walls }: Pick<Storey, 'walls'>, corner: HouseCorner): Vector {
  const ends = walls.flatMap(({ from, to, thicknessMm }) =>
    [from, to].map((at) => ({ at, halfMm: thicknessMm / 2 })),
  );
  const inner = (axis: 0 | 1, isHigh: boolean): number => {
    const [first, ...rest] = ends;
    if (first === undefined) return 0;
    const outermost = rest.reduce(
      (a, b) => (b.at[axis] > a.at[axis] === isHigh && b.at[axis] !== a.at[axis] ? b : a),
      first,
    );
    return outermost.at[axis] + (isHigh ? -outermost.halfMm : outermost.halfMm);
  };
  return [inner(0, corner.endsWith('right')), inner(1, corner.startsWith('upper'))];
}

/** Puts an outline into a corner of the walls that a storey has, against their inner faces. */
export function inCorner(
  storey: Pick<Storey, 'walls'>,
  outline: readonly Vector[],
  corner: HouseCorner,
): readonly Vector[] {
  const [innerX, innerY] = innerCorner(storey, corner);
  const reach = (axis: 0 | 1, isHigh: boolean): number => {
    const along = outline.map((at) => at[axis]);
    return isHigh ? Math.max(...along) : Math.min(...along);
  };
  const shift: Vector = [
    innerX - reach(0, corner.endsWith('right')),
    innerY - reach(1, corner.startsWith('upper')),
  ];
  return outline.map((at) => plus(at, shift));
}

/** A wall's end this near the outermost faces makes a corner of them: the thickest wall that there is in a house, mm. */
const THICKEST_MM = 600;
/** A room has a corner where a place so far in is its own, mm. */
const IN_MM = 50;

/** The corners of the outer walls in which a room can be put: walls meet there, and no room has it yet. */
export function freeCorners(storey: Pick<Storey, 'walls' | 'rooms'>): readonly HouseCorner[] {
  const map = wallMap(storey);
  const rooms = storey.rooms.map((room) => outlineCorners(outlineEdges(room, map)));
  return all.filter((corner) => {
    const [x, y] = innerCorner(storey, corner);
    const hasWalls = storey.walls.some(({ from, to }) =>
      [from, to].some((end) => Math.hypot(end[0] - x, end[1] - y) < THICKEST_MM),
    );
    const within = planPointOf([
      x + (corner.endsWith('right') ? -IN_MM : IN_MM),
      y + (corner.startsWith('upper') ? -IN_MM : IN_MM),
    ]);
    return hasWalls && !rooms.some((outline) => outline.length > 2 && isInside(outline, within));
  });
}
