import type { Ceiling, Floor, Storey } from '#model/building.ts';
import { passesBeneath } from './passes-beneath.ts';
import type { Plan } from './plan.ts';
import { distanceMm, type PlanPoint, type Position, planPoint } from './plane.ts';
import { remembered } from './remembered.ts';
import { roomAt, surroundingsAt } from './surroundings.ts';

/** Floor boards are 18 to 22 mm thick; the thicker leaves less cover. Common practice, no source. */
export const BOARDS_MM = 22;
/**
 * Where nobody measured the joists, or cable passes beneath them, it lies this far below the finished floor: about the
 * middle of a 175 mm joist under its boards. Common practice, no source.
 */
const BELOW_FLOOR_MM = 110;
/** It keeps this far off whatever closes the void from below, or to the middle of a shallow one. Assumed, no source. */
const OFF_CEILING_MM = 50;
/** Cable in a loft lies on the ceiling's joists, about 100 mm above the ceiling. Common practice, no source. */
const ABOVE_CEILING_MM = 100;
/** How far outside the rooms above a place may be and still be under that storey: the thickness of a wall. */
const UNDER_WALL_MM = 400;

/** A level of the building at which cable may run under cover: under a storey's floor, or over its ceiling. */
export interface VoidSpace {
  readonly kind: 'floor' | 'loft';
  /** The storey whose floor it is under; for a loft the storey beneath it. */
  readonly storeyId: string;
  /** Where the cable lies, above the job's zero level. */
  readonly levelMm: number;
}

/**
 * The void under a storey's floor, whether or not it reaches everywhere: between timber joists, or between a
 * concrete floor and the ceiling hung below it. Null where the floor has none.
 */
export function floorVoid(plan: Plan, storeyId: string, floor: Floor): VoidSpace | null {
  const planStorey = plan.storeyById.get(storeyId);
  if (planStorey === undefined || floor.build === 'solid' || floor.voidMm === 0) return null;
  const { floorLevelMm } = planStorey.storey;
  if (floor.build === 'suspended-timber') {
    const deepestMm = Math.max(floor.voidMm / 2, floor.voidMm - OFF_CEILING_MM);
    return {
      kind: 'floor',
      storeyId,
      levelMm: floorLevelMm - Math.min(belowFloorMm(planStorey.storey), deepestMm),
    };
  }
  const below = plan.storeyById.get(planStorey.belowId ?? '')?.storey;
  if (below === undefined) return null;
  const ceilingMm = below.floorLevelMm + below.heightMm;
  return { kind: 'floor', storeyId, levelMm: ceilingMm + Math.max(0, floorLevelMm - ceilingMm) / 4 };
}

/**
 * How far below the finished floor cable lies: in the middle of the joists, where a hole may be and where the cover to both
 * faces is the most that there is. Source: Approved Document A; BS 7671 522.6.201. One level for a storey, so that cable goes
 * level from room to room: by its shallowest joists, whose middle leaves deeper ones as much cover above and more below.
 */
const belowFloorMm = remembered(({ floor, rooms }: Storey): number => {
  const depths = [floor, ...rooms.flatMap((room) => room.floor ?? [])].flatMap((each) =>
    each.build === 'suspended-timber' && !passesBeneath(each) ? (each.joistDepthMm ?? []) : [],
  );
  return depths.length === 0 ? BELOW_FLOOR_MM : BOARDS_MM + Math.round(Math.min(...depths) / 2);
});

/** The void under the floor at a position; null on solid floors, and on concrete, which nobody cuts for a cable. */
export function voidBelow(plan: Plan, position: Position): VoidSpace | null {
  const surroundings = surroundingsAt(plan, position);
  if (surroundings === null || surroundings.floor.build !== 'suspended-timber') return null;
  return floorVoid(plan, position.storeyId, surroundings.floor);
}

/**
 * The void over the ceiling at a position: that of the floor above where a room above covers it, else the
 * loft where the ceiling has one.
 *
 * @returns null under a flat roof, under a floor without a void, or for an unknown storey.
 */
export function voidAbove(plan: Plan, position: Position): VoidSpace | null {
  const surroundings = surroundingsAt(plan, position);
  const aboveId = plan.storeyById.get(position.storeyId)?.aboveId ?? null;
  const above = aboveId === null ? undefined : plan.storeyById.get(aboveId)?.storey;
  if (surroundings === null) return null;
  const ceiling: Ceiling = surroundings.room?.room.ceiling ?? surroundings.storey.ceiling;
  if (above !== undefined && !ceiling.loft && isUnder(plan, above.id, position.at))
    return floorVoid(plan, above.id, roomAt(plan, above.id, position.at)?.room.floor ?? above.floor);
  return ceiling.loft ? loftOf(surroundings.storey) : null;
}

function loftOf({ id, floorLevelMm, heightMm }: Storey): VoidSpace {
  return { kind: 'loft', storeyId: id, levelMm: floorLevelMm + heightMm + ABOVE_CEILING_MM };
}

/** The loft over a storey, whether or not it reaches everywhere; null where none of its ceilings has one. */
export function loftOver(plan: Plan, storeyId: string): VoidSpace | null {
  const storey = plan.storeyById.get(storeyId)?.storey;
  if (storey === undefined) return null;
  const ceilings = [storey.ceiling, ...storey.rooms.flatMap(({ ceiling }) => ceiling ?? [])];
  return ceilings.some(({ loft }) => loft) ? loftOf(storey) : null;
}

/** A storey without any closed room is taken to cover the whole house: nobody has drawn it yet. */
function isUnder(plan: Plan, aboveId: string, at: PlanPoint): boolean {
  const corners = [...plan.roomById.values()]
    .filter((room) => room.storeyId === aboveId)
    .flatMap((room) => (room.outline.length === 0 ? [] : [room.outline]));
  if (corners.length === 0 || roomAt(plan, aboveId, at) !== null) return true;
  return corners.some((outline) =>
    outline.some((from, index) => {
      const to = outline[(index + 1) % outline.length] ?? from;
      return distanceToStretchMm(from, to, at) <= UNDER_WALL_MM;
    }),
  );
}

function distanceToStretchMm(from: PlanPoint, to: PlanPoint, at: PlanPoint): number {
  const lengthMm = distanceMm(from, to);
  if (lengthMm === 0) return distanceMm(from, at);
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const share = ((at[0] - from[0]) * x + (at[1] - from[1]) * y) / (lengthMm * lengthMm);
  const clamped = Math.min(1, Math.max(0, share));
  return distanceMm(planPoint(from[0] + clamped * x, from[1] + clamped * y), at);
}
