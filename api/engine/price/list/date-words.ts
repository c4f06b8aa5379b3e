import { dayCount } from './day-count.ts';
import type { SheetCell } from './sheet.ts';
import { asQuoted, type Told, told, untold } from './told.ts';

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const two = (value: number): string => String(value).padStart(2, '0');

function written(year: number, month: number, day: number): string | null {
  const iso = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
  return dayCount(iso) === null ? null : iso;
}

const yearOf = (digits: string): number => (digits.length === 2 ? 2000 + Number(digits) : Number(digits));

function isoOf(text: string): string | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/.exec(text);
  if (iso !== null) return written(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const figures = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$/.exec(text);
  if (figures !== null) return written(yearOf(figures[3] ?? ''), Number(figures[2]), Number(figures[1]));
  const named = /^(\d{1,2})[ -]([a-z]{3})[a-z]*\.?,?[ -](\d{4}|\d{2})$/i.exec(text);
  if (named === null) return null;
  return written(
    yearOf(named[3] ?? ''),
    months.indexOf((named[2] ?? '').toLowerCase()) + 1,
    Number(named[1]),
  );
}

/** Reads a day: 2026-11-25, 25/11/2026, 25.11.26, 25 Nov 2026; the day before the month, as in the United Kingdom. */
export function dateOf(cell: SheetCell): Told<string> {
  const iso = typeof cell === 'string' ? isoOf(cell) : null;
  return iso === null
    ? untold(`${asQuoted(String(cell))} is no day`, 'Write it as 25/11/2026, the day first')
    : told(iso);
}
