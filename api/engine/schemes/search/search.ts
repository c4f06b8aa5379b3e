import type { Library } from '#model/library.ts';
import type { Connection } from '#model/scheme.ts';
import type { Rule } from '../../rules/rule.ts';
import type { WayAim, WaysOfHouse } from '../../ways/way-cost.ts';
import type { Proofs } from '../facts-of.ts';
import type { House } from '../work-scheme.ts';
import { byMess, byPence } from './aim.ts';
import { bestOfKinds } from './best-of-kinds.ts';
import { calmest } from './calmest.ts';
import type { RankChoices } from './charged-choices.ts';
import { choicesByCost } from './cheapest-choices.ts';
import { restsOn } from './cut-legs.ts';
import type { SearchResult, SearchStep } from './found-schemes.ts';
import type { Verdicts } from './gate.ts';
import { lookInBetween } from './in-between.ts';
import type { Kept } from './kept-costs.ts';
import { type LookBy, type LookedBy, lookBy } from './look-by-aim.ts';
import type { Looked, Passing } from './passing.ts';
import { priceFound } from './price-found.ts';
import { penceOf, proofOfMess, proofOfPence } from './proofs.ts';
import { kindOf, schemeWords } from './scheme-words.ts';
import { type SearchGround, searchGround } from './search-ground.ts';
import { waysInHouse } from './ways-in-house.ts';
import { withoutGuesses } from './without-guesses.ts';
import { noWorks, type Works, worksTogether } from './works.ts';
import { worksOfScheme } from './works-of-scheme.ts';

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
  /** What is made as little as may be; absent: money first, then by itself disturbance, and what lies between the two. */
  readonly aim?: WayAim;
  /** Connections that are kept as they are, part of every scheme. */
  readonly locked?: readonly Connection[];
  /** Legs that may be cut though their way is only assumed: locating them is priced. */
  readonly allowAssumedLegs?: readonly string[];
  /** How many schemes are wanted; absent: the 50 cheapest, and the 10 least disturbing. */
  readonly most?: number;
  /** How many choices are looked at before the proof is left open; absent: 5,000. */
  readonly cap?: number;
  /** Whether the best of each kind is looked for; absent: yes. */
  readonly kinds?: boolean;
}

/** As many as a person could want to look through. */
const MOST = 50;
/** Of those that disturb least beside them. */
const MOST_BESIDE = 10;
const CAP = 5000;
/** Sets of points are told by the bits of one number. */
const MOST_POINTS = 30;

/** Searches every way to connect the wanted points for those that pass all rules and cost, and disturb, least. */
export function searchSchemes(toSearch: ToSearch, options: SearchOptions = {}): SearchResult {
  const steps = searchInSteps(toSearch, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The same a step at a time, each some milliseconds: first of all the cheapest that passes, as soon as it is proved; then
 * the other choices, the best of each kind, the least disturbing and what lies between, and each scheme priced in full.
 * Whoever asks for no more steps pays for none.
 */
export function* searchInSteps(
  toSearch: ToSearch,
  options: SearchOptions = {},
): Generator<SearchStep, SearchResult> {
  const { house, library, kept } = toSearch;
  const ways = options.ways ?? waysInHouse(house, library);
  const ground = searchGround(house, library, { ...options, ways, ...(kept === undefined ? {} : { kept }) });
  if (ground.wanted.length > MOST_POINTS) return tooMany(ground);
  const offset = lockedWorks(ground);
  const asked = askedOf(toSearch, options);
  const pence =
    options.aim === 'mess' ? null : yield* saidFirst(lookBy(ground, asked.pence), firstStep(ground, offset));
  const ofKinds =
    pence === null || options.kinds === false ? [] : yield* asSteps(bestOfKinds(pence.toLook, pence.looked));
  const mess =
    options.aim === 'pence' ? null : yield* saidFirst(lookBy(ground, asked.mess), leastStep(ground, offset));
  const calm = mess === null ? [] : yield* asSteps(calmest(toSearch, mess.looked, asked.calm));
  const between =
    pence === null || mess === null ? [] : yield* asSteps(lookInBetween(ground, asked.mess, [pence, mess]));
  const sure = {
    pence: pence === null ? null : yield* asSteps(withoutGuesses(ground, asked.pence, pence.looked)),
    mess: mess === null ? null : yield* asSteps(withoutGuesses(ground, asked.mess, mess.looked)),
  };
  const { most } = asked;
  return yield* priceFound({ toSearch, ground, pence, mess, calm, between, ofKinds, sure, most, offset });
}

interface Asked {
  readonly pence: LookBy;
  readonly mess: LookBy;
  readonly most: number;
  /** How many of those that disturb least. */
  readonly calm: number;
}

/** What is looked for by money and by disturbance. */
function askedOf(
  { rules, proofsFound, verdicts }: ToSearch,
  { rank = choicesByCost, most = MOST, cap = CAP, aim }: SearchOptions,
): Asked {
  const verdictsKept = verdicts === undefined ? {} : { verdicts };
  const common = { rules, proofsFound, rank, most: { wanted: most, cap }, ...verdictsKept };
  return {
    pence: { ...common, aim: byPence },
    mess: { ...common, aim: byMess },
    most,
    calm: aim === 'mess' ? most : Math.min(most, MOST_BESIDE),
  };
}

/** Looks by an aim, and says its best as soon as that is proved. */
function* saidFirst(
  looking: Generator<Looked | null, LookedBy>,
  stepOf: (best: Passing, looked: Looked) => SearchStep,
): Generator<SearchStep, LookedBy> {
  let isSaid = false;
  const said = (looked: Looked): SearchStep | null => {
    const [best] = looked.passing;
    if (isSaid || best === undefined) return null;
    isSaid = true;
    return stepOf(best, looked);
  };
  for (let next = looking.next(); ; next = looking.next()) {
    if (!next.done) {
      yield (next.value === null ? null : said(next.value)) ?? { step: 'looked' };
      continue;
    }
    const last = said(next.value.looked);
    if (last !== null) yield last;
    return next.value;
  }
}

function* asSteps<V>(steps: Generator<null, V>): Generator<SearchStep, V> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { step: 'looked' };
  }
}

const firstStep =
  (ground: SearchGround, offset: Works) =>
  (best: Passing, looked: Looked): SearchStep => ({
    step: 'first',
    first: {
      ...bestFound(ground, best, { looked, offset }),
      ...proofOfPence(looked, offset.millipence),
    },
  });

const leastStep =
  (ground: SearchGround, offset: Works) =>
  (best: Passing, looked: Looked): SearchStep => ({
    step: 'least',
    least: { ...bestFound(ground, best, { looked, offset }), ...proofOfMess(looked, offset.mess) },
  });

function bestFound(
  ground: SearchGround,
  { scheme, columns, works }: Passing,
  { looked, offset }: { readonly looked: Looked; readonly offset: Works },
) {
  const whole = worksTogether([works, offset]);
  return {
    scheme: { ...scheme, id: 'found/1', name: schemeWords(ground.house.job, scheme.connections) },
    kind: kindOf(columns),
    worksPence: penceOf(whole),
    worksPoints: whole.mess,
    restsOn: restsOn(ground.house.job, scheme.connections),
    examined: looked.examined,
  };
}

/** What is locked takes in every scheme alike. */
function lockedWorks(ground: SearchGround): Works {
  if (ground.locked.length === 0) return noWorks;
  const scheme = { id: 'locked', name: '', connections: [...ground.locked], remedies: [], locks: [] };
  return worksOfScheme(ground, scheme);
}

function tooMany({ wanted, leftOut }: SearchGround): SearchResult {
  const words = `${wanted.length} points are wanted; up to ${MOST_POINTS} are searched together. Lock the connections of some, or take them in two rounds.`;
  return {
    ...{
      optimal: false,
      boundPence: 0,
      gap: null,
      examined: 0,
      fallback: null,
      disturbance: null,
      schemes: [],
      bestOfKind: [],
    },
    leftOut: [...leftOut, words],
  };
}
