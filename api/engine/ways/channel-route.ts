import type { Plan } from '../plan/plan.ts';
import { distanceMm, type Position, planPoint, type WallSpot } from '../plan/plane.ts';
import { facePosition } from '../plan/position-of-place.ts';
import { SKIRTING_MM } from './along-wall.ts';
import type { Candidate, RouteRequest } from './route.ts';
import type { Segment } from './run.ts';
import { type Lay, openLay, segmentBetween } from './segment.ts';
import { type PassedLink, shortestLinks } from './shortest-links.ts';
import { nodeAt, skirtingLinks } from './skirting-graph.ts';

const channelLay: Lay = {
  medium: 'surface-channel',
  depthMm: 0,
  containment: 'channel',
  insulation: 'none',
  certainty: 'derived',
};

/**
 * The path on the surface, in channel above the skirting, round the rooms and over the doors.
 *
 * @returns none when an end is not on a wall, the storeys differ, or no closed rooms join the two.
 */
export function channelCandidates({ plan, from, to }: RouteRequest): readonly Candidate[] {
  const [a, b] = [from.onWall, to.onWall];
  if (a === undefined || b === undefined || from.storeyId !== to.storeyId) return [];
  const [start, end] = [skirtingNode(plan, a), skirtingNode(plan, b)];
  if (start === null || end === null) return [];
  const way = shortestLinks(skirtingLinks(plan, from.storeyId, [a, b]), start.id, end.id);
  if (way === null) return [];
  const stops = [atSkirting(plan, a, from), ...way.flatMap((passed) => stopsOf(plan, passed, from)), to];
  const segments: Segment[] = [];
  let here = from;
  for (const next of stops) {
    const segment = channelBetween(plan, here, next);
    if (segment.lengthMm < 0.01) continue;
    const last = segments.at(-1);
    if (last !== undefined && goesStraightOn(last, segment))
      segments[segments.length - 1] = channelBetween(plan, last.from, segment.to);
    else segments.push(segment);
    here = next;
  }
  return [{ segments, rank: 0 }];
}

function skirtingNode(plan: Plan, spot: WallSpot) {
  const wall = plan.wallById.get(spot.wallId);
  return wall === undefined ? null : nodeAt(wall, spot.side, spot.alongMm);
}

function atSkirting(plan: Plan, spot: WallSpot, like: Position, aboveMm = 0): Position {
  return facePosition(plan, spot, SKIRTING_MM + aboveMm) ?? like;
}

/** The places that a link leads past, without the one it starts from. */
function stopsOf(plan: Plan, { link, reversed }: PassedLink, like: Position): readonly Position[] {
  const [start, end] = reversed ? [link.to, link.from] : [link.from, link.to];
  const arrival = atSkirting(plan, end.spot, like);
  if (link.kind !== 'over-door') return [arrival];
  return [
    atSkirting(plan, start.spot, like, link.overMm),
    atSkirting(plan, end.spot, like, link.overMm),
    arrival,
  ];
}

function channelBetween(plan: Plan, from: Position, to: Position): Segment {
  const [a, b] = [from.onWall, to.onWall];
  const wallId = b?.wallId ?? null;
  const through = a?.wallId === b?.wallId && a?.side !== b?.side;
  if (through) return segmentBetween(from, to, openLay('through-wall', 'derived'), { wallId });
  const storeyId = plan.wallById.get(wallId ?? '')?.storeyId ?? from.storeyId;
  return segmentBetween(from, to, channelLay, { wallId, side: b?.side ?? null, storeyId });
}

function goesStraightOn(a: Segment, b: Segment): boolean {
  if (a.medium !== b.medium || a.wallId !== b.wallId || a.direction !== b.direction) return false;
  const [x, y] = [b.to.at[0] - a.from.at[0], b.to.at[1] - a.from.at[1]];
  const wholeMm = Math.hypot(distanceMm(planPoint(0, 0), planPoint(x, y)), b.to.levelMm - a.from.levelMm);
  return Math.abs(a.lengthMm + b.lengthMm - wholeMm) < 0.01;
}
