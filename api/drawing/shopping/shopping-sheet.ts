import { cautions } from '#engine/cautions.ts';
import type { PurchasePlan } from '#engine/price/buying/purchase.ts';
import { EXTRA_GROUP } from '#engine/price/extra-bill.ts';
import { percentOfPence } from '#engine/price/money.ts';
import type { ShoppingEntry, ShoppingList } from '#engine/price/shopping/shopping-list.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import { vatPercentOf } from '#engine/price/vat.ts';
import { pounds } from '#engine/quotation/said.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { OutcomePlan } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Packing } from '#engine/schemes/outcomes/packing.ts';
import type { Prices } from '#model/library.ts';
import { type CutList, cutListsOf } from './cut-lists.ts';
import { type InCase, inCaseOf, nothingInCase } from './in-case.ts';
import { nothingOpen, type StillOpen, stillOpenOf } from './still-open.ts';
import { type Instead, insteadOf, type TookInstead } from './took-instead.ts';
import { whatFor } from './what-for.ts';

/** What the shopping list of a scheme is made from. */
export interface ShoppingRequest {
  readonly reference: string;
  readonly title: string;
  /** As it is counted. */
  readonly scheme: SchemeEstimate;
  /** What is bought in its stead while things are open; absent or null: what is counted. */
  readonly packing?: Packing | null;
  /** What is open of it and what is bought for; absent or null: nobody asked. */
  readonly open?: OutcomePlan | null;
  /** What the job records as taken instead; absent: nothing. */
  readonly taken?: readonly TookInstead[] | undefined;
  /** Keys of what was marked as not in stock; absent: none. */
  readonly notInStock?: ReadonlySet<string>;
  readonly prices: Prices;
  readonly date: string;
  /** The name of the job's state. */
  readonly state: string;
  /** What is said of prices that are the demo's still; null when none are. */
  readonly demoNote: string | null;
}

/** The shopping list of a scheme with all that people read on it. */
export interface ShoppingSheet
  extends Omit<ShoppingRequest, 'scheme' | 'packing' | 'open' | 'taken' | 'notInStock' | 'prices'> {
  readonly schemeName: string;
  /** What is bought, line by line: what the list asks for was made of it. */
  readonly purchase: PurchasePlan;
  readonly list: ShoppingList;
  /** "£132.40 over the counter, VAT not in it, by the price list of 2026-11-01", and how much has no price. */
  readonly costWords: string;
  /** What an entry is for, by its key. */
  readonly forWords: ReadonlyMap<string, string>;
  /** What is there in case only, and what goes back. */
  readonly inCase: InCase;
  /** What may be needed and is not on it. */
  readonly stillOpen: StillOpen;
  readonly instead: Instead;
  /** What else has to come along: for work that is not on the drawing, whose materials somebody priced and nobody counted. */
  readonly uncounted: readonly string[];
  readonly notInStock: ReadonlySet<string>;
  readonly cutLists: readonly CutList[];
  readonly cautions: readonly string[];
}

/** The entries of a list in its order. */
export const entriesOf = ({ groups }: ShoppingList): readonly ShoppingEntry[] =>
  groups.flatMap(({ entries }) => entries);

/** A scheme's shopping list for people. */
export function shoppingSheetOf({
  scheme,
  packing = null,
  open = null,
  taken = [],
  notInStock = new Set(),
  prices,
  ...head
}: ShoppingRequest): ShoppingSheet {
  const bought = packing === null ? scheme : { ...scheme, purchase: packing.plan.purchase };
  const list = shoppingListOf(bought.purchase, prices);
  const words = whatFor(scheme.worked);
  return {
    ...head,
    schemeName: scheme.name,
    purchase: bought.purchase,
    list,
    costWords: costWords(list, prices, scheme.price.vat === 'not-registered'),
    forWords: new Map(entriesOf(list).map(({ key, causes }) => [key, words(causes)])),
    inCase: packing === null ? nothingInCase : inCaseOf(list, scheme.purchase, { packing, prices }),
    stillOpen: open === null ? nothingOpen : stillOpenOf(open),
    instead: insteadOf(list, taken),
    uncounted: uncountedOf(scheme),
    notInStock,
    cutLists: cutListsOf(bought),
    cautions,
  };
}

/** Sums stand in the price; what is bought for them is for whoever wrote them down to say. */
const uncountedOf = ({ price: { bill } }: SchemeEstimate): readonly string[] =>
  bill
    .filter(({ group }) => group === EXTRA_GROUP)
    .map(({ description, pricePence }) => `${description}: ${pounds(pricePence)} of materials`);

/** The heading over what is not counted, wherever the list is read. */
export const UNCOUNTED_TITLE = 'Also bring along, not counted here';

/** What is paid in all; a firm that is not registered gets no VAT back, so it is told what it pays with it. */
function costWords(list: ShoppingList, prices: Prices, bearsVat: boolean): string {
  const unlisted = entriesOf(list).filter(({ place }) => place === 'unlisted').length;
  const byList = `by the price list of ${prices.date}`;
  const sum =
    list.vat === 'excluded' && bearsVat
      ? `${pounds(list.pence + percentOfPence(list.pence, vatPercentOf.standard))} over the counter with VAT, which you do not get back; ${pounds(list.pence)} without it, as the sums here are, ${byList}`
      : `${pounds(list.pence)} over the counter, VAT ${list.vat === 'included' ? 'in it' : 'not in it'}, ${byList}`;
  if (unlisted === 0) return `${sum}.`;
  return `${sum}; ${unlisted === 1 ? 'one thing is' : `${unlisted} things are`} not on it and not in that sum.`;
}
