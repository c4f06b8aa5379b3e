import type { Storey, Wall } from '#model/building.ts';
import { dot, leftOf, minus, plus, times, unit, type Vector } from './vector.ts';
import type { WallKind } from './wall-kinds.ts';
import { directionOf, isParallel, runOf } from './wall-line.ts';

/** Rooms are measured to a centimetre or two: a side this near a wall that is drawn is on that wall, mm. */
export const LINE_UP_MM = 30;

/** The centre line of the wall that a side of a new room has, and what wall it is. */
export interface EdgeLine {
  readonly at: Vector;
  readonly direction: Vector;
  readonly kind: WallKind;
  /** How far the side of the room moves so that it lines up, mm; nought where it stays as measured. */
  readonly shiftedMm: number;
}

interface Side {
  readonly from: Vector;
  readonly to: Vector;
}

/** For each side of an inner outline, anticlockwise, the wall that it gets: one that is drawn there, or a new one of the kind. */
export function edgeLines(storey: Storey, outline: readonly Vector[], kind: WallKind): readonly EdgeLine[] {
  const runs = runsOf(storey);
  return outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length] ?? from;
    return alongRun(runs, { from, to }, kind) ?? newLine({ from, to }, kind);
  });
}

function newLine({ from, to }: Side, kind: WallKind): EdgeLine {
  const direction = unit(minus(to, from));
  const out = times(leftOf(direction), -kind.thicknessMm / 2);
  return { at: plus(from, out), direction, kind, shiftedMm: 0 };
}

function runsOf(storey: Storey): readonly (readonly Wall[])[] {
  const left = new Set(storey.walls);
  const runs: (readonly Wall[])[] = [];
  for (const wall of storey.walls) {
    if (!left.has(wall)) continue;
    const run = runOf(storey, wall);
    for (const one of run) left.delete(one);
    runs.push(run);
  }
  return runs;
}

/**
 * The run of walls whose face to the room lies on a side of it; of several the one that it shares the longest stretch with. One that only
 * goes on in line with the side gives the line and, since walls in one line are as thick as each other, the thickness; an outer wall in
 * line with one within stays an outer one.
 */
function alongRun(runs: readonly (readonly Wall[])[], side: Side, asked: WallKind): EdgeLine | null {
  const direction = unit(minus(side.to, side.from));
  const lengthMm = dot(minus(side.to, side.from), direction);
  let best: { readonly line: EdgeLine; readonly commonMm: number } | null = null;
  for (const run of runs)
    for (const wall of run) {
      if (!isParallel(direction, directionOf(wall))) continue;
      // Outwards from the room is to the right of its side.
      const outMm = -dot(leftOf(direction), minus(wall.from, side.from));
      const shiftedMm = outMm - wall.thicknessMm / 2;
      if (Math.abs(shiftedMm) > LINE_UP_MM) continue;
      const along = [wall.from, wall.to].map((end) => dot(minus(end, side.from), direction));
      const commonMm = Math.min(lengthMm, Math.max(...along)) - Math.max(0, Math.min(...along));
      if (commonMm < -REACH_MM || (best !== null && commonMm <= best.commonMm)) continue;
      const isBeside = commonMm > LINE_UP_MM;
      const { core, external } = isBeside ? wall : asked;
      const kind = { thicknessMm: wall.thicknessMm, core, external };
      const towards = directionOf(wall);
      const sense = dot(towards, direction) < 0 ? -1 : 1;
      best = { commonMm, line: { at: wall.from, direction: times(towards, sense), kind, shiftedMm } };
    }
  return best?.line ?? null;
}

/**
 * A wall that ends this far before a side of a room begins goes on into that side's wall, mm: it ends in the middle of the wall across,
 * and no wall of a house is thicker than twice this.
 */
const REACH_MM = 300 + LINE_UP_MM;
