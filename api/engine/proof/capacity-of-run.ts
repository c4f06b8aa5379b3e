import type { Cable } from '#model/cable.ts';
import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { partOfPath } from '../ways/part-of-path.ts';
import type { Run, Segment } from '../ways/run.ts';
import { ambientFactor } from './ambient-factor.ts';
import type { CableCapacity, WorstStretch } from './cable-capacity.ts';
import { installedMethod, type ReferenceMethod } from './installed-method.ts';
import { groupingFactor, surroundedFactor, tabulatedCapacity } from './tabulated-capacity.ts';

/** What the capacity of a run depends on beside the run itself. */
export interface Neighbourhood {
  readonly plan: Plan;
  /** How many cables share a tube or channel, by its name. */
  readonly cablesInBundle: ReadonlyMap<string, number>;
  /** For the air's temperature; absent: 1, for 30 °C. */
  readonly ambientFactor?: number;
}

/** One segment by the strictest and by the kindest method that the survey leaves open. */
interface Judged {
  readonly strict: WorstStretch;
  readonly kind: WorstStretch;
}

/**
 * What a cable may carry along its path: the least of its stretches, the first of equal ones.
 *
 * @returns `izA` null when the run has no path, the cable no figure, or any stretch an unknown method. Where a
 *   stretch may be one of several methods, `izA` is by the strictest and `atBest` by the kindest.
 * Source: BS 7671 Tables 4D5, 4D2A (method B), 4B1, 4C1, 52.2. Cables that share a bundle are taken
 * as fully loaded: the 30 % exemption is a designer's to claim.
 */
export function capacityOfRun(run: Run, around: Neighbourhood): CableCapacity {
  const judged: Judged[] = [];
  let fromMm = 0;
  for (const [index, segment] of run.segments.entries()) {
    const stretch = judgedSegment(run, { segment, index, fromMm }, around);
    if (stretch !== null) judged.push(stretch);
    fromMm += segment.lengthMm;
  }
  const isWhole = run.segments.length > 0 && judged.length === run.segments.length;
  const sure = isWhole ? leastOf(judged.map(({ strict }) => strict)) : undefined;
  const best = leastOf(judged.map(({ kind }) => kind));
  const isOpen = best !== undefined && best.izA !== sure?.izA;
  return { id: run.id, ...(sure ?? nothingSure), ...(isOpen ? { atBest: best } : {}) };
}

const nothingSure = {
  izA: null,
  method: null,
  worstSegment: null,
  worstFromMm: null,
  groupFactor: 1,
  insulationFactor: 1,
  grade: null,
} as const;

/**
 * Capacities of every new cable by run id, and of all cable found that stays by the id of its edge (the leg,
 * or a part of it); a leg whose cable nobody looked at has none. Cable that the scheme takes out has no
 * capacity and warms nothing.
 */
export function capacities(worked: Worked, limits: Limits = {}): ReadonlyMap<string, CableCapacity> {
  const { plan, job, foundRuns, runs } = worked;
  const kept = keptRuns(worked);
  const air = airOf(limits.ambientC);
  const ambient = air.ambientFactor ?? 1;
  const found = asFound(foundRuns, plan);
  const now = { plan, cablesInBundle: cablesInBundle([...kept, ...runs]), ...air };
  const before = { plan, cablesInBundle: found.cablesInBundle, ...air };
  const unseen = new Set(job.legs.filter(({ cable }) => cable === undefined).map(({ id }) => id));
  const ofKept = kept
    .filter(({ legId }) => !unseen.has(legId ?? ''))
    .map((run) => {
      const isChanged = run.segments.some(
        ({ bundle }) =>
          bundle !== null && now.cablesInBundle.get(bundle) !== before.cablesInBundle.get(bundle),
      );
      // A whole leg whose neighbours are as they were carries what it did, whatever the scheme.
      if (!isChanged && run.id === run.legId)
        return found.ofLeg(run.id, ambient, () => capacityOfRun(run, now));
      const capacity = capacityOfRun(run, now);
      return isChanged ? { ...capacity, asFound: capacityOfRun(run, before) } : capacity;
    });
  const all = [...ofKept, ...runs.map((run) => capacityOfRun(run, now))];
  return new Map(all.map((capacity) => [capacity.id, capacity]));
}

/** What the air's temperature counts for, told or not. */
function airOf(ambientC: number | undefined): Pick<Neighbourhood, 'ambientFactor'> {
  const factor = ambientC === undefined ? 1 : (ambientFactor(ambientC) ?? 1);
  return factor === 1 ? {} : { ambientFactor: factor };
}

/** So many cables of a kind in one chase, in air of a temperature; absent: 30 °C. */
export interface Grouped {
  readonly cable: Cable;
  readonly cables: number;
  readonly ambientC: number | undefined;
}

/** What each of several cables may carry for sure where they lie together along one stretch, A; null where that cannot be told. */
export function capacityTogether(
  plan: Plan,
  segment: Segment,
  { cable, cables, ambientC }: Grouped,
): number | null {
  const bundle = 'together';
  const around = { plan, cablesInBundle: new Map([[bundle, cables]]), ...airOf(ambientC) };
  const at = { segment: { ...segment, bundle }, index: 0, fromMm: 0 };
  return judgedSegment({ cable }, at, around)?.strict.izA ?? null;
}

/** What is known of the cables of one house as found, shared by all its schemes. */
const asFound = rememberedOfTwo((foundRuns: Worked['foundRuns'], _plan: Plan) => {
  const known = new Map<string, CableCapacity>();
  return {
    cablesInBundle: cablesInBundle(foundLegs(foundRuns)),
    ofLeg(legId: string, ambient: number, work: () => CableCapacity): CableCapacity {
      const name = `${ambient} ${legId}`;
      const capacity = known.get(name) ?? work();
      known.set(name, capacity);
      return capacity;
    },
  };
});

function foundLegs(foundRuns: Worked['foundRuns']): readonly Run[] {
  return [...foundRuns].map(([legId, run]) => ({ ...run, legId }));
}

/** Cable found that the scheme leaves in use: whole legs, and of cut ones the parts that stay, where their length is known. */
function keptRuns({ proposed, foundRuns, allowances }: Worked): readonly Run[] {
  return proposed.edges.flatMap(({ id, kind, state, legId, partMm }) => {
    const run = foundRuns.get(legId ?? '');
    if (run === undefined || kind !== 'cable' || state !== 'found') return [];
    const segments = partMm === null || id === legId ? run.segments : partOfPath(run, partMm, allowances);
    return [{ ...run, id, legId, segments }];
  });
}

/** Parts of one leg lie one after the other, so that together they count as one cable. */
function cablesInBundle(runs: readonly Run[]): ReadonlyMap<string, number> {
  const cables = new Map<string, Set<string>>();
  for (const { id, legId, segments } of runs)
    for (const { bundle } of segments)
      if (bundle !== null) cables.set(bundle, (cables.get(bundle) ?? new Set()).add(legId ?? `run ${id}`));
  return new Map([...cables].map(([bundle, ids]) => [bundle, ids.size]));
}

function judgedSegment(
  { cable }: Pick<Run, 'cable'>,
  at: { readonly segment: Segment; readonly index: number; readonly fromMm: number },
  around: Neighbourhood,
): Judged | null {
  const { segment } = at;
  const installed = installedMethod(segment, around.plan);
  if (installed === null) return null;
  const cables = segment.bundle === null ? 1 : (around.cablesInBundle.get(segment.bundle) ?? 1);
  const onSurface = segment.medium === 'surface-clipped' && segment.containment === 'none';
  const groupFactor = groupingFactor(cables, onSurface ? 'layer' : 'enclosed');
  const insulationFactor = installed.surrounded ? surroundedFactor(segment.lengthMm) : 1;
  const byMethod = (method: ReferenceMethod): WorstStretch | null => {
    const cell = tabulatedCapacity(cable, method);
    if (cell === null) return null;
    return {
      method,
      // Rounded to the milliampere, so that 23 × 0.8 is 18.4 and not a hair beside it.
      izA:
        Math.round(cell.currentA * groupFactor * insulationFactor * (around.ambientFactor ?? 1) * 1000) /
        1000,
      worstSegment: at.index,
      worstFromMm: at.fromMm,
      groupFactor,
      insulationFactor,
      ...(around.ambientFactor === undefined ? {} : { ambientFactor: around.ambientFactor }),
      grade: cell.grade,
    };
  };
  const strict = byMethod(installed.method);
  const kind = byMethod(installed.kindest ?? installed.method);
  return strict === null || kind === null ? null : { strict, kind };
}

function leastOf(stretches: readonly WorstStretch[]): WorstStretch | undefined {
  let least: WorstStretch | undefined;
  for (const stretch of stretches) if (least === undefined || stretch.izA < least.izA) least = stretch;
  return least;
}
