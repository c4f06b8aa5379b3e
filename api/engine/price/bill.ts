import type { Stock, Terms } from '#model/job.ts';
import type { Price, Prices } from '#model/library.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { packsFor, QUANTITY_PLACES } from './bought.ts';
import { decimalOf, type Exact, exactOf, minus, over, times } from './exact.ts';
import { roundHalfUpPence } from './money.ts';
import { pricesByItem } from './prices-by-item.ts';
import type { BillLine } from './totals.ts';
import { costVatFactor } from './vat.ts';

/** What is charged of what is used, wherever it comes from: whole packs, or just that. */
function chargedQuantity(wanted: Exact, price: Price): number {
  if (price.charge === 'used' || price.packQuantity === undefined) return decimalOf(wanted, QUANTITY_PLACES);
  const packs = packsFor(wanted, price.packQuantity);
  return decimalOf(times(exactOf(packs), exactOf(price.packQuantity)), QUANTITY_PLACES);
}

function unpricedLine(line: TakeoffLine, fromStock: number): BillLine {
  return {
    item: line.item,
    description: line.description,
    group: line.group,
    unit: line.unit,
    quantity: line.quantity,
    fromStock,
    causes: line.causes,
    pricePence: 0,
    perQuantity: 1,
    packQuantity: null,
    charge: 'used',
    chargedQuantity: decimalOf(exactOf(line.quantity), QUANTITY_PLACES),
    costPence: 0,
    priced: false,
  };
}

function pricedLine(line: TakeoffLine, fromStock: number, price: Price, vatFactor: Exact): BillLine {
  const charged = chargedQuantity(exactOf(line.quantity), price);
  const listPence = over(times(exactOf(charged), exactOf(price.pricePence)), exactOf(price.perQuantity));
  return {
    item: line.item,
    description: line.description,
    group: line.group,
    unit: line.unit,
    quantity: line.quantity,
    fromStock,
    causes: line.causes,
    pricePence: price.pricePence,
    perQuantity: price.perQuantity,
    packQuantity: price.packQuantity ?? null,
    charge: price.charge,
    chargedQuantity: charged,
    costPence: roundHalfUpPence(times(listPence, vatFactor)),
    priced: true,
  };
}

/** What is in the van by item; several entries of one item add up. */
function vanOf(stock: readonly Stock[]): Map<string, number> {
  const van = new Map<string, number>();
  for (const { item, quantity } of stock) van.set(item, (van.get(item) ?? 0) + quantity);
  return van;
}

/**
 * The take-off as it is charged: what is used, in packs where the list says so. How much of it the van has is told beside; the firm
 * has paid for that too, so it lowers what is bought and not what is charged.
 *
 * @returns one line for each line of the take-off, in its order. An item that the list does not hold, or
 * holds in another unit, costs nothing and is marked as not priced.
 */
export function billOf(
  takeoff: readonly TakeoffLine[],
  prices: Prices,
  stock: readonly Stock[],
  vat: Terms['vat'],
): readonly BillLine[] {
  const priceByItem = pricesByItem(prices);
  const van = vanOf(stock);
  const vatFactor = costVatFactor(prices.vat, vat);
  return takeoff.map((line) => {
    const inVan = van.get(line.item) ?? 0;
    const fromStock = Math.min(inVan, line.quantity);
    if (fromStock > 0)
      van.set(line.item, decimalOf(minus(exactOf(inVan), exactOf(fromStock)), QUANTITY_PLACES));
    const price = priceByItem.get(line.item);
    return price !== undefined && price.unit === line.unit
      ? pricedLine(line, fromStock, price, vatFactor)
      : unpricedLine(line, fromStock);
  });
}
