import type { Scheme } from '#model/scheme.ts';
import { remembered } from '../../plan/remembered.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { lineSignature } from './kit-differences.ts';
import { type Change, emptied, everything, moreOf, withChange } from './line-changes.ts';
import type { OpenMatter, OpenOutcome } from './open-matter.ts';
import type { OutcomeBench, Turned } from './outcome-bench.ts';

/** A matter with the outcomes of it that the kit is to serve: at least one. */
export interface ServedMatter {
  readonly matter: OpenMatter;
  readonly served: readonly [OpenOutcome, ...OpenOutcome[]];
}

/** What is to be served: each of the schemes, each with every combination of the outcomes. */
export interface ToServe {
  readonly schemes: readonly [Scheme, ...Scheme[]];
  readonly matters: readonly ServedMatter[];
}

/** One item as the cases ask for it. */
export interface ItemCases {
  /** The first is the case that leads: the first scheme with the first outcomes, where that asks for the item. */
  readonly lines: readonly [TakeoffLine, ...TakeoffLine[]];
  /**
   * Where there are too many cases to be told apart: lists that each hold many of them at once, and more than any of them
   * asks for. `lines` are then only some of the cases.
   */
  readonly over: readonly TakeoffLine[];
}

/** An item that some case may ask for, and what its cases hang on. */
export interface AskedItem {
  readonly item: string;
  /** Equal for choices by which the item is asked for alike. */
  readonly key: string;
  /** Null where no case asks for it after all. */
  readonly cases: () => ItemCases | null;
}

/** So many combinations of floors are worked; beyond, each floor alone, and all of them. */
const MOST_FLOORS = 16;
/** So many lists of pieces of an item are told apart, over all schemes and floors. */
const MOST_LISTS = 192;

/**
 * What is asked for in every combination of the outcomes, in the order of a bill by the first case.
 *
 * Floors send every cable another way, so their combinations are worked out one by one, for each scheme. Within one of
 * those, each other outcome changes its own part of the kit (a box, a device, the start of one cable), so it is worked
 * alone, and what it adds and takes away is added up: what is counted by the most that any combination comes to, what is
 * cut by the list of pieces of each combination. Where two outcomes share a part (dust sheets of one room), adding up asks
 * for more than the combination does, never for less.
 */
export function askedItems(bench: OutcomeBench, toServe: ToServe): readonly AskedItem[] {
  const { schemes, matters } = toServe;
  const floors = floorsTurned(matters);
  const contexts = schemes.flatMap((scheme) =>
    floors.map((turned) => contextOf(bench, scheme, { turned, matters })),
  );
  const items = new Set(contexts.flatMap(itemsOf));
  const place = [schemes.map(({ id }) => id), floors.map(keyOfTurned)].join(' / ');
  const mostLists = Math.max(1, Math.floor(MOST_LISTS / contexts.length));
  return [...items].map((item) => ({
    item,
    key: `${item} / ${place} / ${touching(contexts, item)}`,
    cases: () => casesOf(contexts, item, mostLists),
  }));
}

const keyOfTurned = (turned: readonly Turned[]): string =>
  turned.map(({ matterId, outcome }) => `${matterId}=${outcome.id}`).join(' ');

/** The combinations of the floors that are served, the first outcomes first. */
function floorsTurned(matters: readonly ServedMatter[]): readonly (readonly Turned[])[] {
  const floors = matters.filter(({ matter }) => matter.kind === 'floor');
  const count = floors.reduce((product, { served }) => product * served.length, 1);
  if (count <= MOST_FLOORS)
    return floors.reduce<readonly (readonly Turned[])[]>(
      (before, { matter, served }) =>
        before.flatMap((some) => served.map((outcome) => [...some, ...turnedBy(matter, outcome)])),
      [[]],
    );
  const firsts = floors.map(({ matter, served }) => turnedBy(matter, served[0]));
  const lasts = floors.map(({ matter, served }) => turnedBy(matter, served.at(-1) ?? served[0]));
  const each = lasts.map((last, i) => firsts.with(i, last));
  return [firsts, ...each, lasts].map((some) => some.flat());
}

/** What is counted by is no change. */
function turnedBy({ id: matterId, kind, outcomes }: OpenMatter, outcome: OpenOutcome): readonly Turned[] {
  return outcome === outcomes[0] ? [] : [{ matterId, kind, outcome }];
}

type ByItem = ReadonlyMap<string, TakeoffLine>;

const byItem = remembered(
  (takeoff: readonly TakeoffLine[]): ByItem =>
    new Map(takeoff.filter(({ quantity }) => quantity > 0).map((line) => [line.item, line])),
);

/** What an outcome makes of the kit: the take-offs before and after; null where it is what is counted by. */
interface Effect {
  readonly outcomeId: string;
  readonly changes: { readonly before: ByItem; readonly after: ByItem } | null;
}

/** One scheme with its floors as they turned out: what it takes as counted, and what the served outcomes change. */
interface Context {
  readonly base: ByItem;
  readonly effects: readonly { readonly matterId: string; readonly of: readonly Effect[] }[];
}

function contextOf(
  bench: OutcomeBench,
  scheme: Scheme,
  { turned, matters }: { readonly turned: readonly Turned[]; readonly matters: readonly ServedMatter[] },
): Context {
  const others = matters.filter(({ matter }) => matter.kind !== 'floor');
  const takeoff = (more: readonly Turned[]): ByItem => byItem(bench.takeoffAs(scheme, [...turned, ...more]));
  return {
    base: takeoff([]),
    effects: others.map((one) => ({
      matterId: one.matter.id,
      of: one.served.map((outcome): Effect => {
        const own = turnedBy(one.matter, outcome);
        if (own.length === 0) return { outcomeId: outcome.id, changes: null };
        const settled = settledBeside(others, one);
        return {
          outcomeId: outcome.id,
          changes: { before: takeoff(settled), after: takeoff([...settled, ...own]) },
        };
      }),
    })),
  };
}

/** What of the same point is settled otherwise than counted: where no cable comes to a box, its depth changes nothing. */
function settledBeside(all: readonly ServedMatter[], { matter }: ServedMatter): readonly Turned[] {
  if (matter.kind !== 'box') return [];
  return all
    .filter(
      (other) =>
        other.matter.kind === 'spur' &&
        other.served.length === 1 &&
        other.matter.subjects.some((id) => matter.subjects.includes(id)),
    )
    .flatMap((other) => turnedBy(other.matter, other.served[0]));
}

const itemsOf = ({ base, effects }: Context): readonly string[] => [
  ...base.keys(),
  ...effects.flatMap(({ of }) => of.flatMap(({ changes }) => [...(changes?.after.keys() ?? [])])),
];

/** What an effect makes of an item; null where it makes nothing of it. */
function changeOf({ changes }: Effect, item: string): Change | null {
  const before = changes?.before.get(item);
  const after = changes?.after.get(item);
  if (before === after) return null;
  const known = before ?? after;
  if (known === undefined) return null;
  const change = { before: before ?? emptied(known), after: after ?? emptied(known) };
  return lineSignature(change.before) === lineSignature(change.after) ? null : change;
}

/** The matters that an item hangs on in any context, with the outcomes that are served. */
function touching(contexts: readonly Context[], item: string): string {
  const touched = new Map<string, string>();
  for (const { effects } of contexts)
    for (const { matterId, of } of effects)
      if (!touched.has(matterId) && of.some((effect) => changeOf(effect, item) !== null))
        touched.set(matterId, of.map(({ outcomeId }) => outcomeId).join('+'));
  return [...touched].map((one) => one.join('=')).join(' ');
}

function casesOf(contexts: readonly Context[], item: string, mostLists: number): ItemCases | null {
  const all = contexts.map((context) => casesIn(context, item, mostLists));
  const [first, ...others] = distinct(all.flatMap(({ lines }) => lines)).filter(isAsked);
  return first === undefined ? null : { lines: [first, ...others], over: all.flatMap(({ over }) => over) };
}

/** Lines that are bought by the same figures once, the first of them. */
function distinct(lines: readonly TakeoffLine[]): readonly TakeoffLine[] {
  const known = new Map<string, TakeoffLine>();
  for (const line of lines) {
    const key = lineSignature(line);
    if (!known.has(key)) known.set(key, line);
  }
  return [...known.values()];
}

const isAsked = ({ quantity }: TakeoffLine): boolean => quantity > 0;

interface CasesIn {
  readonly lines: readonly TakeoffLine[];
  readonly over: readonly TakeoffLine[];
}

/** One item in every combination within a context, that of the first outcomes first. */
function casesIn({ base, effects }: Context, item: string, mostLists: number): CasesIn {
  const options = effects
    .map(({ of }) => distinctChanges(of.map((effect) => changeOf(effect, item))))
    .filter((some) => some.some((change) => change !== null));
  const known = base.get(item) ?? options.flat().find((change) => change !== null)?.before;
  if (known === undefined) return { lines: [], over: [] };
  const counted = base.get(item) ?? emptied(known);
  const isCut = [counted, ...options.flat().flatMap((change) => change?.after ?? [])].some(
    ({ pieces }) => pieces.length > 0,
  );
  const lead = options.reduce((so, [first]) => withChange(so, first ?? null), counted);
  if (!isCut) return { lines: [lead, options.reduce(withMost, counted)], over: [] };
  const count = options.reduce((product, some) => product * some.length, 1);
  if (count > mostLists) {
    const alone = options.flatMap((some) => some.map((change) => withChange(lead, change)));
    return { lines: [lead], over: [everything([lead, ...alone])] };
  }
  const lines = options.reduce<readonly TakeoffLine[]>(
    (before, some) => before.flatMap((so) => some.map((change) => withChange(so, change))),
    [counted],
  );
  return { lines, over: [] };
}

/** Changes that come to the same once. */
function distinctChanges(changes: readonly (Change | null)[]): readonly (Change | null)[] {
  const known = new Map(
    changes
      .toReversed()
      .map((change) => [
        change === null ? '' : `${lineSignature(change.before)} / ${lineSignature(change.after)}`,
        change,
      ]),
  );
  return [...known.values()].toReversed();
}

/** A line with that of several changes that asks for most. */
const withMost = (line: TakeoffLine, some: readonly (Change | null)[]): TakeoffLine =>
  withChange(
    line,
    some.reduce((best, change) => (moreOf(change) > moreOf(best) ? change : best)),
  );
