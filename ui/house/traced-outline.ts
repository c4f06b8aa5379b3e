import { planPointOf } from '#engine/plan/plane.ts';
import { lineMeeting } from '#engine/plan/polygon.ts';
import type { Storey } from '#model/building.ts';
import { anticlockwise } from './room-walk.ts';
import { dot, leftOf, lengthOf, minus, plus, tidy, times, unit, type Vector } from './vector.ts';
import { directionOf, isParallel } from './wall-line.ts';

/** A side tapped this near to along the plan or up it is meant so, degrees. Common practice, no source. */
const SQUARE_DEG = 6;
/** A side tapped this near to the face of a wall that is drawn is meant on it, mm: half a wall, which no tap is sure of. */
const ON_FACE_MM = 150;
/** A wall that ends this far before a side begins goes on into that side's wall, mm: another wall's thickness is between. */
const GOES_ON_MM = 500;
/** Sides shorter than this were tapped by a slip of the finger, mm. */
const LEAST_SIDE_MM = 100;

interface Line {
  readonly at: Vector;
  readonly direction: Vector;
}

/** Along the plan or up it where that is nearly so. */
function squared(direction: Vector): Vector {
  const deg = (Math.atan2(direction[1], direction[0]) * 180) / Math.PI;
  const square = Math.round(deg / 90);
  if (Math.abs(deg - square * 90) > SQUARE_DEG) return direction;
  const axes: readonly Vector[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  return axes[((square % 4) + 4) % 4] ?? direction;
}

/** On the face of a drawn wall that it is meant on, with the room on its left; as it is where there is none. */
function onFace({ walls }: Storey, line: Line, lengthMm: number): Line {
  const { at, direction } = line;
  let nearest: number | null = null;
  for (const wall of walls) {
    if (!isParallel(direction, directionOf(wall))) continue;
    const along = [wall.from, wall.to].map((end) => dot(minus(end, at), direction));
    const reachMm = lengthMm / 2 + GOES_ON_MM;
    if (Math.min(...along) > reachMm || Math.max(...along) < -reachMm) continue;
    // Outwards from the room is to the right of its side; the face is half the wall's thickness nearer.
    const outMm = -dot(leftOf(direction), minus(wall.from, at)) - wall.thicknessMm / 2;
    if (Math.abs(outMm) <= ON_FACE_MM && (nearest === null || Math.abs(outMm) < Math.abs(nearest)))
      nearest = outMm;
  }
  return nearest === null ? line : { at: plus(at, times(leftOf(direction), -nearest)), direction };
}

/**
 * The inner outline of a room whose corners were tapped over a picture, anticlockwise: sides that are nearly square to the plan
 * are made so, each through its middle, and those nearly on the face of a drawn wall lie on it.
 *
 * @returns null for less than three sides, and where two that follow each other run in one line.
 */
export function tracedOutline(storey: Storey, tapped: readonly Vector[]): readonly Vector[] | null {
  const apart = tapped.filter(
    (at, i) => lengthOf(minus(at, tapped.at(i - 1) ?? at)) >= LEAST_SIDE_MM || tapped.length === 1,
  );
  if (apart.length < 3) return null;
  const round = anticlockwise(apart);
  const lines = round.map((from, i): Line => {
    const to = round[(i + 1) % round.length] ?? from;
    const line = { at: times(plus(from, to), 0.5), direction: squared(unit(minus(to, from))) };
    return onFace(storey, line, lengthOf(minus(to, from)));
  });
  const corners: Vector[] = [];
  for (const [i, line] of lines.entries()) {
    const before = lines.at(i - 1) ?? line;
    const met = lineMeeting(
      planPointOf([...before.at]),
      before.direction,
      planPointOf([...line.at]),
      line.direction,
    );
    if (met === null) return null;
    corners.push(tidy(met));
  }
  return corners;
}
