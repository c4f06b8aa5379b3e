import { planPoint } from '../plan/plane.ts';
import { type VoidSpace, voidAbove, voidBelow } from '../plan/voids.ts';
import { alongWallCandidates, SKIRTING_MM, throughWallCandidates } from './along-wall.ts';
import { channelCandidates } from './channel-route.ts';
import { inVoid, plumbToVoid } from './plumb.ts';
import type { Candidate, RouteRequest } from './route.ts';
import type { Segment, Tariff } from './run.ts';
import { openLay, pathLengthMm, reversedSegments, segmentBetween } from './segment.ts';
import { voidPath } from './void-path.ts';

/**
 * The cheapest path between two positions by the tariff's pence (time included): along the wall, through it,
 * by a void above or below, or in channel on the surface where an accessory is mounted there or no void will
 * do. Of two at one price the shorter, then the kind named first. Where the path's length is known, the one that
 * fits it best to the nearest 100 mm comes before all these. Always answers; where nothing that is drawn
 * leads there, with a right-angled path that is assumed throughout.
 */
export function cheapestPath(request: RouteRequest): readonly Segment[] {
  const covered = [
    ...alongWallCandidates(request),
    ...throughWallCandidates(request),
    ...voidCandidates(request),
  ];
  const onSurface = request.fromMount === 'surface' || request.toMount === 'surface';
  const channel = onSurface || !covered.some(({ rank }) => rank === 0) ? channelCandidates(request) : [];
  const candidates = [...covered, ...channel];
  const [best] = (candidates.length === 0 ? [lastResort(request)] : candidates)
    .map((candidate, order) => ({
      ...candidate,
      order,
      misfit: misfitOf(candidate.segments, request.knownMm),
      millipence: Math.round(pathPence(candidate.segments, request.tariff) * 1000),
      wholeMm: Math.round(pathLengthMm(candidate.segments)),
    }))
    .toSorted(
      (a, b) =>
        a.misfit - b.misfit ||
        a.rank - b.rank ||
        a.millipence - b.millipence ||
        a.wholeMm - b.wholeMm ||
        a.order - b.order,
    );
  return best?.segments ?? [];
}

function misfitOf(segments: readonly Segment[], knownMm: number | undefined): number {
  return knownMm === undefined ? 0 : Math.round(Math.abs(pathLengthMm(segments) - knownMm) / 100);
}

function pathPence(segments: readonly Segment[], tariff: Tariff): number {
  return segments.reduce(
    (sum, { medium, lengthMm }) => sum + (tariff.pencePerM[medium] * lengthMm) / 1000,
    0,
  );
}

/** One path for each void that either end can reach. */
function voidCandidates(request: RouteRequest): readonly Candidate[] {
  const { plan, from, to } = request;
  const spaces = new Map<string, VoidSpace>();
  for (const end of [from, to])
    for (const space of [voidBelow(plan, end), voidAbove(plan, end)])
      if (space !== null) spaces.set(`${space.storeyId}/${space.kind}`, space);
  return [...spaces.entries()]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, space]) => {
      const [start, finish] = plumbs(request, space);
      const level = voidPath(plan, space, start.arrival.at, finish.arrival.at);
      if (level === null) return [];
      const segments = [...start.segments, ...level.segments, ...reversedSegments(finish.segments)];
      return [{ segments, rank: Math.max(start.rank, finish.rank, level.rank) }];
    });
}

function plumbs({ plan, from, to, fromMount, toMount, options }: RouteRequest, space: VoidSpace) {
  return [
    plumbToVoid({ plan, place: from, mount: fromMount, space, options }),
    plumbToVoid({ plan, place: to, mount: toMount, space, options }),
  ] as const;
}

/** Right-angled, just above the upper storey's floor, whatever is in between. */
function lastResort(request: RouteRequest): Candidate {
  const { plan, from, to } = request;
  const floorMm = (storeyId: string) => plan.storeyById.get(storeyId)?.storey.floorLevelMm ?? 0;
  const storeyId = floorMm(to.storeyId) > floorMm(from.storeyId) ? to.storeyId : from.storeyId;
  const space: VoidSpace = { kind: 'floor', storeyId, levelMm: floorMm(storeyId) + SKIRTING_MM };
  const [start, finish] = plumbs(request, space);
  const [a, b] = [start.arrival.at, finish.arrival.at];
  const stops = [a, planPoint(b[0], a[1]), b].map((at) => inVoid(plan, space, at));
  const lay = { ...openLay('surface-channel', 'assumed'), containment: 'channel' as const };
  const level = stops.slice(1).flatMap((stop, index) => {
    const segment = segmentBetween(stops[index] ?? stop, stop, lay);
    return segment.lengthMm < 0.01 ? [] : [segment];
  });
  const segments = [...start.segments, ...level, ...reversedSegments(finish.segments)].map(
    (segment): Segment => ({ ...segment, certainty: 'assumed' }),
  );
  return { segments, rank: 2 };
}
