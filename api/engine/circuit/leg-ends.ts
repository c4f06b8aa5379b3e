import type { End } from '#model/cable.ts';
import type { Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inIdOrder } from './id-order.ts';
import type { NodeId } from './network.ts';
import { loadSideOf, loadSideTowards } from './point-terminals.ts';

/** The nodes between which a leg runs. */
export interface LegEnds {
  readonly from: NodeId;
  readonly to: NodeId;
}

/** The point or circuit at an end, sides not told apart. */
function spotOf(end: End): string {
  return 'origin' in end ? end.origin : end.point;
}

/** An end at a fused unit that does not say which side of it. */
interface OpenEnd {
  readonly leg: Leg;
  readonly which: 'from' | 'to';
  readonly other: string;
}

/**
 * The nodes of every leg's ends, by leg id; legs whose ends the job does not hold are left out.
 *
 * An end at a fused unit that names no side is at the **supply** when the leg leads to an origin without
 * passing the unit itself, else at the **load**. So a unit that is wired in a ring has both ring legs on its
 * supply side, and what lies beyond a unit on a spur is on its load side. Where no leg of a unit leads to an
 * origin (a survey in progress) and none is said to be its supply, the first by id is taken for it.
 * At a grid, a leg is at the fused module that names the leg's other end, else at the grid's own terminals.
 */
export function legEnds(job: Job): ReadonlyMap<string, LegEnds> {
  const points = new Map(job.points.map((point) => [point.id, point]));
  const spots = new Set([...points.keys(), ...job.circuits.map(({ id }) => id)]);
  const legs = job.legs.filter(({ from, to }) => spots.has(spotOf(from)) && spots.has(spotOf(to)));
  const supplyEnds = inferredSupplyEnds(job, legs, points);
  const nodeOf = (leg: Leg, which: 'from' | 'to'): NodeId => {
    const end = leg[which];
    if ('origin' in end) return end.origin;
    const other = leg[which === 'from' ? 'to' : 'from'];
    const towards = 'point' in other ? other.point : null;
    const point = points.get(end.point);
    if (!point || end.side === 'supply') return end.point;
    if (end.side === 'load') return loadSideOf(point, towards);
    if (point.kind !== 'fused-unit') return loadSideTowards(point, towards) ?? end.point;
    return supplyEnds.has(`${leg.id} ${which}`) ? end.point : loadSideOf(point, towards);
  };
  return new Map(legs.map((leg) => [leg.id, { from: nodeOf(leg, 'from'), to: nodeOf(leg, 'to') }]));
}

function inferredSupplyEnds(job: Job, legs: readonly Leg[], points: ReadonlyMap<string, Point>): Set<string> {
  const origins = new Set(job.circuits.map(({ id }) => id));
  const neighbours = neighboursOf(legs);
  const supplyEnds = new Set<string>();
  for (const [unitId, ends] of openEndsByUnit(legs, points)) {
    const supplies = ends.filter(({ other }) => leadsToOrigin(other, unitId, { neighbours, origins }));
    const said = legs.some(({ from, to }) => [from, to].some((end) => isSupplyOf(end, unitId)));
    const first = ends.toSorted((a, b) => inIdOrder(a.leg.id, b.leg.id))[0];
    const chosen = supplies.length === 0 && !said && first ? [first] : supplies;
    for (const { leg, which } of chosen) supplyEnds.add(`${leg.id} ${which}`);
  }
  return supplyEnds;
}

function isSupplyOf(end: End, unitId: string): boolean {
  return 'point' in end && end.point === unitId && end.side === 'supply';
}

function openEndsByUnit(legs: readonly Leg[], points: ReadonlyMap<string, Point>): Map<string, OpenEnd[]> {
  const units = new Map<string, OpenEnd[]>();
  for (const leg of legs)
    for (const which of ['from', 'to'] as const) {
      const end = leg[which];
      if ('origin' in end || end.side !== undefined || points.get(end.point)?.kind !== 'fused-unit') continue;
      const other = spotOf(leg[which === 'from' ? 'to' : 'from']);
      units.set(end.point, [...(units.get(end.point) ?? []), { leg, which, other }]);
    }
  return units;
}

function neighboursOf(legs: readonly Leg[]): ReadonlyMap<string, readonly string[]> {
  const neighbours = new Map<string, string[]>();
  const add = (at: string, other: string): void => {
    const list = neighbours.get(at);
    if (list) list.push(other);
    else neighbours.set(at, [other]);
  };
  for (const { from, to } of legs) {
    add(spotOf(from), spotOf(to));
    add(spotOf(to), spotOf(from));
  }
  return neighbours;
}

function leadsToOrigin(
  start: string,
  without: string,
  graph: { neighbours: ReadonlyMap<string, readonly string[]>; origins: ReadonlySet<string> },
): boolean {
  if (start === without) return false;
  const reached = new Set([start]);
  for (const spot of reached) {
    if (graph.origins.has(spot)) return true;
    for (const other of graph.neighbours.get(spot) ?? []) if (other !== without) reached.add(other);
  }
  return false;
}
