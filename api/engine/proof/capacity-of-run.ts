import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { CableCapacity } from './cable-capacity.ts';
import { installedMethod } from './installed-method.ts';
import { groupingFactor, surroundedFactor, tabulatedCapacity } from './tabulated-capacity.ts';

/** What the capacity of a run depends on beside the run itself. */
export interface Neighbourhood {
  readonly plan: Plan;
  /** How many cables share a tube or channel, by its name. */
  readonly cablesInBundle: ReadonlyMap<string, number>;
}

interface Stretch {
  readonly segment: number;
  readonly fromMm: number;
  readonly method: string;
  readonly izA: number;
  readonly groupFactor: number;
  readonly grade: 'seen' | 'memory';
}

/**
 * What a cable may carry along its path: the least of its stretches, the first of equal ones.
 *
 * @returns `izA` null when the run has no path, the cable no figure, or any stretch an unknown method.
 * Source: BS 7671 Tables 4D5, 4D2A (method B), 4C1, 52.2; 30 °C ambient. Cables that share a bundle are taken
 * as fully loaded: the 30 % exemption is a designer's to claim.
 */
export function capacityOfRun(run: Run, around: Neighbourhood): CableCapacity {
  const known: Stretch[] = [];
  let fromMm = 0;
  let unknown = run.segments.length === 0;
  for (const [index, segment] of run.segments.entries()) {
    const stretch = capacityOfSegment(run, segment, around);
    if (stretch === null) unknown = true;
    else known.push({ ...stretch, segment: index, fromMm });
    fromMm += segment.lengthMm;
  }
  const worst = leastOf(known);
  return {
    id: run.id,
    izA: unknown ? null : (worst?.izA ?? null),
    method: worst?.method ?? null,
    worstSegment: worst?.segment ?? null,
    worstFromMm: worst?.fromMm ?? null,
    groupFactor: worst?.groupFactor ?? 1,
    ...(unknown && worst !== undefined ? { knownIzA: worst.izA } : {}),
    grade: worst?.grade ?? null,
  };
}

/**
 * Capacities of every new cable by run id and of every leg found by leg id; a leg whose cable nobody looked at
 * has none.
 */
export function capacities(worked: Worked): ReadonlyMap<string, CableCapacity> {
  const found = [...worked.foundRuns.entries()].map(([legId, run]) => ({ ...run, id: legId }));
  const runs = [...found, ...worked.runs];
  const around = { plan: worked.plan, cablesInBundle: cablesInBundle(runs) };
  const unseen = new Set(worked.job.legs.filter(({ cable }) => cable === undefined).map(({ id }) => id));
  return new Map(runs.filter(({ id }) => !unseen.has(id)).map((run) => [run.id, capacityOfRun(run, around)]));
}

function cablesInBundle(runs: readonly Run[]): ReadonlyMap<string, number> {
  const cables = new Map<string, number>();
  for (const run of runs) {
    const bundles = new Set(run.segments.map((segment) => segment.bundle));
    for (const bundle of bundles) if (bundle !== null) cables.set(bundle, (cables.get(bundle) ?? 0) + 1);
  }
  return cables;
}

function capacityOfSegment(
  run: Run,
  segment: Segment,
  around: Neighbourhood,
): Omit<Stretch, 'segment' | 'fromMm'> | null {
  const installed = installedMethod(segment, around.plan);
  const cell = installed === null ? null : tabulatedCapacity(run.cable, installed.method);
  if (installed === null || cell === null) return null;
  const cables = segment.bundle === null ? 1 : (around.cablesInBundle.get(segment.bundle) ?? 1);
  const onSurface = segment.medium === 'surface-clipped' && segment.containment === 'none';
  const groupFactor = groupingFactor(cables, onSurface ? 'layer' : 'enclosed');
  const insulationFactor = installed.surrounded ? surroundedFactor(segment.lengthMm) : 1;
  return {
    method: installed.method,
    // Rounded to the milliampere, so that 23 × 0.8 is 18.4 and not a hair beside it.
    izA: Math.round(cell.currentA * groupFactor * insulationFactor * 1000) / 1000,
    groupFactor,
    grade: cell.grade,
  };
}

function leastOf(stretches: readonly Stretch[]): Stretch | undefined {
  let least: Stretch | undefined;
  for (const stretch of stretches) if (least === undefined || stretch.izA < least.izA) least = stretch;
  return least;
}
