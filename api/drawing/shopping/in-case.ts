import type { PurchasePlan } from '#engine/price/buying/purchase.ts';
import type { ShoppingEntry, ShoppingList } from '#engine/price/shopping/shopping-list.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import type { OutcomePlan } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Packing, TakeBackOfOutcome } from '#engine/schemes/outcomes/packing.ts';
import type { Prices } from '#model/library.ts';
import { backPacks, backWords } from './back-words.ts';
import { askWords } from './entry-words.ts';

/** What goes back unopened if things turn out one way. */
export interface GoesBack {
  /** "If all turns out as it is counted", or the question and how it turned out. */
  readonly title: string;
  /** A thing a line, with how much of it; at least one. */
  readonly lines: readonly string[];
}

/** What of a shopping list is there in case only. */
export interface InCase {
  /** By the key of an entry: why it, or more of it than is counted, is on the list. */
  readonly words: ReadonlyMap<string, string>;
  /** By the key of an entry: what of it goes back if all turns out as it is counted. */
  readonly back: ReadonlyMap<string, string>;
  /** As counted first, then outcome by outcome; only what something goes back of. */
  readonly goesBack: readonly GoesBack[];
}

/** A list on which everything is as counted. */
export const nothingInCase: InCase = { words: new Map(), back: new Map(), goesBack: [] };

/** So many reasons are told of one thing; of more it is said how many. */
const MOST_REASONS = 2;

/**
 * What of a list is bought for what may turn out, and what of it goes back.
 *
 * @param list what is bought for every chosen outcome.
 * @param counted what the scheme is counted by.
 */
export function inCaseOf(
  list: ShoppingList,
  counted: Pick<PurchasePlan, 'lines'>,
  { packing: { plan, takeBack }, prices }: { readonly packing: Packing; readonly prices: Prices },
): InCase {
  const asCounted = new Map(
    shoppingListOf(counted, prices).groups.flatMap(({ entries }) =>
      entries.map((entry) => [entry.key, entry]),
    ),
  );
  const entries = list.groups.flatMap((group) => group.entries);
  const [first] = takeBack;
  const backOf = new Map(first?.lines.map((line) => [line.item, backPacks(line)]));
  return {
    words: new Map(
      entries.flatMap((entry) => {
        const words = inCaseWords(entry, asCounted.get(entry.key), plan);
        return words === '' ? [] : [[entry.key, words] as const];
      }),
    ),
    back: new Map(
      entries.flatMap(({ key, place, item }) => {
        const words = place === 'counter' ? (backOf.get(item) ?? '') : '';
        return words === '' ? [] : [[key, words] as const];
      }),
    ),
    goesBack: takeBack.flatMap((one) => goesBackOf(one, plan)),
  };
}

const quantityOf = ({ asks }: ShoppingEntry): number =>
  asks.reduce((sum, { count, quantity }) => sum + count * quantity, 0);

/** Empty where no more of it is bought than is counted. */
function inCaseWords(
  entry: ShoppingEntry,
  counted: ShoppingEntry | undefined,
  { questions }: OutcomePlan,
): string {
  if (counted !== undefined && quantityOf(entry) <= quantityOf(counted)) return '';
  const why = questions.flatMap(({ words, outcomes }) =>
    outcomes
      .filter(
        ({ isServed, kit }) => isServed && kit.some((one) => one.item === entry.item && one.byQuantity > 0),
      )
      .map((outcome) => `${words} ${briefly(outcome.words)}`),
  );
  const more = why.length - MOST_REASONS;
  const reasons = [...why.slice(0, MOST_REASONS), ...(more > 0 ? [`and ${more} more`] : [])].join(', ');
  const told = reasons === '' ? '' : ` (${reasons})`;
  return counted === undefined
    ? `only in case${told}`
    : `as counted ${askWords(counted).replace(/ ×$/, '')} would do, the rest in case${told}`;
}

/** Of how something turned out the answer alone: "Less than 35 mm". */
const briefly = (words: string): string => words.split(':')[0] ?? words;

function goesBackOf(
  { question, outcome, lines }: TakeBackOfOutcome,
  { questions }: OutcomePlan,
): readonly GoesBack[] {
  const back = lines.filter((line) => line.back.length > 0).map(backWords);
  if (back.length === 0) return [];
  const asked = questions.find(({ id }) => id === question);
  const turned = asked?.outcomes.find(({ id }) => id === outcome);
  const title =
    asked === undefined || turned === undefined
      ? 'If all turns out as it is counted'
      : `If only this turns out otherwise: ${asked.words} ${turned.words}`;
  return [{ title, lines: back }];
}
