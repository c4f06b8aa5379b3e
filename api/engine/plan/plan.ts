import type { Fixture, Floor, Room, Storey, Wall } from '#model/building.ts';
import type { Point } from '#model/installation.ts';
import type { PlanPoint, Position } from './plane.ts';

/** A wall with its geometry worked out. Left and right are seen looking from → to. */
export interface PlanWall {
  readonly wall: Wall;
  readonly storeyId: string;
  readonly lengthMm: number;
  /** Unit vector from → to. */
  readonly direction: readonly [number, number];
  /** Unit vector pointing out of the left face. */
  readonly leftNormal: readonly [number, number];
}

/** A room with its inner outline; empty when its walls do not close. */
export interface PlanRoom {
  readonly room: Room;
  readonly storeyId: string;
  readonly outline: readonly PlanPoint[];
  readonly areaMm2: number;
}

/** A storey with the storeys around it. */
export interface PlanStorey {
  readonly storey: Storey;
  readonly aboveId: string | null;
  readonly belowId: string | null;
}

/** The house as the engine uses it: everything by id, positions in three dimensions. */
export interface Plan {
  /** From the lowest floor level up, ties by id. */
  readonly storeys: readonly PlanStorey[];
  readonly storeyById: ReadonlyMap<string, PlanStorey>;
  readonly wallById: ReadonlyMap<string, PlanWall>;
  readonly roomById: ReadonlyMap<string, PlanRoom>;
  readonly pointById: ReadonlyMap<string, Point>;
  /** Positions of points that have a place; a point without one is absent. */
  readonly positionOfPoint: ReadonlyMap<string, Position>;
  /** Positions of boards that have a place, by board id. */
  readonly positionOfBoard: ReadonlyMap<string, Position>;
  readonly fixtures: readonly { readonly fixture: Fixture; readonly storeyId: string }[];
}

/** The room a place is in and the floor that counts there (the room's own where it differs). */
export interface Surroundings {
  readonly room: PlanRoom | null;
  readonly floor: Floor;
  readonly storey: Storey;
}

/** Distances along a wall's face to its two inside corners, mm; null where the face has no corner there. */
export interface CornerDistances {
  readonly leftMm: number | null;
  readonly rightMm: number | null;
}
