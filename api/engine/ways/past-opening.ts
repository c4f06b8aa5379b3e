import type { Opening } from '#model/building.ts';
import type { Plan, PlanWall } from '../plan/plan.ts';
import type { Position, WallSpot } from '../plan/plane.ts';
import { facePosition } from '../plan/position-of-place.ts';
import type { VoidSpace } from '../plan/voids.ts';
import { type WallFace, wallFace } from '../plan/wall-face.ts';
import { isOpenAt } from './along-wall.ts';
import { ZONE_MM } from './concealed-cable.ts';
import { layInWall } from './lay-in-wall.ts';
import type { Mount, RouteOptions } from './route.ts';
import type { Segment } from './run.ts';
import { segmentBetween } from './segment.ts';
import { studsOnWay } from './studs.ts';

/** How far cable that has to get past a door or a window keeps from its edge. */
const PAST_OPENING_MM = 100;
/** The middle of the zone beside an inside corner. Source: BS 7671 522.6.202. */
const IN_CORNER_MM = ZONE_MM / 2;

/** A place, and the void whose level is wanted. */
export interface PlumbRequest {
  readonly plan: Plan;
  readonly place: Position;
  readonly mount: Mount;
  readonly space: VoidSpace;
  readonly options: RouteOptions;
}

/** The stretch aside, if one is needed, and what it does to the path's rank. */
export interface Aside {
  readonly segments: readonly Segment[];
  readonly rank: number;
}

/**
 * The level stretch past an opening above or below the place, to the nearer inside corner that can be reached;
 * else just past the opening's edge, which is assumed and of rank 1: plumb cable there is in no zone.
 */
export function pastOpening({ plan, place, mount, space, options }: PlumbRequest): Aside {
  const wall = plan.wallById.get(place.onWall?.wallId ?? '');
  const spot = place.onWall;
  const opening = wall && spot && openingInTheWay(plan, wall, { place, spot, space });
  if (!wall || !spot || !opening) return { segments: [], rank: 0 };
  const { lawfulMm, otherMm } = waysPast(wall, {
    spot,
    opening,
    face: wallFace(plan, wall.wall.id, spot.side),
  });
  const reached = (mm: number) => isLevelClear(wall, spot, mm, place.heightMm);
  const nearest = (each: readonly number[]) =>
    each.filter(reached).toSorted((a, b) => Math.abs(a - spot.alongMm) - Math.abs(b - spot.alongMm))[0];
  const [lawful, other] = [nearest(lawfulMm), nearest(otherMm)];
  const to = facePosition(plan, { ...spot, alongMm: lawful ?? other ?? spot.alongMm }, place.heightMm);
  const rank = lawful === undefined ? 1 : 0;
  if (to === null || (lawful ?? other) === undefined) return { segments: [], rank };
  const lay = layInWall(wall, mount, options);
  const details = {
    wallId: wall.wall.id,
    side: spot.side,
    storeyId: wall.storeyId,
    studsCrossed: studsOnWay(wall, lay.medium, [place, to]),
  };
  const certainty = rank === 0 ? lay.certainty : 'assumed';
  return { segments: [segmentBetween(place, to, { ...lay, certainty }, details)], rank };
}

function openingInTheWay(
  plan: Plan,
  wall: PlanWall,
  way: { readonly place: Position; readonly spot: WallSpot; readonly space: VoidSpace },
): Opening | undefined {
  const floorMm = plan.storeyById.get(wall.storeyId)?.storey.floorLevelMm ?? 0;
  const lowMm = Math.min(way.place.levelMm, way.space.levelMm) - floorMm;
  const highMm = Math.max(way.place.levelMm, way.space.levelMm) - floorMm;
  return wall.wall.openings.find(
    (opening) =>
      opening.kind !== 'breast' &&
      isBeside(opening, way.spot.alongMm) &&
      highMm > opening.sillMm &&
      lowMm < opening.headMm,
  );
}

function isBeside({ alongMm, widthMm }: Opening, mm: number): boolean {
  return mm > alongMm && mm < alongMm + widthMm;
}

/** Places along the wall that are past an opening: in the zones at the inside corners, and beside its edges. */
function waysPast(
  wall: PlanWall,
  past: { readonly spot: WallSpot; readonly opening: Opening; readonly face: WallFace | null },
): { readonly lawfulMm: readonly number[]; readonly otherMm: readonly number[] } {
  const { alongMm, widthMm } = past.opening;
  const [lowMm, highMm] = [past.face?.lowCornerMm ?? null, past.face?.highCornerMm ?? null];
  const [startMm, endMm] = [Math.max(0, lowMm ?? 0), Math.min(wall.lengthMm, highMm ?? wall.lengthMm)];
  const onWall = (mm: number) =>
    mm > startMm && mm < endMm && wall.wall.openings.every((opening) => !isBeside(opening, mm));
  const corners = [
    ...(lowMm === null ? [] : [lowMm + IN_CORNER_MM]),
    ...(highMm === null ? [] : [highMm - IN_CORNER_MM]),
  ];
  const edges = [alongMm - PAST_OPENING_MM, alongMm + widthMm + PAST_OPENING_MM];
  return { lawfulMm: corners.filter(onWall), otherMm: edges.filter(onWall) };
}

function isLevelClear(wall: PlanWall, spot: WallSpot, toMm: number, heightMm: number): boolean {
  const [lowMm, highMm] = [Math.min(spot.alongMm, toMm), Math.max(spot.alongMm, toMm)];
  return wall.wall.openings.every((opening) => {
    const isPassed = opening.alongMm < highMm && opening.alongMm + opening.widthMm > lowMm;
    return !isPassed || !isOpenAt(opening, spot.side, heightMm);
  });
}
