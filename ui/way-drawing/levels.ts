import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { facePosition, freePosition } from '#engine/plan/position-of-place.ts';
import { roomOfPosition, roomOfWallFace } from '#engine/plan/surroundings.ts';
import { type VoidSpace, voidAbove, voidBelow } from '#engine/plan/voids.ts';
import type { Waypoint } from '#model/cable.ts';
import { wallAt } from './room-faces.ts';

/** Height at which a cable comes out of a void into a room where nothing says another, mm: that of a usual outlet. */
const USUAL_MM = 450;

/** Where a cable is: on a wall of a room, or in a void. */
export type WayLevel =
  | { readonly kind: 'room'; readonly storeyId: string; readonly heightMm: number }
  | { readonly kind: 'void'; readonly space: VoidSpace };

/** A step from one level to another at the same place, or through the wall. */
export interface LevelMove {
  /** In plain words: "Down, under the floor". */
  readonly words: string;
  /** Where it leads; null where it cannot be done. */
  readonly waypoint: Waypoint | null;
  /** Why it cannot be done; null where it can. */
  readonly whyNot: string | null;
}

/** The steps that can be asked for. */
export type MoveKey = 'up' | 'down' | 'through';

const storeyOf = (plan: Plan, storeyId: string) => plan.storeyById.get(storeyId)?.storey;
const isSame = (one: VoidSpace | null, other: VoidSpace): boolean =>
  one !== null && one.kind === other.kind && one.storeyId === other.storeyId;

/** Where a position is. */
export function levelOf(plan: Plan, position: Position): WayLevel {
  const storey = storeyOf(plan, position.storeyId);
  const { storeyId, heightMm, levelMm } = position;
  if (heightMm < 0)
    return {
      kind: 'void',
      space: { ...(voidBelow(plan, position) ?? { kind: 'floor', storeyId }), levelMm },
    };
  if (storey !== undefined && heightMm > storey.heightMm) {
    const over = voidAbove(plan, { ...position, heightMm: storey.heightMm });
    return { kind: 'void', space: { ...(over ?? { kind: 'loft', storeyId }), levelMm } };
  }
  return { kind: 'room', storeyId, heightMm };
}

/** A void in plain words: "under the floor of Landing". */
export function spaceWords(plan: Plan, { kind, storeyId }: VoidSpace): string {
  const name = storeyOf(plan, storeyId)?.name ?? '';
  return kind === 'loft' ? `in the loft over ${name}` : `under the floor of ${name}`;
}

/** Where a cable is, in plain words. */
export function levelWords(plan: Plan, position: Position): string {
  const level = levelOf(plan, position);
  if (level.kind === 'void') return spaceWords(plan, level.space);
  const room = roomOfPosition(plan, position)?.room.name ?? storeyOf(plan, level.storeyId)?.name ?? '';
  return `${position.onWall === undefined ? 'in' : 'on the wall of'} ${room}, at ${Math.round(level.heightMm)} mm`;
}

/** Whether a way that has got to a place can be drawn on from a storey's plan: a void also from the rooms beneath it. */
export function isDrawnOn(plan: Plan, here: Position, storeyId: string): boolean {
  const level = levelOf(plan, here);
  if (level.kind === 'room' || level.space.kind === 'loft') return here.storeyId === storeyId;
  const { storeyId: overId } = level.space;
  return overId === storeyId || plan.storeyById.get(overId)?.belowId === storeyId;
}

const round = (value: number): number => Math.round(value);

/** A waypoint at a position; on a wall it says which, so that what leads there lies in it. */
export const waypointAt = ({ storeyId, at, heightMm, onWall }: Position): Waypoint => ({
  storey: storeyId,
  at: [round(at[0]), round(at[1])],
  heightMm: round(heightMm),
  ...(onWall === undefined ? {} : { wall: onWall.wallId, side: onWall.side }),
});

const cannot = (words: string, whyNot: string): LevelMove => ({ words, waypoint: null, whyNot });
const can = (words: string, waypoint: Waypoint): LevelMove => ({ words, waypoint, whyNot: null });

function intoVoid(plan: Plan, here: Position, space: VoidSpace, way: string): LevelMove {
  const floorMm = storeyOf(plan, space.storeyId)?.floorLevelMm ?? 0;
  const there = freePosition(plan, space.storeyId, here.at, space.levelMm - floorMm);
  const words = `${way}, ${spaceWords(plan, space)}`;
  return there === null ? cannot(words, 'the storey is not drawn') : can(words, waypointAt(there));
}

/** Out of a void into the room that a wall at this place looks into, at the height of the end where that is there. */
function intoRoom(
  plan: Plan,
  here: Position,
  to: {
    readonly storeyId: string | null;
    readonly space: VoidSpace;
    readonly way: string;
    readonly end: Position;
  },
): LevelMove {
  const { storeyId, space, way, end } = to;
  const spot = storeyId === null ? null : wallAt(plan, storeyId, here.at);
  if (storeyId === null || spot === null) return cannot(`${way} a wall`, 'no wall stands here');
  const heightMm = end.storeyId === storeyId && end.heightMm >= 0 ? end.heightMm : USUAL_MM;
  const there = facePosition(plan, spot, heightMm);
  const name = roomOfWallFace(plan, spot)?.room.name ?? storeyOf(plan, storeyId)?.name ?? '';
  const words = `${way} the wall of ${name}`;
  if (there === null) return cannot(words, 'no wall stands here');
  const reached = space.storeyId === storeyId && space.kind === 'floor' ? voidBelow : voidAbove;
  if (!isSame(reached(plan, there), space)) return cannot(words, 'the void does not reach that room');
  return can(words, waypointAt(there));
}

function up(plan: Plan, here: Position, end: Position): LevelMove {
  const level = levelOf(plan, here);
  if (level.kind === 'room') {
    const space = voidAbove(plan, here);
    return space === null
      ? cannot('Up above the ceiling', 'there is no void above')
      : intoVoid(plan, here, space, 'Up above the ceiling');
  }
  const { space } = level;
  if (space.kind === 'loft') return cannot('Up', 'it is under the roof');
  return intoRoom(plan, here, { storeyId: space.storeyId, space, way: 'Up in', end });
}

function down(plan: Plan, here: Position, end: Position): LevelMove {
  const level = levelOf(plan, here);
  if (level.kind === 'room') {
    const space = voidBelow(plan, here);
    return space === null
      ? cannot('Down, under the floor', 'there is no void under this floor')
      : intoVoid(plan, here, space, 'Down');
  }
  const { space } = level;
  const belowId =
    space.kind === 'loft' ? space.storeyId : (plan.storeyById.get(space.storeyId)?.belowId ?? null);
  if (belowId === null) return cannot('Down', 'there is nothing below');
  return intoRoom(plan, here, { storeyId: belowId, space, way: 'Down in', end });
}

function through(plan: Plan, { onWall, heightMm, ...here }: Position): LevelMove {
  const words = 'Through the wall';
  if (onWall === undefined)
    return cannot(
      words,
      levelOf(plan, { ...here, heightMm }).kind === 'void' ? 'it is in a void' : 'no wall stands here',
    );
  const side = onWall.side === 'left' ? 'right' : 'left';
  const spot = { ...onWall, side } as const;
  const [there, room] = [facePosition(plan, spot, heightMm), roomOfWallFace(plan, spot)];
  if (there === null || room === null) return cannot(words, 'no room lies behind it');
  return can(`${words}, into ${room.room.name}`, { ...waypointAt(there), medium: 'through-wall' });
}

/** The steps that a cable may take where it is: up, down, through the wall; each can be done, or says why not. */
export const movesFrom = (
  plan: Plan,
  here: Position,
  end: Position,
): Readonly<Record<MoveKey, LevelMove>> => ({
  up: up(plan, here, end),
  down: down(plan, here, end),
  through: through(plan, here),
});
