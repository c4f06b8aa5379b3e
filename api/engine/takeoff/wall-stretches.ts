import type { Cable, Containment } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import type { Run, Segment } from '../ways/run.ts';
import {
  along,
  between,
  directionOf,
  dot,
  isParallel,
  lengthOf,
  offLineMm,
  type Spot,
} from '../ways/spot.ts';
import { lengthRatios } from './run-length.ts';
import { type Straight, straightsOfRun } from './straights.ts';

/** A straight length of wall, tube or channel with the cables in it; cables that share one are in it together. */
export interface Stretch {
  readonly containment: Containment;
  /** Within the room's height: what runs on into a void is left out. */
  readonly lengthMm: number;
  readonly lowRatio: number;
  readonly highRatio: number;
  /** Ends that lead on into a floor or ceiling void, 0 to 2. */
  readonly voidEnds: number;
  /** Those that lie in it side by side where it is fullest. */
  readonly cables: readonly Cable[];
  /** Every run that lies in it somewhere, sorted. */
  readonly runIds: readonly string[];
  readonly ends: readonly [Spot, Spot];
  /** What it is made of, at least one. */
  readonly straights: readonly Straight[];
}

/** Cables of one bundle whose lines are drawn this near to each other lie in one tube, mm. Common practice, no source. */
const TOGETHER_MM = 60;

/**
 * Straight stretches of every run that a test picks, in the order of the runs, shared ones counted once and last: those
 * of one bundle that lie on one line and beside each other for a way.
 */
export function stretchesOf(
  runs: readonly Run[],
  plan: Plan,
  isWanted: (segment: Segment) => boolean,
): readonly Stretch[] {
  const isShared = sharedBundles(runs, isWanted);
  const straights = runs.flatMap((run) => straightsOfRun(run, { plan, isWanted, isShared }));
  const alone = straights.filter(({ bundle }) => bundle === null).map((straight) => [straight]);
  const shared = bundlesOf(straights).flatMap(onOneLine).flatMap(besideEachOther);
  return [...alone, ...shared].flatMap((together) => stretchOf(together) ?? []);
}

/** Whether new cables of several runs go by a name of a tube or channel; what one alone has is its own. */
function sharedBundles(
  runs: readonly Run[],
  isWanted: (segment: Segment) => boolean,
): (bundle: string) => boolean {
  const runIds = new Map<string, Set<string>>();
  for (const { id, segments } of runs) {
    for (const { bundle } of segments.filter(isWanted)) {
      if (bundle !== null) runIds.set(bundle, (runIds.get(bundle) ?? new Set()).add(id));
    }
  }
  return (bundle) => (runIds.get(bundle)?.size ?? 0) > 1;
}

/** Straights that share a tube or channel, by its name and kind. */
function bundlesOf(straights: readonly Straight[]): readonly (readonly Straight[])[] {
  const byName = new Map<string, Straight[]>();
  for (const straight of straights) {
    if (straight.bundle === null) continue;
    const name = `${straight.containment} ${straight.bundle}`;
    byName.set(name, [...(byName.get(name) ?? []), straight]);
  }
  return [...byName.values()];
}

/** Straights of a bundle by the line that they lie on. */
function onOneLine(bundled: readonly Straight[]): readonly (readonly Straight[])[] {
  const lines: Straight[][] = [];
  for (const straight of bundled.toSorted(longestFirst)) {
    const line = lines.find(([first]) => first !== undefined && liesOn(straight, first));
    if (line === undefined) lines.push([straight]);
    else line.push(straight);
  }
  return lines;
}

const longestFirst = (a: Straight, b: Straight): number =>
  b.lengthMm - a.lengthMm || (a.run.id < b.run.id ? -1 : Number(a.run.id > b.run.id)) || a.first - b.first;

function liesOn(straight: Straight, first: Straight): boolean {
  const [axis, direction] = [directionOf(first.from, first.to), directionOf(straight.from, straight.to)];
  if (axis === null || direction === null || !isParallel(axis, direction)) return false;
  return [straight.from, straight.to].every((spot) => offLineMm(first.from, axis, spot) <= TOGETHER_MM);
}

/** Straights on one line, parted where none lies beside another: one tube ends and another begins. */
function besideEachOther(line: readonly Straight[]): readonly (readonly Straight[])[] {
  const parts: { straights: Straight[]; toMm: number }[] = [];
  for (const { straight, fromMm, toMm } of extentsOf(line).toSorted((a, b) => a.fromMm - b.fromMm)) {
    const part = parts.at(-1);
    if (part === undefined || fromMm > part.toMm - 1) parts.push({ straights: [straight], toMm });
    else {
      part.straights.push(straight);
      part.toMm = Math.max(part.toMm, toMm);
    }
  }
  return parts.map(({ straights }) => straights.toSorted(longestFirst));
}

interface Extent {
  readonly straight: Straight;
  /** Along the line of the first straight, mm. */
  readonly fromMm: number;
  readonly toMm: number;
}

function extentsOf(line: readonly Straight[]): readonly Extent[] {
  const first = line[0];
  const axis = first === undefined ? null : directionOf(first.from, first.to);
  return line.map((straight) => {
    if (first === undefined || axis === null) return { straight, fromMm: 0, toMm: straight.lengthMm };
    const [aMm, bMm] = [
      dot(between(first.from, straight.from), axis),
      dot(between(first.from, straight.to), axis),
    ];
    return { straight, fromMm: Math.min(aMm, bMm), toMm: Math.max(aMm, bMm) };
  });
}

/** One stretch of straights that lie together, the longest first. */
function stretchOf(straights: readonly Straight[]): Stretch | null {
  const [first] = straights;
  if (first === undefined) return null;
  const extents = extentsOf(straights);
  const ratios = straights.map(({ run }) => lengthRatios(run));
  const ends = endsOf(first, extents);
  return {
    containment: first.containment,
    lengthMm: Math.max(first.lengthMm, straights.length === 1 ? 0 : lengthOf(between(...ends))),
    lowRatio: Math.min(...ratios.map(({ lowRatio }) => lowRatio)),
    highRatio: Math.max(...ratios.map(({ highRatio }) => highRatio)),
    voidEnds: Math.max(...straights.map(({ voidEnds }) => voidEnds)),
    cables: fullestOf(extents),
    runIds: [...new Set(straights.map(({ run }) => run.id))].toSorted(),
    ends,
    straights,
  };
}

/** From where the first reaches furthest to where the last does, on the line of the longest. */
function endsOf(first: Straight, extents: readonly Extent[]): readonly [Spot, Spot] {
  const axis = directionOf(first.from, first.to);
  if (axis === null) return [first.from, first.to];
  return [
    along(first.from, axis, Math.min(...extents.map(({ fromMm }) => fromMm))),
    along(first.from, axis, Math.max(...extents.map(({ toMm }) => toMm))),
  ];
}

/** The cables of the most runs that lie side by side anywhere, the thickest where several places have as many. */
function fullestOf(extents: readonly Extent[]): readonly Cable[] {
  const places = extents.map((place) => {
    const reaches = ({ fromMm, toMm }: Extent) => fromMm <= place.fromMm + 1e-6 && toMm > place.fromMm + 1e-6;
    const there = extents.filter((extent) => extent === place || reaches(extent));
    const runs = new Map(there.map(({ straight }) => [straight.run.id, straight.run.cable]));
    return [...runs].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, cable]) => cable);
  });
  const sumMm2 = (cables: readonly Cable[]) => cables.reduce((sum, { lineMm2 }) => sum + lineMm2, 0);
  const [fullest] = places.toSorted((a, b) => b.length - a.length || sumMm2(b) - sumMm2(a));
  return fullest ?? [];
}
