import type { Worked } from '#engine/connections/worked.ts';
import { distanceMm, type PlanPoint, type Position } from '#engine/plan/plane.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import { type VoidSpace, voidAbove, voidBelow } from '#engine/plan/voids.ts';
import type { Waypoint } from '#model/cable.ts';
import type { JobEdit } from '../job-events.ts';
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

const rounded = (at: PlanPoint): [number, number] => [Math.round(at[0]), Math.round(at[1])];

function waypointAt(storey: string, at: PlanPoint, heightMm: number): Waypoint {
  return { storey, at: rounded(at), heightMm: Math.round(heightMm) };
}

/** Down or up into a void, across it square to the walls, and on to above or below the other end. */
function throughVoid(worked: Worked, [from, to]: Ends, space: VoidSpace): readonly Waypoint[] {
  const floorMm = worked.plan.storeyById.get(space.storeyId)?.storey.floorLevelMm ?? 0;
  const heightMm = space.levelMm - floorMm;
  const corner = [to.at[0], from.at[1]] as unknown as PlanPoint;
  const places = [from.at, corner, to.at].filter(
    (at, i, all) => i === 0 || distanceMm(at, all[i - 1] as PlanPoint) > ON_LINE_MM,
  );
  return places.map((at) => waypointAt(space.storeyId, at, heightMm));
}

const isSame = (one: VoidSpace | null, other: VoidSpace | null): boolean =>
  one !== null && other !== null && one.kind === other.kind && one.storeyId === other.storeyId;

/** The void that both ends can reach, that below the first one or that above it. */
function sharedVoid(worked: Worked, [from, to]: Ends, which: 'floor' | 'ceiling'): VoidSpace | null {
  const { plan } = worked;
  const own = which === 'floor' ? voidBelow(plan, from) : voidAbove(plan, from);
  return [voidBelow(plan, to), voidAbove(plan, to)].some((other) => isSame(own, other)) ? own : null;
}

/** How far along a closed outline a place on it is, mm; null where it is on none of its sides. */
function alongOutline(outline: readonly PlanPoint[], at: PlanPoint): number | null {
  let beforeMm = 0;
  for (const [i, from] of outline.entries()) {
    const to = outline[(i + 1) % outline.length] as PlanPoint;
    const sideMm = distanceMm(from, to);
    const [dx, dy] = [(to[0] - from[0]) / sideMm, (to[1] - from[1]) / sideMm];
    const [x, y] = [at[0] - from[0], at[1] - from[1]];
    const alongMm = x * dx + y * dy;
    if (Math.abs(x * dy - y * dx) <= ON_LINE_MM && alongMm >= -ON_LINE_MM && alongMm <= sideMm + ON_LINE_MM)
      return beforeMm + Math.min(sideMm, Math.max(0, alongMm));
    beforeMm += sideMm;
  }
  return null;
}

/** The corners of an outline from one place on it to another, the shorter way round. */
function cornersBetween(outline: readonly PlanPoint[], fromMm: number, toMm: number): readonly PlanPoint[] {
  const lengths = outline.map((at, i) => distanceMm(at, outline[(i + 1) % outline.length] as PlanPoint));
  const wholeMm = lengths.reduce((sum, mm) => sum + mm, 0);
  const onwards = (toMm - fromMm + wholeMm) % wholeMm;
  const forwards = onwards <= wholeMm / 2;
  let atMm = 0;
  const corners = outline.map((at, i) => {
    const away = forwards ? (atMm - fromMm + wholeMm) % wholeMm : (fromMm - atMm + wholeMm) % wholeMm;
    atMm += lengths[i] ?? 0;
    return { at, away };
  });
  const far = forwards ? onwards : wholeMm - onwards;
  return corners
    .filter(({ away }) => away > 1 && away < far - 1)
    .sort((a, b) => a.away - b.away)
    .map(({ at }) => at);
}

/** Level along the walls of the room that both ends are in, at the height of the lower. */
function alongWalls(worked: Worked, [from, to]: Ends): readonly Waypoint[] | null {
  const room = roomOfPosition(worked.plan, from);
  if (room === null || room.room.id !== roomOfPosition(worked.plan, to)?.room.id) return null;
  const [start, end] = [alongOutline(room.outline, from.at), alongOutline(room.outline, to.at)];
  const storey = worked.plan.storeyById.get(from.storeyId)?.storey;
  if (start === null || end === null || storey === undefined) return null;
  const heightMm = Math.min(from.levelMm, to.levelMm) - storey.floorLevelMm;
  return [from.at, ...cornersBetween(room.outline, start, end), to.at].map((at) =>
    waypointAt(storey.id, at, heightMm),
  );
}

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
  return [
    way(
      'floor',
      'Under the floor',
      inVoid('floor'),
      ends ? 'no void under the floor joins its ends' : noPlace,
    ),
    way('ceiling', 'Above the ceiling', inVoid('ceiling'), ends ? 'no void above joins its ends' : noPlace),
    way(
      'walls',
      'Along the walls',
      ends === null ? null : alongWalls(worked, ends),
      ends ? 'its ends are not on the walls of one room' : noPlace,
    ),
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
