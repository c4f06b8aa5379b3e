import type { Remedy, Scheme } from '#model/scheme.ts';
import type { Finding } from '../../rules/finding.ts';
import { chargedChoices, type RankChoices } from './charged-choices.ts';
import type { CircuitCharge } from './circuit-charges.ts';
import { type Judges, judge, judgesOfParts, schemeOf } from './gate.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { type SearchGround, withIds } from './search-ground.ts';
import type { SearchSpace } from './search-space.ts';
import type { Workshop } from './workshop.ts';

/** A choice that passes every rule, with its remedies in the scheme. */
export interface Passing {
  readonly columns: readonly SchemeColumn[];
  readonly scheme: Scheme;
  /** Columns, charges of circuits and remedies together. */
  readonly millipence: number;
}

/** What looking through choices came to. */
export interface Looked {
  /** By their works cost, cheapest first. */
  readonly passing: readonly Passing[];
  readonly examined: number;
  /** Nothing that passes costs less. Infinite where nothing at all is left. */
  readonly bound: number;
  /** What failed first where something did. */
  readonly fails: readonly Finding[];
}

/** What is looked through, and by whom it is judged. */
export interface ToLookThrough {
  readonly shop: Workshop;
  readonly space: SearchSpace<SchemeColumn>;
  readonly charges: readonly CircuitCharge[];
  readonly judges: Judges;
  readonly rank: RankChoices;
  /** Columns that fail by themselves, found so far. */
  readonly bad: Map<SchemeColumn, boolean>;
}

/**
 * Takes choices in the order of cost and keeps those that pass, until there are as many as wanted and the cheapest is
 * proved: the next choice, which costs no less than its columns and charges whatever remedies it asks for besides,
 * costs no less than it.
 *
 * A column that a failure speaks of is judged by itself, once; where it fails alone it fails in every company, since
 * what joins on elsewhere adds load, cable and conductors and takes none away, so choices with it are passed over.
 */
export function lookThrough(toLook: ToLookThrough, most: MostLooked): Looked {
  const steps = lookInSteps(toLook, most);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** How many schemes are wanted, and how many choices may be looked at for them. */
export interface MostLooked {
  readonly wanted: number;
  readonly cap: number;
}

/** The same choice by choice: yields once what there is as soon as the cheapest is proved, and null after every other choice. */
export function* lookInSteps(
  toLook: ToLookThrough,
  { wanted, cap }: MostLooked,
): Generator<Looked | null, Looked> {
  const { shop, space, charges, rank, judges, bad } = toLook;
  const passing: Passing[] = [];
  let examined = 0;
  let best = Number.POSITIVE_INFINITY;
  let isSaid = false;
  let firstFails: readonly Finding[] = [];
  const so = (bound: number): Looked => ({
    passing: passing.toSorted((a, b) => a.millipence - b.millipence),
    examined,
    bound: Math.min(best, bound),
    fails: firstFails,
  });
  for (const { choice, millipence } of chargedChoices(space, charges, rank)) {
    if (passing.length >= wanted && millipence >= best) return so(millipence);
    if (examined >= cap) return so(millipence);
    if (!isSaid && millipence >= best) {
      isSaid = true;
      yield so(millipence);
    }
    if (choice.columns.some((column) => bad.get(column) === true)) continue;
    examined += 1;
    const judged = judge(shop.ground, wholeScheme(toLook, choice.columns), judges);
    if (judged.passes) {
      const whole = choice.millipence + judged.remedyMillipence + touchedCharge(charges, choice.columns);
      passing.push({ columns: choice.columns, scheme: judged.scheme, millipence: whole });
      best = Math.min(best, whole);
    } else {
      if (firstFails.length === 0) firstFails = judged.fails;
      for (const column of concerned(toLook, choice.columns, judged.fails))
        if (!bad.has(column)) bad.set(column, failsAlone(toLook, column));
    }
    yield null;
  }
  return so(Number.POSITIVE_INFINITY);
}

/** The scheme of several columns, with the remedies that its points and circuits are sure to ask for. */
export function wholeScheme({ shop, charges }: ToLookThrough, columns: readonly SchemeColumn[]): Scheme {
  const scheme = schemeOf(shop.ground, 'found', partsOf(columns));
  const remedies = charges.flatMap(({ circuitId, needing }): readonly Remedy[] => {
    const isAsked = columns.some(
      (each) => each.circuitIds.includes(circuitId) && (each.mask & needing) !== 0,
    );
    return isAsked ? [{ kind: 'rcbo', at: circuitId }] : [];
  });
  return { ...scheme, remedies };
}

/** The columns that failures speak of: by a connection, a point or a circuit of theirs; all where a failure names none. */
function concerned(
  { shop: { ground } }: ToLookThrough,
  columns: readonly SchemeColumn[],
  fails: readonly Finding[],
): readonly SchemeColumn[] {
  const idsOf = namesOf(ground, columns);
  const spokenOf = (subject: string): readonly SchemeColumn[] => {
    const own = columns.filter((column) => idsOf.get(column)?.some((id) => isPartOf(subject, id)));
    return own.length > 0 ? own : columns;
  };
  const all = new Set(fails.flatMap(({ subject }) => spokenOf(subject)));
  return columns.filter((column) => all.has(column));
}

/** What findings may call a column by: its connections, as the scheme of all columns numbers them, its points, its circuits. */
function namesOf(
  ground: SearchGround,
  columns: readonly SchemeColumn[],
): ReadonlyMap<SchemeColumn, readonly string[]> {
  const ids = withIds(ground, partsOf(columns)).map(({ id }) => id);
  let taken = 0;
  return new Map(
    columns.map((column) => {
      const own = ids.slice(taken, taken + column.parts().length);
      taken += own.length;
      const points = ground.wanted.flatMap(({ point }, i) => (column.mask & (1 << i) ? [point.id] : []));
      return [column, [...own, ...points, ...column.circuitIds]];
    }),
  );
}

/** Whether a subject is a thing of this id, or one that it brings along: a joint, a unit, a run. */
const isPartOf = (subject: string, id: string): boolean => subject === id || subject.startsWith(`${id}/`);

/** The parts of several columns, in their order. */
export const partsOf = (columns: readonly SchemeColumn[]) => columns.flatMap((column) => column.parts());

/** Whether a column fails with no other beside it. */
export function failsAlone({ shop, judges }: ToLookThrough, column: SchemeColumn): boolean {
  return !judge(shop.ground, schemeOf(shop.ground, 'alone', column.parts()), judgesOfParts(judges)).passes;
}

/** What the circuits that columns touch charge for it. */
export function touchedCharge(charges: readonly CircuitCharge[], columns: readonly SchemeColumn[]): number {
  const touched = new Set(columns.flatMap(({ circuitIds }) => circuitIds));
  return charges.reduce((sum, charge) => sum + (touched.has(charge.circuitId) ? charge.touched : 0), 0);
}
