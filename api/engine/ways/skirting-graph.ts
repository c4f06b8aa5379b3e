import type { Plan, PlanRoom, PlanWall } from '../plan/plan.ts';
import { distanceMm, type PlanPoint, type WallSpot } from '../plan/plane.ts';
import { pointOnFace } from '../plan/position-of-place.ts';
import { type OutlineEdge, outlineEdges } from '../plan/room-outline.ts';
import { roomsOfStorey } from '../plan/surroundings.ts';
import { SKIRTING_MM } from './along-wall.ts';

/** Channel goes over a door this far above its head, past the architrave. Common practice, no source. */
const OVER_DOOR_MM = 60;
/** Holes through walls keep this far from the corners. */
const FROM_CORNER_MM = 100;

/** A spot above the skirting. */
export interface SkirtingNode {
  readonly id: string;
  readonly at: PlanPoint;
  readonly spot: WallSpot;
}

/** Two neighbouring spots and what is between them; `overMm` is how high the way round a door goes. */
export interface SkirtingLink {
  readonly from: SkirtingNode;
  readonly to: SkirtingNode;
  readonly lengthMm: number;
  readonly kind: 'along' | 'over-door' | 'through-wall';
  readonly overMm: number;
}

interface RoomEdge {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
  readonly startMm: number;
  readonly endMm: number;
  readonly edge: OutlineEdge;
}

/**
 * The ways round the rooms of a storey above the skirting: along the walls, over the doors, and through walls
 * that have a room on both sides.
 *
 * @param spots places that must be among the nodes, on that storey.
 */
export function skirtingLinks(
  plan: Plan,
  storeyId: string,
  spots: readonly WallSpot[],
): readonly SkirtingLink[] {
  const rooms = roomsOfStorey(plan, storeyId).map((room) => roomEdges(plan, room));
  const holes = holesByWall(rooms.flat(), spots);
  const links = rooms.flatMap((edges) => [
    ...edges.flatMap((edge) => linksAlong(edge, stopsOf(edge, holes, spots))),
    ...edges.flatMap((edge, index) => linkAtCorner(edge, edges[(index + 1) % edges.length])),
  ]);
  const through = [...holes.values()].flatMap(({ wall, alongMm }) =>
    alongMm.map((mm): SkirtingLink => {
      const from = nodeAt(wall, 'left', mm);
      const to = nodeAt(wall, 'right', mm);
      return { from, to, lengthMm: wall.wall.thicknessMm, kind: 'through-wall', overMm: 0 };
    }),
  );
  return [...links, ...through];
}

/** The node of a spot on a wall's face. */
export function nodeAt(wall: PlanWall, side: WallSpot['side'], alongMm: number): SkirtingNode {
  return {
    id: `${wall.wall.id}/${side}/${alongMm.toFixed(1)}`,
    at: pointOnFace(wall, side, alongMm),
    spot: { wallId: wall.wall.id, side, alongMm },
  };
}

function roomEdges(plan: Plan, room: PlanRoom): readonly RoomEdge[] {
  return outlineEdges(room.room, plan.wallById).flatMap((edge) => {
    const wall = plan.wallById.get(edge.wallId);
    if (wall === undefined) return [];
    const along = (at: PlanPoint) =>
      (at[0] - wall.wall.from[0]) * wall.direction[0] + (at[1] - wall.wall.from[1]) * wall.direction[1];
    return [{ wall, side: edge.side, startMm: along(edge.from), endMm: along(edge.to), edge }];
  });
}

interface Holes {
  readonly wall: PlanWall;
  readonly alongMm: readonly number[];
}

/** Where walls with a room on both sides may be drilled: near their corners, and straight behind the spots. */
function holesByWall(edges: readonly RoomEdge[], spots: readonly WallSpot[]): ReadonlyMap<string, Holes> {
  const holes = new Map<string, Holes>();
  for (const left of edges.filter((edge) => edge.side === 'left')) {
    const id = left.wall.wall.id;
    const right = edges.find((edge) => edge.wall.wall.id === id && edge.side === 'right');
    if (right === undefined || left.wall.wall.core === 'open') continue;
    const lowMm = Math.max(Math.min(left.startMm, left.endMm), Math.min(right.startMm, right.endMm));
    const highMm = Math.min(Math.max(left.startMm, left.endMm), Math.max(right.startMm, right.endMm));
    const wanted = [
      lowMm + FROM_CORNER_MM,
      highMm - FROM_CORNER_MM,
      ...spots.filter((spot) => spot.wallId === id).map((spot) => spot.alongMm),
    ];
    const alongMm = wanted.filter((mm) => mm > lowMm && mm < highMm && doorAt(left.wall, mm) === null);
    holes.set(id, { wall: left.wall, alongMm: [...new Set(alongMm)] });
  }
  return holes;
}

function stopsOf(
  edge: RoomEdge,
  holes: ReadonlyMap<string, Holes>,
  spots: readonly WallSpot[],
): readonly number[] {
  const id = edge.wall.wall.id;
  const lowMm = Math.min(edge.startMm, edge.endMm);
  const highMm = Math.max(edge.startMm, edge.endMm);
  const stops = [
    ...spots.filter((spot) => spot.wallId === id && spot.side === edge.side).map((spot) => spot.alongMm),
    ...(holes.get(id)?.alongMm ?? []),
    ...edge.wall.wall.openings.flatMap(({ alongMm, widthMm }) => [alongMm, alongMm + widthMm]),
  ].filter((mm) => mm > lowMm && mm < highMm);
  return [...new Set([lowMm, ...stops, highMm])].toSorted((a, b) => a - b);
}

function linksAlong({ wall, side }: RoomEdge, stopsMm: readonly number[]): readonly SkirtingLink[] {
  if (wall.wall.core === 'open') return [];
  return stopsMm.slice(1).map((endMm, index): SkirtingLink => {
    const startMm = stopsMm[index] ?? endMm;
    const headMm = doorAt(wall, (startMm + endMm) / 2);
    const overMm = headMm === null ? 0 : headMm + OVER_DOOR_MM - SKIRTING_MM;
    return {
      from: nodeAt(wall, side, startMm),
      to: nodeAt(wall, side, endMm),
      lengthMm: endMm - startMm + 2 * overMm,
      kind: headMm === null ? 'along' : 'over-door',
      overMm,
    };
  });
}

/** The head of a door or opening that stands on the floor at this place along a wall; null where there is none. */
function doorAt(wall: PlanWall, alongMm: number): number | null {
  const door = wall.wall.openings.find(
    (opening) =>
      opening.kind !== 'breast' &&
      opening.sillMm < SKIRTING_MM &&
      alongMm > opening.alongMm &&
      alongMm < opening.alongMm + opening.widthMm,
  );
  return door?.headMm ?? null;
}

function linkAtCorner(edge: RoomEdge, next: RoomEdge | undefined): readonly SkirtingLink[] {
  if (next === undefined) return [];
  const from = nodeAt(edge.wall, edge.side, edge.endMm);
  const to = nodeAt(next.wall, next.side, next.startMm);
  return [{ from, to, lengthMm: distanceMm(from.at, to.at), kind: 'along', overMm: 0 }];
}
