import { boughtOf } from '#engine/price/bought.ts';
import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import type { BillLine } from '#engine/price/totals.ts';
import { counted, hundredths } from '../../written.ts';

const unitWords = (unit: string): string => (unit === 'each' ? '' : ` ${unit}`);

/** A quantity of the bill: "4.5 m", "12". */
export const quantityWritten = (quantity: number, unit: string): string =>
  `${hundredths(quantity)}${unitWords(unit)}`;

/** What to ask for at the counter, and what becomes of it; `rest` is empty where all of it is used. */
export interface BoughtWords {
  readonly buy: string;
  readonly rest: string;
}

/** What is bought of a line: as it is asked for at the counter, or where nothing tells that, in the packs of the bill. */
interface BoughtSo {
  readonly words: string;
  readonly quantity: number;
  readonly leftOver: number;
}

function inPacks(line: BillLine): BoughtSo {
  const { packs, quantity, leftOver } = boughtOf(line);
  const { packQuantity, unit } = line;
  const words =
    packs === null || packQuantity === null || packQuantity === 1
      ? quantityWritten(quantity, unit)
      : `${counted(packs, 'pack')} of ${quantityWritten(packQuantity, unit)}`;
  return { words, quantity, leftOver };
}

function asAsked({ asks, leftOver }: AskedFor): BoughtSo {
  return {
    words: asks.map(({ words }) => words).join(' and '),
    quantity: asks.reduce((sum, { count, quantity }) => sum + count * quantity, 0),
    leftOver,
  };
}

/** What a shopping list asks for of an item. */
export type AskedFor = Pick<ShoppingEntry, 'asks' | 'leftOver'>;

/**
 * What a line of the bill says of buying: what is asked for, what of it is used and charged, what is left over.
 *
 * @param asked what the shopping list has of it, so that both say the same; null: it has nothing, and the bill's packs count.
 */
export function boughtWords(line: BillLine, asked: AskedFor | null): BoughtWords {
  const { quantity, fromStock, unit, charge, chargedQuantity } = line;
  if (quantity === 0) return { buy: 'none; may turn out to be needed', rest: '' };
  if (quantity === fromStock) return { buy: 'none: the van has it', rest: '' };
  const bought = asked === null ? inPacks(line) : asAsked(asked);
  const isWhole = Math.abs(chargedQuantity - bought.quantity) < SAME;
  const left = bought.leftOver < SAME ? '' : quantityWritten(bought.leftOver, unit);
  if (charge === 'packs' && isWhole)
    return { buy: bought.words, rest: left === '' ? '' : `charged whole; ${left} left over` };
  if (left === '' && isWhole) return { buy: bought.words, rest: '' };
  const charged = `${quantityWritten(chargedQuantity, unit)} ${charge === 'used' ? 'used and charged' : 'charged, in whole packs'}`;
  return { buy: bought.words, rest: left === '' ? charged : `${charged}; ${left} left for the van` };
}

/** Quantities nearer than this are one. */
const SAME = 1e-6;
