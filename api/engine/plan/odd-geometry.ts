import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Plan, PlanWall } from './plan.ts';
import { JOIN_MM } from './room-outline.ts';

/** What of a house is drawn so that it cannot be: of which thing, and what it concerns beside it. */
export interface Oddity {
  readonly kind:
    | 'room-open'
    | 'no-length'
    | 'walls-cross'
    | 'opening-beyond'
    | 'openings-overlap'
    | 'off-wall'
    | 'above-ceiling';
  readonly subjectId: string;
  /** The other wall, the other opening, the wall that it stands at; absent where there is none. */
  readonly otherId?: string;
  /** By how much, mm; absent where that says nothing. */
  readonly byMm?: number;
}

/** What rounding of measured lengths may come to, mm. Nothing of a house is drawn closer. Common practice, no source. */
const SLIP_MM = 1;

/**
 * All that is odd in the drawing of a house: rooms that do not close, walls without length or through one another, openings
 * past their wall's end or over one another, points and boards past the end of their wall or above the ceiling. By kind in
 * that order, within it as the job has them. Rooms that are only listed, without a wall, are not drawn and not odd.
 */
export function oddGeometry(job: Job, plan: Plan): readonly Oddity[] {
  const walls = [...plan.wallById.values()];
  return [
    ...openRooms(plan),
    ...walls
      .filter(({ lengthMm }) => lengthMm < SLIP_MM)
      .map(({ wall }): Oddity => ({ kind: 'no-length', subjectId: wall.id })),
    ...crossings(walls),
    ...walls.flatMap(oddOpenings),
    ...misplaced(job, plan),
  ];
}

const openRooms = (plan: Plan): readonly Oddity[] =>
  [...plan.roomById.values()]
    .filter(({ room, outline }) => room.walls.length > 0 && outline.length === 0)
    .map(({ room }) => ({ kind: 'room-open', subjectId: room.id }));

/** Walls of one storey whose centre lines go through each other away from their ends, where they should be parted. */
function crossings(walls: readonly PlanWall[]): readonly Oddity[] {
  return walls.flatMap((one, index) =>
    walls
      .slice(index + 1)
      .filter((other) => other.storeyId === one.storeyId && crosses(one, other))
      .map((other): Oddity => ({ kind: 'walls-cross', subjectId: one.wall.id, otherId: other.wall.id })),
  );
}

/** Whether each has an end well on either side of the other's line, by more than walls that meet are apart. */
const crosses = (one: PlanWall, other: PlanWall): boolean => isParted(one, other) && isParted(other, one);

function isParted(by: PlanWall, { wall }: PlanWall): boolean {
  const [x, y] = by.wall.from;
  const [normalX, normalY] = by.leftNormal;
  const awayMm = ([atX, atY]: readonly [number, number]): number => (atX - x) * normalX + (atY - y) * normalY;
  const [fromMm, toMm] = [awayMm(wall.from), awayMm(wall.to)];
  return fromMm * toMm < 0 && Math.min(Math.abs(fromMm), Math.abs(toMm)) > JOIN_MM;
}

function oddOpenings({ wall, lengthMm }: PlanWall): readonly Oddity[] {
  const beyond = wall.openings.flatMap(({ id, alongMm, widthMm }): readonly Oddity[] => {
    const byMm = Math.round(alongMm + widthMm - lengthMm);
    return byMm > SLIP_MM ? [{ kind: 'opening-beyond', subjectId: id, otherId: wall.id, byMm }] : [];
  });
  const sorted = wall.openings.toSorted((a, b) => a.alongMm - b.alongMm || (a.id < b.id ? -1 : 1));
  const over = sorted.flatMap((opening, index): readonly Oddity[] => {
    const next = sorted[index + 1];
    if (next === undefined || next.kind === 'breast' || opening.kind === 'breast') return [];
    const byMm = Math.round(opening.alongMm + opening.widthMm - next.alongMm);
    const isLevel = opening.sillMm < next.headMm && next.sillMm < opening.headMm;
    return byMm > SLIP_MM && isLevel
      ? [{ kind: 'openings-overlap', subjectId: next.id, otherId: opening.id, byMm }]
      : [];
  });
  return [...beyond, ...over];
}

function misplaced({ points, boards }: Job, plan: Plan): readonly Oddity[] {
  const things = [...points.filter(({ status }) => status !== 'removed'), ...boards];
  return things.flatMap(({ id, place }) => (place === undefined ? [] : oddPlace(id, place, plan)));
}

function oddPlace(subjectId: string, place: Place, plan: Plan): readonly Oddity[] {
  if (!('wall' in place)) return [];
  const wall = plan.wallById.get(place.wall);
  if (wall === undefined) return [];
  const pastMm = Math.round(place.alongMm - wall.lengthMm);
  const heightMm = plan.storeyById.get(wall.storeyId)?.storey.heightMm ?? Number.POSITIVE_INFINITY;
  const aboveMm = Math.round(place.heightMm - heightMm);
  return [
    ...(pastMm > SLIP_MM
      ? [{ kind: 'off-wall', subjectId, otherId: place.wall, byMm: pastMm } as const]
      : []),
    ...(aboveMm > SLIP_MM
      ? [{ kind: 'above-ceiling', subjectId, otherId: place.wall, byMm: aboveMm } as const]
      : []),
  ];
}
