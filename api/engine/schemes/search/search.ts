import type { Library } from '#model/library.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import type { Rule } from '../../rules/rule.ts';
import type { WaysOfHouse } from '../../ways/way-cost.ts';
import { estimateScheme } from '../estimate-scheme.ts';
import type { Proofs } from '../facts-of.ts';
import type { House } from '../work-scheme.ts';
import { bestOfKinds, type OfKind } from './best-of-kinds.ts';
import { buildSpace } from './build-space.ts';
import type { RankChoices } from './charged-choices.ts';
import { choicesByCost } from './cheapest-choices.ts';
import { circuitCharges, remedyCosts } from './circuit-charges.ts';
import type { FirstFound, FoundScheme, SearchResult, SearchStep } from './found-schemes.ts';
import type { Judges, Verdicts } from './gate.ts';
import type { Kept } from './kept-costs.ts';
import { lookStepwise } from './look-at-many.ts';
import type { Looked, Passing } from './passing.ts';
import { kindOf, schemeWords } from './scheme-words.ts';
import { type SearchGround, searchGround } from './search-ground.ts';
import { waysInHouse } from './ways-in-house.ts';
import { worksOfScheme } from './works-of-scheme.ts';
import { workshop } from './workshop.ts';

/** What is searched, and by what its schemes are judged and priced. */
export interface ToSearch {
  readonly house: House;
  readonly library: Library;
  /** All that is checked, in the order of the printed list. */
  readonly rules: readonly Rule[];
  readonly proofsFound: Proofs;
  /** What an earlier search of the same house found out, but for where its wanted points are. */
  readonly kept?: Kept;
  readonly verdicts?: Verdicts;
}

/** How it is searched; all may be left out. */
export interface SearchOptions {
  /** Where cable may go and what it costs; absent: those of its net. */
  readonly ways?: WaysOfHouse;
  readonly rank?: RankChoices;
  /** Connections that are kept as they are, part of every scheme. */
  readonly locked?: readonly Connection[];
  /** Legs that may be cut though their way is only assumed: locating them is priced. */
  readonly allowAssumedLegs?: readonly string[];
  /** How many schemes are wanted; absent: 50. */
  readonly most?: number;
  /** How many choices are looked at before the proof is left open; absent: 5,000. */
  readonly cap?: number;
  /** Whether the best of each kind is looked for; absent: yes. */
  readonly kinds?: boolean;
}

/** As many as a person could want to look through. */
const MOST = 50;
const CAP = 5000;
/** Sets of points are told by the bits of one number. */
const MOST_POINTS = 30;

/** Searches every way to connect the wanted points for those that pass all rules and cost least to do. */
export function searchSchemes(toSearch: ToSearch, options: SearchOptions = {}): SearchResult {
  const steps = searchInSteps(toSearch, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The same a step at a time, each some milliseconds: first of all the cheapest that passes, as soon as it is proved; then
 * the other choices, the best of each kind, and each scheme priced in full. Whoever asks for no more steps pays for none.
 */
export function* searchInSteps(
  toSearch: ToSearch,
  options: SearchOptions = {},
): Generator<SearchStep, SearchResult> {
  const { house, library, rules, proofsFound, verdicts, kept } = toSearch;
  const ways = options.ways ?? waysInHouse(house, library);
  const ground = searchGround(house, library, { ...options, ways, ...(kept === undefined ? {} : { kept }) });
  if (ground.wanted.length > MOST_POINTS) return tooMany(ground);
  const shop = workshop(ground);
  const { space, leftOut } = buildSpace(shop);
  const bare: Judges = { rules, proofsFound, ...(verdicts === undefined ? {} : { verdicts }) };
  const charges = circuitCharges(shop, space, bare);
  const judges = { ...bare, remedyCosts: remedyCosts(charges) };
  const toLook = { shop, space, charges, judges, rank: options.rank ?? choicesByCost, bad: new Map() };
  const most = { wanted: options.most ?? MOST, cap: options.cap ?? CAP };
  const offset = lockedMillipence(ground);
  const looking = lookStepwise(toLook, most);
  let [looked, isFirstSaid] = [looking.next(), false];
  for (; !looked.done; looked = looking.next()) {
    const first = looked.value === null ? null : firstFound(ground, looked.value, offset);
    isFirstSaid ||= first !== null;
    yield first === null ? { step: 'looked' } : { step: 'first', first };
  }
  const first = isFirstSaid ? null : firstFound(ground, looked.value, offset);
  if (first !== null) yield { step: 'first', first };
  const ofKinds = options.kinds === false ? [] : yield* asSteps(bestOfKinds(toLook, looked.value));
  return yield* answered(toSearch, ground, {
    looked: looked.value,
    ofKinds,
    leftOut,
    most: most.wanted,
    offset,
  });
}

function* asSteps<V>(steps: Generator<null, V>): Generator<SearchStep, V> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { step: 'looked' };
  }
}

interface Found {
  readonly looked: Looked;
  readonly ofKinds: readonly OfKind[];
  readonly leftOut: readonly string[];
  readonly most: number;
  /** What is locked costs, thousandths of a penny. */
  readonly offset: number;
}

/** How good the best of what was looked at is proved to be. */
function proofOf({ passing, bound }: Looked, offset: number) {
  const best = passing[0] ?? null;
  const optimal = best !== null && best.millipence <= bound;
  const open = Number.isFinite(bound) ? pence(bound + offset) : 0;
  const boundPence = optimal ? pence(best.millipence + offset) : open;
  const gap = best === null || boundPence === 0 ? null : pence(best.millipence + offset) / boundPence - 1;
  return { optimal, boundPence, gap };
}

function firstFound(ground: SearchGround, looked: Looked, offset: number): FirstFound | null {
  const [best] = looked.passing;
  if (best === undefined) return null;
  const { scheme, columns, millipence } = best;
  return {
    scheme: { ...scheme, id: 'found/1', name: schemeWords(ground.house.job, scheme.connections) },
    kind: kindOf(columns),
    worksPence: pence(millipence + offset),
    messPoints: columns.reduce((sum, { mess }) => sum + mess(), 0),
    ...proofOf(looked, offset),
    examined: looked.examined,
  };
}

function* answered(
  toSearch: ToSearch,
  ground: SearchGround,
  found: Found,
): Generator<SearchStep, SearchResult> {
  const { looked, ofKinds, leftOut, most, offset } = found;
  const kept = looked.passing.slice(0, most);
  const isSame = (one: Passing, other: Passing): boolean => keysOf(one) === keysOf(other);
  const missing = ofKinds.flatMap(({ best: of }) =>
    of !== null && !kept.some((each) => isSame(each, of)) ? [of] : [],
  );
  const schemes: { readonly passing: Passing; readonly found: FoundScheme }[] = [];
  for (const passing of [...kept, ...missing]) {
    const scheme = foundScheme(toSearch, ground, passing, offset);
    schemes.push({ passing, found: scheme });
    yield { step: 'priced', found: scheme };
  }
  const ordered = schemes
    .toSorted((a, b) => grossOf(a.found) - grossOf(b.found) || a.found.worksPence - b.found.worksPence)
    .map(({ passing, found: scheme }, i) => ({ passing, scheme: withId(scheme, `found/${i + 1}`) }));
  const idOf = (passing: Passing): string | null =>
    ordered.find((each) => isSame(each.passing, passing))?.scheme.scheme.id ?? null;
  return {
    ...proofOf(looked, offset),
    examined: looked.examined + ofKinds.reduce((sum, { examined }) => sum + examined, 0),
    schemes: ordered.map(({ scheme }) => scheme),
    bestOfKind: ofKinds.map(({ kind, best: of, reason }) => ({
      kind,
      schemeId: of === null ? null : idOf(of),
      reason,
    })),
    leftOut,
  };
}

const keysOf = ({ columns }: Passing): string => columns.map(({ key }) => key).join(' ');
const pence = (millipence: number): number => Math.round(millipence / 1000);
const grossOf = ({ estimate }: FoundScheme): number => estimate.totals.grossPence;

/** What is locked costs in every scheme alike. */
function lockedMillipence(ground: SearchGround): number {
  if (ground.locked.length === 0) return 0;
  const scheme = { id: 'locked', name: '', connections: [...ground.locked], remedies: [], locks: [] };
  return worksOfScheme(ground, scheme).millipence;
}

function foundScheme(
  toSearch: ToSearch,
  ground: SearchGround,
  { columns, scheme, millipence }: Passing,
  lockedWorks: number,
): FoundScheme {
  const named: Scheme = { ...scheme, name: schemeWords(ground.house.job, scheme.connections) };
  return {
    scheme: named,
    kind: kindOf(columns),
    worksPence: pence(millipence + lockedWorks),
    messPoints: columns.reduce((sum, { mess }) => sum + mess(), 0),
    estimate: estimateScheme(named, { ...toSearch, isLive: true }),
  };
}

function withId(found: FoundScheme, id: string): FoundScheme {
  const { worked } = found.estimate;
  const scheme = { ...found.scheme, id };
  return {
    ...found,
    scheme,
    estimate: {
      ...found.estimate,
      id,
      worked: { ...worked, scheme: worked.scheme === null ? null : { ...worked.scheme, id } },
    },
  };
}

function tooMany({ wanted, leftOut }: SearchGround): SearchResult {
  const words = `${wanted.length} points are wanted; up to ${MOST_POINTS} are searched together. Lock the connections of some, or take them in two rounds.`;
  return {
    ...{ optimal: false, boundPence: 0, gap: null, examined: 0, schemes: [], bestOfKind: [] },
    leftOut: [...leftOut, words],
  };
}
