import type { Remedy, Scheme } from '#model/scheme.ts';
import type { Finding } from '../../rules/finding.ts';
import { type ChargedChoice, chargedChoices, type RankChoices } from './charged-choices.ts';
import type { CircuitCharge } from './circuit-charges.ts';
import { type Judged, type Judges, judge, judgesOfParts, schemeOf } from './gate.ts';
import { pinnedParts } from './pins.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { type Part, withIds } from './search-ground.ts';
import type { Choice, SearchSpace } from './search-space.ts';
import { inPlaceOf, settle } from './settled-columns.ts';
import { type Works, worksTogether } from './works.ts';
import type { Workshop } from './workshop.ts';

/** A choice that passes every rule, with its remedies in the scheme. */
export interface Passing {
  readonly columns: readonly SchemeColumn[];
  readonly scheme: Scheme;
  /** What columns, charges of circuits and remedies weigh together. */
  readonly cost: number;
  /** The same, not weighed. */
  readonly works: Works;
}

/** What looking through choices came to. */
export interface Looked {
  /** By what they weigh, least first. */
  readonly passing: readonly Passing[];
  readonly examined: number;
  /** Nothing that passes weighs less. Infinite where nothing at all is left. */
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
  /** Columns judged by themselves so far, with what each fails by; null for one that does not. */
  readonly bad: Map<SchemeColumn, Finding | null>;
}

/**
 * Takes choices in the order of cost and keeps those that pass, until there are as many as wanted and the cheapest is
 * proved: the next choice, which costs no less than its columns and charges whatever remedies it asks for besides,
 * costs no less than it.
 *
 * A column of several cables costs no more than they could together until a choice with it comes up (`settled`); then what they share is
 * worked out, its cost can only rise, and choices are ranked anew. So nothing is given before what costs less.
 *
 * A column that a failure speaks of is judged by itself, once; where it fails alone it fails in every company, since
 * what joins on elsewhere adds load, cable and conductors and takes none away, so choices with it are passed over. The next spot
 * of its leg then takes its place, and choices are ranked anew with that.
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
  const { shop, judges, bad } = toLook;
  const passing: Passing[] = [];
  let examined = 0;
  let best = Number.POSITIVE_INFINITY;
  let isSaid = false;
  let firstFails: readonly Finding[] = [];
  const so = (bound: number): Looked => ({
    passing: passing.toSorted((a, b) => a.cost - b.cost),
    examined,
    bound: Math.min(best, bound),
    fails: firstFails,
  });
  for (const { choice, cost } of soundChoices(toLook)) {
    if (passing.length >= wanted && cost >= best) return so(cost);
    if (examined >= cap) return so(cost);
    if (!isSaid && cost >= best) {
      isSaid = true;
      yield so(cost);
    }
    examined += 1;
    const judged = judge(shop.ground, wholeScheme(toLook, choice.columns), judges);
    if (judged.passes) {
      const one = passed(toLook, choice, judged);
      passing.push(one);
      best = Math.min(best, one.cost);
    } else {
      if (firstFails.length === 0) firstFails = judged.fails;
      for (const column of concerned(toLook, choice.columns, judged.fails))
        if (!bad.has(column)) bad.set(column, failsBy(toLook, column));
    }
    yield null;
  }
  return so(Number.POSITIVE_INFINITY);
}

/** With more choices than these passed over, those that are left are ranked anew without the columns that fail. */
const MOST_PASSED_OVER = 64;

/** Choices in the order of their cost, but for those with a column that fails by itself, as far as that is known by then. */
function* soundChoices(toLook: ToLookThrough): Generator<ChargedChoice, void> {
  const { shop, space, charges, rank, bad } = toLook;
  const isBarred = (column: SchemeColumn): boolean => failsAlone(bad, column);
  const given = new Set<string>();
  for (let isWhole = false; !isWhole; ) {
    let passedOver = 0;
    isWhole = true;
    for (const charged of chargedChoices(withNext(toLook, isBarred), charges, rank)) {
      const { columns } = charged.choice;
      isWhole = !settle(shop, space, columns);
      if (!isWhole) break;
      const name = columns.map(({ key }) => key).join(' ');
      if (given.has(name)) continue;
      if (!columns.some(isBarred)) {
        given.add(name);
        yield charged;
        // What takes the place of a column that is barred by now may cost less than what comes next.
        isWhole = !columns.some((column) => isBarred(column) && (column.next?.() ?? null) !== null);
        if (!isWhole) break;
        continue;
      }
      passedOver += 1;
      isWhole = passedOver <= MOST_PASSED_OVER;
      if (!isWhole) break;
    }
  }
}

/** A space without some of its columns: in place of each the next at its leg that is not barred, if there is one. */
export function withNext(
  { shop, space: { points, layers, free } }: Pick<ToLookThrough, 'shop' | 'space'>,
  isBarred: (column: SchemeColumn) => boolean,
): SearchSpace<SchemeColumn> {
  const allowed = (first: SchemeColumn): readonly SchemeColumn[] => {
    let column: SchemeColumn | null = inPlaceOf(shop, first);
    while (column !== null && isBarred(column)) {
      const next: SchemeColumn | null = column.next?.() ?? null;
      column = next === null ? null : inPlaceOf(shop, next);
    }
    return column === null ? [] : [column];
  };
  return {
    points,
    layers: layers
      .map(({ id, columns }) => ({ id, columns: columns.flatMap(allowed) }))
      .filter(({ columns }) => columns.length > 0),
    free: free.flatMap(allowed),
  };
}

/** The scheme of several columns, with the remedies that its points and circuits are sure to ask for. */
export function wholeScheme({ shop, charges }: ToLookThrough, columns: readonly SchemeColumn[]): Scheme {
  const scheme = schemeOf(shop.ground, 'found', partsOf(shop, columns));
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
  { shop }: ToLookThrough,
  columns: readonly SchemeColumn[],
  fails: readonly Finding[],
): readonly SchemeColumn[] {
  const idsOf = namesOf(shop, columns);
  const spokenOf = (subject: string): readonly SchemeColumn[] => {
    const own = columns.filter((column) => idsOf.get(column)?.some((id) => isPartOf(subject, id)));
    return own.length > 0 ? own : columns;
  };
  const all = new Set(fails.flatMap(({ subject }) => spokenOf(subject)));
  return columns.filter((column) => all.has(column));
}

/** What findings may call a column by: its connections, as the scheme of all columns numbers them, its points, its circuits. */
function namesOf(
  shop: Workshop,
  columns: readonly SchemeColumn[],
): ReadonlyMap<SchemeColumn, readonly string[]> {
  const ids = withIds(shop.ground, partsOf(shop, columns)).map(({ id }) => id);
  let taken = 0;
  return new Map(
    columns.map((column) => {
      const own = ids.slice(taken, taken + column.parts().length);
      taken += own.length;
      const points = shop.ground.wanted.flatMap(({ point }, i) => (column.mask & (1 << i) ? [point.id] : []));
      return [column, [...own, ...points, ...column.circuitIds]];
    }),
  );
}

/** Whether a subject is a thing of this id, or one that it brings along: a joint, a unit, a run. */
const isPartOf = (subject: string, id: string): boolean => subject === id || subject.startsWith(`${id}/`);

/** The parts of several columns, in their order, their cables pinned where the aim asks for another way than the cheapest. */
export const partsOf = (shop: Workshop, columns: readonly SchemeColumn[]): readonly Part[] =>
  columns.flatMap((column) => pinnedParts(shop, column));

/** A choice that went through the gate, with all that it takes. */
export function passed(
  { shop, charges }: ToLookThrough,
  { columns, cost }: Choice<SchemeColumn>,
  { scheme, remedyWorks }: Extract<Judged, { readonly passes: true }>,
): Passing {
  const touched = touchedBy(charges, columns);
  const works = worksTogether([
    ...columns.map((column) => column.works()),
    ...touched.map((charge) => charge.works.touched),
    remedyWorks,
  ]);
  const charged = touched.reduce((sum, charge) => sum + charge.touched, 0);
  return { columns, scheme, cost: cost + shop.weigh(remedyWorks) + charged, works };
}

/** Whether a column is known to fail with no other beside it. */
export const failsAlone = (bad: ToLookThrough['bad'], column: SchemeColumn): boolean =>
  (bad.get(column) ?? null) !== null;

/** What a column fails by with no other beside it; null where it passes. */
export function failsBy({ shop, judges }: ToLookThrough, column: SchemeColumn): Finding | null {
  const alone = schemeOf(shop.ground, 'alone', partsOf(shop, [column]));
  const judged = judge(shop.ground, alone, judgesOfParts(judges));
  return judged.passes ? null : (judged.fails[0] ?? null);
}

/** The charges of the circuits that columns touch. */
function touchedBy(
  charges: readonly CircuitCharge[],
  columns: readonly SchemeColumn[],
): readonly CircuitCharge[] {
  const touched = new Set(columns.flatMap(({ circuitIds }) => circuitIds));
  return charges.filter(({ circuitId }) => touched.has(circuitId));
}
