import { alongWallMm } from '../../plan/along-wall.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PlanPoint } from '../../plan/plane.ts';
import { type OutlineEdge, outlineEdges } from '../../plan/room-outline.ts';
import { roomsOfStorey } from '../../plan/surroundings.ts';
import { alongFace, type FlatFace, flatFaceOf } from './flat-face.ts';

/** One of the two faces that meet in a corner, and where along it the corner is. */
export interface CornerFace {
  readonly face: FlatFace;
  readonly alongMm: number;
  /** Which way along the face leads away from the corner. */
  readonly away: 1 | -1;
}

/** A corner of a room: the faces on both sides of it. */
export interface FaceCorner {
  readonly faces: readonly [CornerFace, CornerFace];
  /** Whether it is an inside corner, whose angle is a zone. */
  readonly inside: boolean;
}

/** The corners of all rooms whose walls close. */
export function faceCorners(plan: Plan): readonly FaceCorner[] {
  return plan.storeys.flatMap(({ storey }) =>
    roomsOfStorey(plan, storey.id).flatMap(({ room }) => {
      const edges = outlineEdges(room, plan.wallById);
      return edges.flatMap((edge, index) => cornerOf(plan, edge, edges[(index + 1) % edges.length] ?? edge));
    }),
  );
}

function cornerOf(plan: Plan, edge: OutlineEdge, next: OutlineEdge): readonly FaceCorner[] {
  const [a, b] = [cornerFace(plan, edge, edge.to, -1), cornerFace(plan, next, next.from, 1)];
  const [one, two] = [plan.wallById.get(edge.wallId), plan.wallById.get(next.wallId)];
  if (a === null || b === null || !one || !two || a.face.key === b.face.key) return [];
  return [{ faces: [a, b], inside: turns(edge, next) }];
}

/** Anticlockwise round a room: a turn to the left is an inside corner. */
function turns(edge: OutlineEdge, next: OutlineEdge): boolean {
  const [ax, ay] = [edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]];
  const [bx, by] = [next.to[0] - next.from[0], next.to[1] - next.from[1]];
  return ax * by - ay * bx > 0;
}

/** @param way 1 where the edge leads away from the corner, −1 where it leads to it. */
function cornerFace(plan: Plan, edge: OutlineEdge, corner: PlanPoint, way: 1 | -1): CornerFace | null {
  const face = flatFaceOf(plan, edge.wallId, edge.side);
  const wall = plan.wallById.get(edge.wallId);
  if (face === null || wall === undefined) return null;
  const along = (at: PlanPoint) =>
    alongFace(face, { wallId: edge.wallId, side: edge.side, alongMm: alongWallMm(wall, at) }) ?? 0;
  const [startMm, endMm] = [along(edge.from), along(edge.to)];
  const forwards = endMm >= startMm ? 1 : -1;
  const alongMm = Math.min(face.highMm, Math.max(face.lowMm, along(corner)));
  return { face, alongMm, away: forwards === way ? 1 : -1 };
}
