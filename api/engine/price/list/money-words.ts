import { type Exact, exactOf, minus, over, times } from '../exact.ts';
import { type Basis, basisOf } from './basis-words.ts';
import { type DecimalSign, figureAt } from './decimal-words.ts';
import type { SheetCell } from './sheet.ts';
import { asQuoted, type Told, told, untold } from './told.ts';

/** A price as it is written, and what it is for where the cell says so. */
export interface WrittenPrice {
  /** In pence, exactly as written. */
  readonly pence: Exact;
  /** Null where the cell says nothing of it. */
  readonly basis: Basis | null;
}

const hundred = exactOf(100);
const inPence = (pounds: Exact): Exact => times(pounds, hundred);

/** Half a million pounds: more than anything over a counter costs. */
const MOST_PENCE = 50_000_000;

function held(pence: Exact, basis: Basis | null, text: string): Told<WrittenPrice> {
  if (Number(pence.num) / Number(pence.den) > MOST_PENCE)
    return untold(
      `${asQuoted(text)} is more than anything over a counter costs`,
      'Look whether a digit is too many',
    );
  return told({ pence, basis });
}

/** What stands behind a figure: pence, and what the price is for. */
function behind(rest: string): { readonly isPence: boolean; readonly words: string } {
  const pence = /^(?:p|pence|penny)\b\.?/i.exec(rest);
  const words = (pence === null ? rest : rest.slice(pence[0].length)).replace(/^\s*(?:GBP|£)/i, '').trim();
  return { isPence: pence !== null, words };
}

/**
 * Reads a price: £1,234.50, 12.34/100, 95p, £3.20 per 100, 24.50 per coil 50m; pounds unless it says pence.
 *
 * @returns a fault for what is no price in figures, is below nothing, or is in another currency.
 */
export function priceOf(cell: SheetCell, sign: DecimalSign): Told<WrittenPrice> {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell) || cell < 0)
      return untold(`${cell} is below nothing`, 'Write what it costs, or leave the row out');
    return held(inPence(exactOf(cell)), null, String(cell));
  }
  const text = cell.replace(/^(?:GBP\b|£)\s*/i, '');
  if (/[$€¥]|\b(?:EUR|USD)\b/i.test(cell))
    return untold(`${asQuoted(cell)} is in another currency`, 'Write it in pounds');
  if (/^[-−(]/.test(text))
    return untold(`${asQuoted(cell)} is below nothing`, 'Write what it costs, or leave the row out');
  if (!/\d/.test(text))
    return untold(
      `${asQuoted(cell)} is no price in figures`,
      'Ask the merchant for it, or leave the row out',
    );
  const read = figureAt(text, sign);
  if (!read.ok) return read;
  const { isPence, words } = behind(read.value.rest);
  const pence = isPence ? read.value.value : inPence(read.value.value);
  if (words === '') return held(pence, null, cell);
  const basis = basisOf(words, sign);
  return basis.ok ? held(pence, basis.value, cell) : basis;
}

/** What is left of a price once so many percent are taken off. */
export function lessDiscount(pence: Exact, discountPercent: number): Exact {
  return over(times(pence, minus(hundred, exactOf(discountPercent))), hundred);
}
