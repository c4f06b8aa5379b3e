import type { Room, Storey, Wall } from '#model/building.ts';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Plan, PlanRoom, PlanStorey, PlanWall } from './plan.ts';
import type { Position } from './plane.ts';
import { signedAreaMm2 } from './polygon.ts';
import { type PlanFrame, positionOfPlace } from './position-of-place.ts';
import { outlineCorners, outlineEdges } from './room-outline.ts';

/**
 * The house of a job as the engine uses it. A wall whose two ends are one place points along x; rooms whose
 * walls do not close have an empty outline and no area; points and boards without a place have no position.
 */
export function buildPlan(job: Pick<Job, 'storeys' | 'points' | 'boards'>): Plan {
  const storeys = stacked(job.storeys);
  const storeyById = new Map(storeys.map((each) => [each.storey.id, each]));
  const wallById = new Map<string, PlanWall>();
  for (const { storey } of storeys)
    for (const wall of storey.walls) wallById.set(wall.id, planWall(wall, storey.id));
  const roomById = new Map<string, PlanRoom>();
  for (const { storey } of storeys)
    for (const room of storey.rooms) roomById.set(room.id, planRoom(room, storey.id, wallById));
  return {
    storeys,
    storeyById,
    wallById,
    roomById,
    pointById: new Map(job.points.map((point) => [point.id, point])),
    positionOfPoint: positionsOf(job.points, { storeyById, wallById }),
    positionOfBoard: positionsOf(job.boards, { storeyById, wallById }),
    fixtures: storeys.flatMap(({ storey }) =>
      storey.fixtures.map((fixture) => ({ fixture, storeyId: storey.id })),
    ),
  };
}

/**
 * The plan of a job in which things are said otherwise of points and boards than in the job of the plan given,
 * but all of it stands where it stood: only the points are looked up anew.
 */
export function samePlaces(plan: Plan, job: Pick<Job, 'points'>): Plan {
  return { ...plan, pointById: new Map(job.points.map((point) => [point.id, point])) };
}

/** The plan of a job whose walls stand where they stood in the plan given, and may be built of something else. */
export function withWallsOf(plan: Plan, job: Pick<Job, 'storeys'>): Plan {
  const walls = job.storeys.flatMap((storey) => storey.walls.map((wall) => planWall(wall, storey.id)));
  return { ...plan, wallById: new Map(walls.map((wall) => [wall.wall.id, wall])) };
}

/** The plan of a job that differs from the job of the plan given in its points alone: walls and rooms are the same objects. */
export function movedPoints(plan: Plan, job: Pick<Job, 'points'>): Plan {
  return { ...samePlaces(plan, job), positionOfPoint: positionsOf(job.points, plan) };
}

function stacked(storeys: readonly Storey[]): readonly PlanStorey[] {
  const ordered = storeys.toSorted(
    (a, b) => a.floorLevelMm - b.floorLevelMm || (a.id < b.id ? -1 : Number(a.id > b.id)),
  );
  // Floors on one level (a main house and an annexe) stand beside, not above, each other.
  return ordered.map((storey) => ({
    storey,
    aboveId: ordered.find((other) => other.floorLevelMm > storey.floorLevelMm)?.id ?? null,
    belowId: ordered.findLast((other) => other.floorLevelMm < storey.floorLevelMm)?.id ?? null,
  }));
}

function planWall(wall: Wall, storeyId: string): PlanWall {
  const x = wall.to[0] - wall.from[0];
  const y = wall.to[1] - wall.from[1];
  const lengthMm = Math.hypot(x, y);
  const direction: readonly [number, number] = lengthMm === 0 ? [1, 0] : [x / lengthMm, y / lengthMm];
  return { wall, storeyId, lengthMm, direction, leftNormal: [-direction[1], direction[0]] };
}

function planRoom(room: Room, storeyId: string, wallById: ReadonlyMap<string, PlanWall>): PlanRoom {
  const outline = outlineCorners(outlineEdges(room, wallById));
  return { room, storeyId, outline, areaMm2: signedAreaMm2(outline) };
}

function positionsOf(
  placed: readonly { readonly id: string; readonly place?: Place | undefined }[],
  frame: PlanFrame,
): ReadonlyMap<string, Position> {
  const positions = new Map<string, Position>();
  for (const { id, place } of placed) {
    const position = place === undefined ? null : positionOfPlace(frame, place);
    if (position !== null) positions.set(id, position);
  }
  return positions;
}
