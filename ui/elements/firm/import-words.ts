import type { PriceChange, ShownPrice } from '#engine/price/list/import-plan.ts';
import type { ColumnRole } from '#engine/price/list/list-reading.ts';
import { hundredths, pounds } from '../../written.ts';

/** What a column says, in words. */
export const roleWords: Readonly<Record<ColumnRole, string>> = {
  description: 'What it is',
  code: 'Merchant’s number',
  price: 'Price',
  per: 'What the price is for',
  pack: 'Pack or coil holds',
  discount: 'Discount',
  date: 'Day of the price',
  item: 'Item id',
  place: 'Jobs are',
  kind: 'Sold as',
  least: 'Not less than',
  charge: 'Charge for',
  counter: 'Counter',
  supplier: 'Merchant',
  toldDiscount: 'Discount taken off',
  vat: 'VAT',
};

/** A quantity to a thousandth, without idle noughts. */
const quantity = (value: number): string => String(Math.round(value * 1000) / 1000);

/** A price and what it buys: £3.20 each, £1.12 a metre, £31.50 for 100 m. */
export function shownPrice({ pricePence, perQuantity }: ShownPrice, unit: string): string {
  const money = pounds(pricePence);
  if (perQuantity === 1)
    return unit === 'each' ? `${money} each` : `${money} a ${unit === 'm' ? 'metre' : unit}`;
  return `${money} for ${quantity(perQuantity)}${unit === 'each' ? '' : ` ${unit}`}`;
}

/** A figure for reading at a glance: 345, 2.5. */
const rough = (value: number): string => (value >= 10 ? String(Math.round(value)) : hundredths(value));

/** From here on a price has not gone up or down by so much, but is something else. */
const MANY_TIMES = 20;

/** How far a price has moved: 4 % up, 2.5 % down, 103 times as much, one 98th of it. */
export function movedWords({ ratio }: Pick<PriceChange, 'ratio'>): string {
  if (ratio === null) return 'new';
  if (ratio >= 2) return `${rough(ratio)} times as much`;
  if (ratio === 0) return 'nothing any more';
  if (ratio < 1 / MANY_TIMES) return `one ${rough(1 / ratio)}th of it`;
  const percent = Math.round((ratio - 1) * 1000) / 10;
  if (percent === 0) return ratio === 1 ? 'as before' : 'hardly moved';
  return `${Math.abs(percent)} % ${percent > 0 ? 'up' : 'down'}`;
}
