import type { Plan } from '#engine/plan/plan.ts';
import { type OutlineEdge, outlineCorners, outlineEdges } from '#engine/plan/room-outline.ts';
import type { Storey } from '#model/building.ts';
import { overlapMm2 } from './overlap.ts';
import { dot, minus } from './vector.ts';
import { directionOf, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';

/** Two rooms may have this much in common, mm²: a centimetre too much along a wall is let pass. */
const COMMON_MM2 = 60_000;
/** A side may turn over by this much, mm: what rounding does. */
const TURNED_MM = 1;

/** What is wrong with how a storey is drawn, in words, each once: rooms that do not close, turn over, stand in each other. */
export function flawsOf(storey: Storey): ReadonlySet<string> {
  const map = wallMap(storey);
  const rooms = storey.rooms.map((room) => {
    const edges = outlineEdges(room, map);
    return { name: room.name, edges, outline: outlineCorners(edges) };
  });
  const flaws = new Set<string>();
  for (const wall of storey.walls) if (wallLengthMm(wall) < 1) flaws.add(`A wall would have no length.`);
  for (const [i, { name, edges, outline }] of rooms.entries()) {
    if (edges.length === 0) flaws.add(`${name} would not close.`);
    if (edges.some((edge) => isTurned(edge, map))) flaws.add(`A side of ${name} would turn over.`);
    for (const other of rooms.slice(i + 1))
      if (overlapMm2(outline, other.outline) > COMMON_MM2)
        flaws.add(`${name} and ${other.name} would stand in each other.`);
  }
  return flaws;
}

function isTurned({ wallId, side, from, to }: OutlineEdge, map: Plan['wallById']): boolean {
  const wall = map.get(wallId)?.wall;
  if (wall === undefined) return false;
  // The room lies on the left hand going round: along the wall where it has the wall's left side.
  return dot(minus(to, from), directionOf(wall)) * (side === 'left' ? 1 : -1) < -TURNED_MM;
}
