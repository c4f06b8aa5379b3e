import type { Price, Prices } from '#model/library.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { MM_A_METRE } from '../buying/line-parts.ts';
import { offersOf } from '../buying/offers-of.ts';
import type { PurchaseLine, PurchasePlan } from '../buying/purchase.ts';
import { decimalOf, exactOf, minus } from '../exact.ts';
import { pricesByItem } from '../prices-by-item.ts';
import { lengthAsks, looseAsk, packAsks } from './asks.ts';
import { shoppingGroups } from './shopping-groups.ts';
import type { ShoppingEntry, ShoppingList, ShoppingPlace } from './shopping-list.ts';

/**
 * What is to be had for a scheme, as people go for it. A line of the purchase gives an entry where the van has some of
 * it, one where some of it is bought, and one for what the price list does not hold or holds nothing long enough for:
 * what they use adds up to what the line needs.
 *
 * @param prices the list that the purchase was planned by: merchants' names, words and numbers come from it.
 */
export function shoppingListOf({ lines }: Pick<PurchasePlan, 'lines'>, prices: Prices): ShoppingList {
  const rows = pricesByItem(prices);
  const entries = lines.flatMap((line) => {
    const row = line.priced ? rows.get(line.item) : undefined;
    const [supplier, counter] = [row?.supplier ?? '', line.counter];
    return entriesOf(line, row).map((entry) => ({ entry, supplier, counter }));
  });
  const groups = shoppingGroups(entries);
  return { groups, pence: groups.reduce((sum, { pence }) => sum + pence, 0), vat: prices.vat };
}

function entriesOf(line: PurchaseLine, row: Price | undefined): readonly ShoppingEntry[] {
  const places = [vanEntry(line), boughtEntry(line, row), unlistedEntry(line)];
  return places.filter((entry) => entry !== null);
}

/** What all entries of a line share, and what an entry has unless it says otherwise. */
function headOf({ item, description, group, unit, causes }: PurchaseLine, place: ShoppingPlace) {
  return {
    key: `${place}/${item}`,
    place,
    item,
    description,
    group,
    unit,
    causes,
    supplierWords: '',
    leftOver: 0,
    pence: null,
    cuts: [],
    nearMisses: [],
  };
}

const isOfVan = ({ from }: { readonly from: string }): boolean => from.startsWith('van/');

function vanEntry(line: PurchaseLine): ShoppingEntry | null {
  if (line.fromVan <= 0) return null;
  const cuts = line.cuts.filter(isOfVan);
  const lengthsMm = cuts.map(({ lengthMm }) => lengthMm);
  const asks = cuts.length > 0 ? lengthAsks(lengthsMm) : [looseAsk(line.fromVan, line.unit)];
  return { ...headOf(line, 'van'), asks, used: line.fromVan, cuts };
}

function boughtEntry(line: PurchaseLine, row: Price | undefined): ShoppingEntry | null {
  if (line.packs.length === 0) return null;
  const cuts = line.cuts.filter((cut) => !isOfVan(cut));
  return {
    ...headOf(line, 'counter'),
    asks: packAsks({ unit: line.unit, packs: line.packs, cuts: line.cuts }, codesOf(row)),
    supplierWords: row?.supplierWords ?? '',
    used: difference(line.boughtQuantity, line.leftOver),
    leftOver: line.leftOver,
    pence: line.pence,
    cuts,
    nearMisses: line.nearMisses,
  };
}

/** What nothing on the list serves: all that the van lacks of it, or the pieces that are too long. */
function unlistedEntry(line: PurchaseLine): ShoppingEntry | null {
  const head = headOf(line, 'unlisted');
  if (line.unserved.length > 0) {
    const lengthsMm = line.unserved.map(({ lengthMm }) => lengthMm);
    const used = lengthsMm.reduce((sum, lengthMm) => sum + lengthMm, 0) / MM_A_METRE;
    const causes = [...new Set(line.unserved.map(({ cause }) => cause))].toSorted();
    return { ...head, asks: lengthAsks(lengthsMm), used, causes };
  }
  const used = line.priced ? 0 : difference(line.needed, line.fromVan);
  return used <= 0 ? null : { ...head, asks: [looseAsk(used, line.unit)], used };
}

const difference = (whole: number, part: number): number =>
  decimalOf(minus(exactOf(whole), exactOf(part)), QUANTITY_PLACES);

/** The merchant's number of each way to buy an item: of its row, then of its further sizes, as offers stand. */
function codesOf(row: Price | undefined): (offerKey: string) => string {
  if (row === undefined) return () => '';
  const codes = [row.code, ...(row.packs ?? []).map(({ code }) => code)];
  const byOffer = new Map(offersOf(row).map(({ key }, i) => [key, codes[i] ?? '']));
  return (offerKey) => byOffer.get(offerKey) ?? '';
}
