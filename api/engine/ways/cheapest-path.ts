import { distanceMm, type Position, planPoint } from '../plan/plane.ts';
import type { VoidSpace } from '../plan/voids.ts';
import { houseWays } from './house-ways.ts';
import { inVoid, plumbToVoid } from './plumb.ts';
import type { RouteRequest } from './route.ts';
import type { Segment } from './run.ts';
import { openLay, reversedSegments, segmentBetween } from './segment.ts';
import { SKIRTING_MM } from './surface.ts';
import type { WayPlace } from './way-cost.ts';

/**
 * The cheapest path between two positions through the house's net of ways. Where the path's length is known, the likeliest
 * of several that differ by what they avoid: the cheapest that is not much longer or shorter. Always answers; where nothing
 * that is drawn leads there, with a right-angled path that is assumed throughout.
 */
export function cheapestPath(request: RouteRequest): readonly Segment[] {
  const { plan, tariff, from, to, fromMount, toMount, asFound } = request;
  if (isSamePlace(from, to)) return [];
  const ends: readonly [WayPlace, WayPlace] = [
    { position: from, mount: fromMount },
    { position: to, mount: toMount },
  ];
  const ways = houseWays(plan, tariff);
  const way = asFound === undefined ? ways.way(...ends, 'pence') : ways.wayAsFound(...ends, asFound.knownMm);
  return way?.segments ?? lastResort(request);
}

const isSamePlace = (a: Position, b: Position): boolean =>
  distanceMm(a.at, b.at) < 0.5 && Math.abs(a.levelMm - b.levelMm) < 0.5;

/** Right-angled, just above the upper storey's floor, whatever is in between. */
function lastResort(request: RouteRequest): readonly Segment[] {
  const { plan, from, to, fromMount, toMount, tariff } = request;
  const floorMm = (storeyId: string) => plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0;
  const storeyId = floorMm(to.storeyId) > floorMm(from.storeyId) ? to.storeyId : from.storeyId;
  const space: VoidSpace = { kind: 'floor', storeyId, levelMm: floorMm(storeyId) + SKIRTING_MM };
  const start = plumbToVoid({ plan, place: from, mount: fromMount, space, tariff });
  const finish = plumbToVoid({ plan, place: to, mount: toMount, space, tariff });
  const [a, b] = [start.arrival.at, finish.arrival.at];
  const stops = [a, planPoint(b[0], a[1]), b].map((at) => inVoid(plan, space, at));
  const lay = { ...openLay('surface-channel', 'assumed'), containment: 'channel' as const };
  const level = stops.slice(1).flatMap((stop, index) => {
    const segment = segmentBetween(stops[index] ?? stop, stop, lay);
    return segment.lengthMm < 0.01 ? [] : [segment];
  });
  return [...start.segments, ...level, ...reversedSegments(finish.segments)].map(
    (segment): Segment => ({ ...segment, certainty: 'assumed' }),
  );
}
