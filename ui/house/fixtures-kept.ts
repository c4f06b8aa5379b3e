import type { Storey, Wall } from '#model/building.ts';
import { dot, leftOf, lengthOf, plus, tidy, times, unit, type Vector } from './vector.ts';
import { alongMm, directionOf, offMm, wallLengthMm } from './wall-line.ts';

/** A fixture this near a wall's face stands against it, mm; into the wall it may be drawn by as much as measuring errs. */
const AGAINST_MM = 60;
const INTO_MM = 30;

type Lie = Pick<Wall, 'id' | 'from' | 'to' | 'thicknessMm'>;

/**
 * What stands against a wall that moves goes with its face; what only stands beside stays. To be asked before the walls are
 * changed; what comes of it is called after.
 */
export function keepingFixtures(storey: Storey): () => void {
  const before: readonly Lie[] = storey.walls.map(({ id, from, to, thicknessMm }) => ({
    id,
    from: [from[0], from[1]],
    to: [to[0], to[1]],
    thicknessMm,
  }));
  return () => {
    const now = new Map(storey.walls.map((wall) => [wall.id, wall]));
    for (const fixture of storey.fixtures) {
      const outline: readonly Vector[] = fixture.outline.map(([x, y]): Vector => [x, y]);
      let by: Vector = [0, 0];
      for (const was of before) {
        const wall = now.get(was.id);
        if (wall !== undefined && isAgainst(was, outline))
          by = withShift(by, faceMoved(was, wall, middleOf(outline)));
      }
      if (Math.abs(by[0]) >= 0.05 || Math.abs(by[1]) >= 0.05)
        fixture.outline = outline.map((at) => tidy(plus(at, by)));
    }
  };
}

/** A movement that another is added to: two walls of one line that something stands against move it once. */
function withShift(by: Vector, shift: Vector): Vector {
  const way = unit(shift);
  const moreMm = lengthOf(shift) - Math.max(0, dot(by, way));
  return moreMm > 0 ? plus(by, times(way, moreMm)) : by;
}

const middleOf = (outline: readonly Vector[]): Vector =>
  times(
    outline.reduce<Vector>((all, at) => plus(all, at), [0, 0]),
    1 / Math.max(1, outline.length),
  );

/** Whether the back of an outline lies along a face of a wall. */
function isAgainst(wall: Lie, outline: readonly Vector[]): boolean {
  const along = outline.map((at) => alongMm(wall, at));
  if (Math.min(...along) >= wallLengthMm(wall) || Math.max(...along) <= 0) return false;
  const sign = Math.sign(offMm(wall, middleOf(outline))) || 1;
  const gapMm = Math.min(...outline.map((at) => sign * offMm(wall, at))) - wall.thicknessMm / 2;
  return gapMm > -INTO_MM && gapMm < AGAINST_MM;
}

/** How far the face of a wall towards a place has moved there, across the wall as it is now. */
function faceMoved(was: Lie, wall: Lie, at: Vector): Vector {
  const sign = Math.sign(offMm(was, at)) || 1;
  const gapMm = (lie: Lie): number => offMm(lie, at) - (sign * lie.thicknessMm) / 2;
  return times(leftOf(directionOf(wall)), gapMm(was) - gapMm(wall));
}
