import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import { once } from '../../plan/once.ts';
import { lineForMany, type Supplies } from '../../price/buying/line-for-all.ts';
import { planOf } from '../../price/buying/plan-purchase.ts';
import type { PurchaseLine, PurchasePlan } from '../../price/buying/purchase.ts';
import { timePence } from '../../price/money.ts';
import { takeBack } from '../../price/packing/take-back.ts';
import type { House } from '../work-scheme.ts';
import { type AskedItem, askedItems, type ServedMatter } from './cases-of-items.ts';
import { kitDifferences } from './kit-differences.ts';
import { kindOrder, type OpenMatter, type OpenOutcome, sameMatter } from './open-matter.ts';
import { openMatters } from './open-matters.ts';
import { type OutcomeBench, outcomeBench, type Turned } from './outcome-bench.ts';
import {
  type OutcomeChoice,
  type OutcomePlan,
  type OutcomeQuestion,
  type PackChoice,
  type TakeBackFor,
  type TurnedOut,
  WHICH_SCHEME,
} from './outcome-plan.ts';

/** Answers what to buy and what goes back, of one scheme of one job; what it has worked out it keeps. */
export interface OutcomePacker {
  readonly plan: (packFor: PackChoice) => OutcomePlan;
  /** What goes back of what was bought for a choice, once it is known how things turned out. */
  readonly takeBack: (packFor: PackChoice, turnedOut: TurnedOut) => TakeBackFor;
}

/** A house with the scheme that is shown, and others that may be carried out in its stead. */
export interface ToPack {
  readonly house: House;
  readonly library: Library;
  readonly shown: Scheme;
  readonly others: readonly Scheme[];
}

/** A choice, with all that is served by it. */
interface Chosen {
  readonly schemes: readonly [Scheme, ...Scheme[]];
  readonly matters: readonly ServedMatter[];
}

/** A packer of one scheme; it works nothing out before it is asked. */
export function outcomePacker(toPack: ToPack): OutcomePacker {
  const { house, library, shown } = toPack;
  const bench = outcomeBench(house, library);
  const supplies: Supplies = { prices: library.prices, stock: house.job.stock, depth: 'whole' };
  const lines = new Map<string, PurchaseLine | null>();
  const matters = new Map<string, readonly OpenMatter[]>();
  const packer: Packer = {
    ...toPack,
    bench,
    supplies,
    lineOf: ({ key, cases }) => once(lines, key, () => boughtFor(cases(), supplies)),
    mattersOf: (scheme) => once(matters, scheme.id, () => openMatters(bench, house, scheme)),
  };
  return {
    plan: (packFor) => planFor(packer, packFor),
    takeBack: (packFor, turnedOut) => {
      const scheme = [shown, ...toPack.others].find(({ id }) => id === turnedOut[WHICH_SCHEME]) ?? shown;
      const turned = turnedOf(packer, scheme, turnedOut);
      const purchase = purchaseFor(packer, chosenBy(packer, packFor));
      return { schemeId: scheme.id, ...takeBack(purchase, bench.takeoffAs(scheme, turned), supplies) };
    },
  };
}

interface Packer extends ToPack {
  readonly bench: OutcomeBench;
  readonly supplies: Supplies;
  readonly lineOf: (asked: AskedItem) => PurchaseLine | null;
  readonly mattersOf: (scheme: Scheme) => readonly OpenMatter[];
}

const boughtFor = (cases: ReturnType<AskedItem['cases']>, supplies: Supplies): PurchaseLine | null =>
  cases === null ? null : lineForMany(cases.lines, cases.over, supplies);

/** The outcomes of one thing that are chosen, as it lists them; the first where none of them is. */
function served<T extends { readonly id: string }>(
  question: string,
  outcomes: readonly [T, ...T[]],
  packFor: PackChoice,
): readonly [T, ...T[]] {
  const asked = packFor.find((one) => one.question === question)?.outcomes ?? [];
  const [first, ...others] = outcomes.filter(({ id }) => asked.includes(id));
  return first === undefined ? [outcomes[0]] : [first, ...others];
}

/** What is open of any scheme that is served, each once, by kind. */
function mattersOfAll(packer: Packer, schemes: readonly Scheme[]): readonly OpenMatter[] {
  const merged = new Map<string, OpenMatter>();
  for (const matter of schemes.flatMap((scheme) => packer.mattersOf(scheme))) {
    const known = merged.get(matter.id);
    merged.set(matter.id, known === undefined ? matter : sameMatter(known, matter));
  }
  return [...merged.values()].toSorted((a, b) => kindOrder.indexOf(a.kind) - kindOrder.indexOf(b.kind));
}

function chosenBy(packer: Packer, packFor: PackChoice): Chosen {
  const schemes = served(WHICH_SCHEME, [packer.shown, ...packer.others], packFor);
  const matters = mattersOfAll(packer, schemes).map(
    (matter): ServedMatter => ({ matter, served: served(matter.id, matter.outcomes, packFor) }),
  );
  return { schemes, matters };
}

const purchaseFor = (packer: Packer, { schemes, matters }: Chosen): PurchasePlan =>
  planOf(askedItems(packer.bench, { schemes, matters }).flatMap((asked) => packer.lineOf(asked) ?? []));

function planFor(packer: Packer, packFor: PackChoice): OutcomePlan {
  const chosen = chosenBy(packer, packFor);
  const purchase = purchaseFor(packer, chosen);
  const asCounted = purchaseFor(packer, { schemes: [packer.shown], matters: [] });
  const planned: Planned = { packer, chosen, nowPence: purchase.pence };
  const open = purchaseFor(packer, { ...chosen, matters: chosen.matters.map(allServed) });
  const questions = chosen.matters.map((one) => questionOf(planned, one));
  return {
    schemeId: packer.shown.id,
    questions: packer.others.length === 0 ? questions : [...questions, schemeQuestion(planned)],
    purchase,
    extraPence: purchase.pence - asCounted.pence,
    openPence: open.pence - purchase.pence,
    openUnpriced: unpricedBeyond(purchase, open),
    trip: tripOf(packer),
  };
}

/** How many lines of a purchase are not priced and are wanted more than in another. */
function unpricedBeyond(now: PurchasePlan, open: PurchasePlan): number {
  const neededOf = new Map(now.lines.map(({ item, needed }) => [item, needed]));
  return open.lines.filter(({ item, needed, priced }) => !priced && needed > (neededOf.get(item) ?? 0))
    .length;
}

const allServed = ({ matter }: ServedMatter): ServedMatter => ({ matter, served: matter.outcomes });

/** A choice with what its plan costs. */
interface Planned {
  readonly packer: Packer;
  readonly chosen: Chosen;
  readonly nowPence: number;
}

function questionOf({ packer, chosen, nowPence }: Planned, one: ServedMatter): OutcomeQuestion {
  const { id, kind, subjects, words, outcomes } = one.matter;
  const [scheme] = chosen.schemes.filter((each) => packer.mattersOf(each).some((matter) => matter.id === id));
  const pence = (some: readonly OpenOutcome[]): number | null => {
    const [first, ...others] = outcomes.filter((outcome) => some.includes(outcome));
    if (first === undefined) return null;
    const instead: ServedMatter = { ...one, served: [first, ...others] };
    const matters = chosen.matters.map((each) => (each === one ? instead : each));
    return purchaseFor(packer, { ...chosen, matters }).pence;
  };
  const counted = packer.bench.takeoffAs(scheme ?? packer.shown, []);
  return {
    ...{ id, kind, subjects, words },
    outcomes: outcomes.map((outcome) => ({
      id: outcome.id,
      words: outcome.words,
      kit: kitDifferences(
        counted,
        packer.bench.takeoffAs(scheme ?? packer.shown, asTurned(one.matter, outcome)),
      ),
      ...choiceOf(outcome, { served: one.served, nowPence, pence }),
    })),
  };
}

/** Something that is served or not, beside the others that are. */
interface Choosing<T> {
  readonly served: readonly T[];
  /** What the plan costs as it is chosen, and with some others of these served; null with none. */
  readonly nowPence: number;
  readonly pence: (some: readonly T[]) => number | null;
}

/** Whether something is served, and what that costs beside the others that are. */
function choiceOf<T>(
  one: T,
  { served, nowPence, pence }: Choosing<T>,
): Pick<OutcomeChoice, 'isServed' | 'addsPence'> {
  const isServed = served.includes(one);
  const other = pence(isServed ? served.filter((each) => each !== one) : [...served, one]);
  if (other === null) return { isServed, addsPence: null };
  return { isServed, addsPence: isServed ? nowPence - other : other - nowPence };
}

function schemeQuestion({ packer, chosen, nowPence }: Planned): OutcomeQuestion {
  const { shown, others, bench } = packer;
  const counted = bench.takeoffAs(shown, []);
  const pence = (some: readonly Scheme[]): number | null => {
    const [first, ...rest] = [shown, ...others].filter((scheme) => some.includes(scheme));
    return first === undefined ? null : purchaseFor(packer, { ...chosen, schemes: [first, ...rest] }).pence;
  };
  return {
    id: WHICH_SCHEME,
    kind: 'scheme',
    subjects: [],
    words: 'Which of the schemes is carried out?',
    outcomes: [shown, ...others].map((scheme) => ({
      id: scheme.id,
      words: scheme.name,
      kit: kitDifferences(counted, bench.takeoffAs(scheme, [])),
      ...choiceOf(scheme, { served: chosen.schemes, nowPence, pence }),
    })),
  };
}

function asTurned({ id: matterId, kind, outcomes }: OpenMatter, outcome: OpenOutcome): readonly Turned[] {
  return outcome === outcomes[0] ? [] : [{ matterId, kind, outcome }];
}

/** What turned out otherwise than a scheme is counted by. */
function turnedOf(packer: Packer, scheme: Scheme, turnedOut: TurnedOut): readonly Turned[] {
  const all = mattersOfAll(packer, [scheme, packer.shown, ...packer.others]);
  return all.flatMap((matter) => {
    const outcome = matter.outcomes.find(({ id }) => id === turnedOut[matter.id]);
    return outcome === undefined ? [] : asTurned(matter, outcome);
  });
}

function tripOf({ library }: Packer): OutcomePlan['trip'] {
  const norm = library.norms.tasks.find(({ task }) => task === 'merchant-trip');
  if (norm === undefined) return null;
  const minutes = norm.typicalMin;
  return { minutes, pence: timePence(minutes, library.norms.ratePencePerHour) };
}
