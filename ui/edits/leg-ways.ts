import type { Worked } from '#engine/connections/worked.ts';
import { distanceMm, type PlanPoint, type Position } from '#engine/plan/plane.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import { type VoidSpace, voidAbove, voidBelow } from '#engine/plan/voids.ts';
import type { Waypoint } from '#model/cable.ts';
import type { JobEdit } from '../job-events.ts';
import { waypointAt } from '../way-drawing/levels.ts';
import { alongFaces, facesRound, nearestOf, type RoomFace } from '../way-drawing/room-faces.ts';
import { putCertainty } from './facts.ts';

/** A way that a cable of unknown route may take. */
export interface LegWay {
  readonly key: 'floor' | 'ceiling' | 'walls';
  readonly words: string;
  /** Null where it cannot run so. */
  readonly via: readonly Waypoint[] | null;
  /** Why it cannot; null where it can. */
  readonly whyNot: string | null;
}

type Ends = readonly [Position, Position];

/** Places this near to each other on a wall's line are one, mm. */
const ON_LINE_MM = 60;

/** Down or up into a void, across it square to the walls, and on to above or below the other end. */
function throughVoid(worked: Worked, [from, to]: Ends, space: VoidSpace): readonly Waypoint[] {
  const floorMm = worked.plan.storeyById.get(space.storeyId)?.storey.floorLevelMm ?? 0;
  const heightMm = space.levelMm - floorMm;
  const corner = [to.at[0], from.at[1]] as unknown as PlanPoint;
  const places = [from.at, corner, to.at].filter(
    (at, i, all) => i === 0 || distanceMm(at, all[i - 1] as PlanPoint) > ON_LINE_MM,
  );
  return places.map((at) => waypointAt({ storeyId: space.storeyId, at, heightMm, levelMm: space.levelMm }));
}

const isSame = (one: VoidSpace | null, other: VoidSpace | null): boolean =>
  one !== null && other !== null && one.kind === other.kind && one.storeyId === other.storeyId;

/** The void that both ends can reach, that below the first one or that above it. */
function sharedVoid(worked: Worked, [from, to]: Ends, which: 'floor' | 'ceiling'): VoidSpace | null {
  const { plan } = worked;
  const own = which === 'floor' ? voidBelow(plan, from) : voidAbove(plan, from);
  return [voidBelow(plan, to), voidAbove(plan, to)].some((other) => isSame(own, other)) ? own : null;
}

/** Level along the walls of the room that both ends are in, at the height of the lower; or why it cannot. */
function alongWalls({ plan }: Worked, [from, to]: Ends): readonly Waypoint[] | string {
  const otherRoom = 'its ends are not on the walls of one room';
  const room = roomOfPosition(plan, from);
  if (room === null || room.room.id !== roomOfPosition(plan, to)?.room.id) return otherRoom;
  const floorMm = plan.storeyById.get(from.storeyId)?.storey.floorLevelMm ?? 0;
  const levelMm = Math.min(from.levelMm, to.levelMm);
  const start: Position = { ...from, levelMm, heightMm: levelMm - floorMm };
  const round = facesRound(plan, room);
  const end = nearestOf(round.faces, to.at, 1);
  if (end === null || end.offMm > ON_LINE_MM) return otherRoom;
  const { corners, whyNot } = alongFaces(round, start, end);
  if (whyNot !== null) return whyNot;
  return [waypointAt(start), ...corners.map(({ at, face }) => waypointAt(onFace(start, face, at)))];
}

const onFace = ({ onWall: _, ...from }: Position, { wall, side }: RoomFace, at: PlanPoint): Position => ({
  ...from,
  at,
  onWall: { wallId: wall.wall.id, side, alongMm: 0 },
});

/** The ways that a leg may be taken to run: under the floor, above the ceiling, along the walls. */
export function legWays(worked: Worked, legId: string): readonly LegWay[] {
  const run = worked.foundRuns.get(legId);
  const [from, to] = [run?.from.position ?? null, run?.to.position ?? null];
  const way = (
    key: LegWay['key'],
    words: string,
    via: readonly Waypoint[] | null,
    whyNot: string,
  ): LegWay => ({
    key,
    words,
    via,
    whyNot: via === null ? whyNot : null,
  });
  const ends: Ends | null = from === null || to === null ? null : [from, to];
  const noPlace = 'one of its ends has no place on the plan';
  const inVoid = (which: 'floor' | 'ceiling'): readonly Waypoint[] | null => {
    const space = ends === null ? null : sharedVoid(worked, ends, which);
    return space === null || ends === null ? null : throughVoid(worked, ends, space);
  };
  const walls = ends === null ? noPlace : alongWalls(worked, ends);
  return [
    way(
      'floor',
      'Under the floor',
      inVoid('floor'),
      ends ? 'no void under the floor joins its ends' : noPlace,
    ),
    way('ceiling', 'Above the ceiling', inVoid('ceiling'), ends ? 'no void above joins its ends' : noPlace),
    typeof walls === 'string'
      ? way('walls', 'Along the walls', null, walls)
      : way('walls', 'Along the walls', walls, ''),
  ];
}

/** Writes down where a leg runs, and whether that was seen. */
export const setLegWay = (
  legId: string,
  name: string,
  { via, certainty }: { readonly via: readonly Waypoint[]; readonly certainty: 'seen' | 'assumed' },
): JobEdit => ({
  label: `${name} runs elsewhere`,
  change: ({ legs }) => {
    const leg = legs.find(({ id }) => id === legId);
    if (leg === undefined) return;
    leg.via = structuredClone([...via]);
    putCertainty(leg, 'route', certainty);
    // Said of the old way, by its other name.
    putCertainty(leg, 'via', null);
  },
});

/** Takes back what was recorded of a leg's way: nobody knows it, and the likeliest is found. */
export const forgetLegWay = (legId: string, name: string): JobEdit => ({
  label: `The way of ${name} is not known`,
  change: ({ legs }) => {
    const leg = legs.find(({ id }) => id === legId);
    if (leg === undefined) return;
    delete leg.via;
    putCertainty(leg, 'route', null);
    putCertainty(leg, 'via', null);
  },
});
