import { type Exact, exactOf } from '../exact.ts';
import type { SheetCell } from './sheet.ts';
import { asQuoted, type Told, told, untold } from './told.ts';

/** The sign between whole and parts in a list's figures. */
export type DecimalSign = '.' | ',';

/** Figures at the start of a text: groups of three set apart, then a decimal part. */
const forms: Readonly<Record<DecimalSign, RegExp>> = {
  '.': /^(\d{1,3}(?:,\d{3})+|\d{1,3}(?: \d{3})+|\d+)(?:\.(\d+))?(?![\d.,])|^\.(\d+)(?![\d.,])/,
  ',': /^(\d{1,3}(?:\.\d{3})+|\d{1,3}(?: \d{3})+|\d+)(?:,(\d+))?(?![\d.,])|^,(\d+)(?![\d.,])/,
};

/** Digits that are held exactly. */
const MOST_DIGITS = 15;

/** A number at the start of a text, and what follows it. */
export interface Figure {
  readonly value: Exact;
  readonly rest: string;
}

/** Reads the figure that a text begins with, exactly as written: 1,234.50, 1 234.50, .95, or 1.234,50 where told. */
export function figureAt(text: string, sign: DecimalSign): Told<Figure> {
  const found = forms[sign].exec(text);
  if (found === null) return untold(`${asQuoted(text)} is no figure`, wrongFigure(text, sign));
  const whole = (found[1] ?? '0').replace(/[^\d]/g, '');
  const parts = found[2] ?? found[3] ?? '';
  const digits = whole.replace(/^0+/, '').length;
  const rest = text.slice(found[0].length).trim();
  if (digits > MOST_DIGITS)
    return untold(`${asQuoted(text)} has more than ${MOST_DIGITS} digits`, 'Write it with fewer');
  // A long tail is what binary fractions leave when a program writes them out: 12.340000000000002.
  if (digits + parts.length > MOST_DIGITS)
    return told({ value: exactOf(Number(Number(`${whole}.${parts}`).toPrecision(MOST_DIGITS))), rest });
  const value = { num: Number(whole + parts), den: 10 ** parts.length };
  return told({ value, rest });
}

function wrongFigure(text: string, sign: DecimalSign): string {
  const other: DecimalSign = sign === '.' ? ',' : '.';
  if (forms[other].test(text))
    return `Say that the list’s figures have a decimal ${sign === '.' ? 'comma' : 'point'}, or write it with a decimal ${sign === '.' ? 'point' : 'comma'}`;
  return 'Write it in figures';
}

/** A figure alone in its cell. */
export function figureOf(cell: SheetCell, sign: DecimalSign): Told<Exact> {
  if (typeof cell === 'number')
    return cell >= 0 && Number.isFinite(cell)
      ? told(exactOf(cell))
      : untold(`${cell} is below nothing`, 'Write a figure from 0');
  const read = figureAt(cell, sign);
  if (!read.ok) return read;
  return read.value.rest === ''
    ? told(read.value.value)
    : untold(`${asQuoted(cell)} is more than a figure`, 'Write the figure alone');
}
