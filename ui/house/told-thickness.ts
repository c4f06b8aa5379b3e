import type { Side, Wall } from '#model/building.ts';
import { openThickness, setThickness } from './beside.ts';
import { type Drawing, done, type Outcome } from './drawing.ts';
import { LINE_UP_MM } from './edge-lines.ts';
import { dot, leftOf, minus, unit, type Vector } from './vector.ts';
import { directionOf, isParallel, otherSide } from './wall-line.ts';

/** No wall of a house is thinner, mm. Common practice, no source: 50 is a partition of boards alone. */
const THINNEST_MM = 50;
/** A side and a wall have so much in common at least, mm. */
const COMMON_MM = 100;

/** A wall that is as thick as the gap which a side leaves to the room behind it. */
interface Told {
  readonly wallId: string;
  /** The side of the room behind it, whose face stays. */
  readonly kept: Side;
  readonly thicknessMm: number;
}

/**
 * Makes walls to which nobody gave a thickness as thick as the sides of a traced room tell: a side that lies within a wall's body is its
 * other face, and the room behind keeps its own.
 *
 * @param outline of the room to be drawn, anticlockwise.
 */
export function takeToldThickness(drawing: Drawing, outline: readonly Vector[]): Outcome {
  for (const [i, from] of outline.entries()) {
    const side = { from, to: outline[(i + 1) % outline.length] ?? from };
    const told = drawing.storey.walls.flatMap((wall) => toldBy(drawing, wall, side))[0];
    if (told === undefined) continue;
    const outcome = setThickness(drawing, told);
    if (!outcome.ok) return outcome;
  }
  return done;
}

function toldBy(
  { storey }: Drawing,
  wall: Wall,
  { from, to }: { readonly from: Vector; readonly to: Vector },
): readonly Told[] {
  const direction = unit(minus(to, from));
  if (wall.core === 'open' || !isParallel(direction, directionOf(wall))) return [];
  const along = [wall.from, wall.to].map((end) => dot(minus(end, from), direction));
  const commonMm =
    Math.min(Math.max(...along), dot(minus(to, from), direction)) - Math.max(Math.min(...along), 0);
  // Into the room is to the left of its side.
  const into = leftOf(direction);
  const middleMm = dot(minus(wall.from, from), into);
  const [nearMm, farMm] = [middleMm + wall.thicknessMm / 2, middleMm - wall.thicknessMm / 2];
  if (commonMm < COMMON_MM || nearMm <= LINE_UP_MM || farMm > -THINNEST_MM) return [];
  const near: Side = dot(leftOf(directionOf(wall)), into) > 0 ? 'left' : 'right';
  if (openThickness(storey, { wallId: wall.id, side: near }, { from, to }) === null) return [];
  return [{ wallId: wall.id, kept: otherSide(near), thicknessMm: Math.round(-farMm) }];
}
