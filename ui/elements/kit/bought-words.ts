import { boughtOf } from '#engine/price/bought.ts';
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

/** What a line of the bill says of buying: packs, what of them is used and charged, what is left over. */
export function boughtWords(line: BillLine): BoughtWords {
  const { quantity, fromStock, packQuantity, unit, charge } = line;
  if (quantity === 0) return { buy: 'none; may turn out to be needed', rest: '' };
  if (quantity === fromStock) return { buy: 'none: the van has it', rest: '' };
  const bought = boughtOf(line);
  if (bought.packs === null || packQuantity === null || packQuantity === 1)
    return { buy: quantityWritten(bought.quantity, unit), rest: leftWords(bought.leftOver, line) };
  return {
    buy: `${counted(bought.packs, 'pack')} of ${quantityWritten(packQuantity, unit)}`,
    rest:
      charge === 'used'
        ? `${quantityWritten(bought.quantity - bought.leftOver, unit)} used and charged${stays(bought.leftOver, unit)}`
        : leftWords(bought.leftOver, line),
  };
}

const stays = (leftOver: number, unit: string): string =>
  leftOver === 0 ? '' : `; ${quantityWritten(leftOver, unit)} left for the van`;

/** What is left over of what is charged whole. */
function leftWords(leftOver: number, { unit, charge }: BillLine): string {
  if (leftOver === 0) return '';
  const left = `${quantityWritten(leftOver, unit)} left over`;
  return charge === 'used' ? left : `charged whole; ${left}`;
}
