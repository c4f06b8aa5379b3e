import type { Room } from '#model/building.ts';
import type { PlanWall } from './plan.ts';
import { distanceMm, type PlanPoint, planPointOf, type WallSpot } from './plane.ts';
import { lineMeeting, signedAreaMm2 } from './polygon.ts';
import { pointOnFace } from './position-of-place.ts';

/** Walls whose ends are this near one another are joined. */
export const JOIN_MM = 10;

/** One side of a room's inner outline: a stretch of a wall's face, anticlockwise round the room. */
export interface OutlineEdge {
  readonly wallId: string;
  readonly side: WallSpot['side'];
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

interface Pass {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
  readonly forwards: boolean;
}

/**
 * A room's inner outline, wall by wall, anticlockwise whichever way the job lists the walls.
 *
 * @returns empty when the walls do not close, or enclose nothing.
 */
export function outlineEdges(room: Room, wallById: ReadonlyMap<string, PlanWall>): readonly OutlineEdge[] {
  const listed: Pass[] = [];
  for (const { wall, side } of room.walls) {
    const found = wallById.get(wall);
    // Going round anticlockwise the room lies on the left hand.
    if (found !== undefined) listed.push({ wall: found, side, forwards: side === 'left' });
  }
  if (listed.length < 3) return [];
  const passes = [listed, listed.toReversed()].find((order) => closes(order));
  if (passes === undefined) return [];
  const edges = edgesOf(passes);
  return signedAreaMm2(edges.map((edge) => edge.from)) > 0 ? edges : [];
}

function startOf({ wall, forwards }: Pass): PlanPoint {
  return planPointOf(forwards ? wall.wall.from : wall.wall.to);
}

function endOf({ wall, forwards }: Pass): PlanPoint {
  return planPointOf(forwards ? wall.wall.to : wall.wall.from);
}

function closes(passes: readonly Pass[]): boolean {
  return passes.every((pass, index) => {
    const next = passes[(index + 1) % passes.length] ?? pass;
    return distanceMm(endOf(pass), startOf(next)) <= JOIN_MM;
  });
}

function edgesOf(passes: readonly Pass[]): readonly OutlineEdge[] {
  return passes.map((pass, index) => {
    const before = passes.at(index - 1) ?? pass;
    const after = passes[(index + 1) % passes.length] ?? pass;
    return {
      wallId: pass.wall.wall.id,
      side: pass.side,
      from: cornerBetween(before, pass) ?? faceEnd(pass, !pass.forwards),
      to: cornerBetween(pass, after) ?? faceEnd(pass, pass.forwards),
    };
  });
}

function faceEnd({ wall, side }: Pass, atTo: boolean): PlanPoint {
  return pointOnFace(wall, side, atTo ? wall.lengthMm : 0);
}

/** Null where two walls go on in one line, or one wall is passed on both its sides. */
function cornerBetween(a: Pass, b: Pass): PlanPoint | null {
  return lineMeeting(faceEnd(a, false), a.wall.direction, faceEnd(b, false), b.wall.direction);
}

/** The corners of an outline; where two walls in one line differ in thickness, both ends of the step. */
export function outlineCorners(edges: readonly OutlineEdge[]): readonly PlanPoint[] {
  return edges.flatMap((edge, index) => {
    const next = edges[(index + 1) % edges.length] ?? edge;
    return distanceMm(edge.to, next.from) > 0 ? [edge.from, edge.to] : [edge.from];
  });
}
