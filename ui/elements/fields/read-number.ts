import { readLengthMm } from './read-length.ts';

/** What a number field takes. */
export interface NumberBounds {
  readonly min: number | null;
  readonly max: number | null;
  /** Only whole numbers. */
  readonly whole: boolean;
  readonly unit: string;
  /** True for pounds that are kept in whole pence. */
  readonly wholePence?: boolean;
  /** True where an empty field is a fault; absent: it means not known. */
  readonly needed?: boolean;
  /** A bare number below this is in metres, as a laser shows it; absent: it is in the field's unit. */
  readonly bareMetresBelow?: number | null;
}

/** A number as typed: the value, nothing, or why it cannot be. */
export type TypedNumber =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly error: string };

function withUnit(value: number, unit: string): string {
  if (unit === '£') return `£${value}`;
  return unit === '' ? String(value) : `${value} ${unit}`;
}

const DECIMAL = /^[-+]?(\d+\.?\d*|\.\d+)$/;
const WITH_THOUSANDS = /^[-+]?\d{1,3}(,\d{3})+(\.\d+)?$/;

/** A text without the unit that its field has anyway: "£0.95", "20 %", "35mm". */
function withoutUnit(text: string, unit: string): string {
  if (unit === '') return text;
  if (unit === '£') return text.replace(/^([-+]?)£/, '$1');
  return text.toLowerCase().endsWith(unit.toLowerCase()) ? text.slice(0, -unit.length) : text;
}

/** What a text says in a field of millimetres that takes lengths in any unit; null where it says no number. */
function lengthIn(text: string, { unit, whole, bareMetresBelow }: NumberBounds): number | null {
  const mm = readLengthMm(text);
  // An inch is no whole number of millimetres.
  if (mm !== null) return whole ? Math.round(mm) : mm;
  const bare = numberIn(text, unit);
  const isMetres = bare !== null && bareMetresBelow != null && Math.abs(bare) < bareMetresBelow;
  return isMetres ? Math.round(bare * 10_000) / 10 : bare;
}

/** What a text says in the field's unit; pence, where the field has pounds, as "95p". Null where it says no number. */
function numberIn(text: string, unit: string): number | null {
  const bare = withoutUnit(text.replace(/\s/g, ''), unit);
  const inPence = unit === '£' && /^[-+]?[\d.,]+p$/i.test(bare) && !text.includes('£');
  const digits = inPence ? bare.slice(0, -1) : bare;
  const plain = WITH_THOUSANDS.test(digits) ? digits.replaceAll(',', '') : digits;
  if (!DECIMAL.test(plain)) return null;
  return inPence ? Number((Number(plain) / 100).toFixed(6)) : Number(plain);
}

/** True for pounds that come to whole pence, but for what binary fractions make of them. */
const isWholePence = (pounds: number): boolean => Math.abs(pounds * 100 - Math.round(pounds * 100)) < 1e-6;

/** How numbers of a unit are written, to show who wrote another thing. */
const examples = (unit: string): string => {
  if (unit === 'mm') return '2400, 2.4 m or 7\' 10"';
  return unit === '£' ? '£0.95, 95p or 1,200' : '2400 or 0.24';
};

/**
 * Reads a number as people type it: spaces, thousands commas ("2,400") and the field's own unit ("£0.95", "20 %") are
 * let pass, a field of pounds takes pence too ("95p"), one of millimetres lengths in any unit ("2.4 m", `7' 10½"`), only whole ones where so bounded;
 * a decimal comma is not guessed at. An empty text is null: not known.
 */
export function readNumber(typed: string, bounds: NumberBounds): TypedNumber {
  const text = typed.trim();
  if (text === '')
    return bounds.needed === true
      ? { ok: false, error: 'A number is needed here, so nothing is saved. Nought is written 0.' }
      : { ok: true, value: null };
  const value = bounds.unit === 'mm' ? lengthIn(text, bounds) : numberIn(text, bounds.unit);
  if (value === null)
    return {
      ok: false,
      error: `“${text}” is not a number, so it is not saved. Write it like ${examples(bounds.unit)}.`,
    };
  if (bounds.whole && !Number.isInteger(value)) return { ok: false, error: 'Only whole numbers go here.' };
  if (bounds.wholePence === true && !isWholePence(value))
    return {
      ok: false,
      error: `Pence are whole here, so “${text}” is not saved. Write it like £0.95 or 95p.`,
    };
  if (bounds.min !== null && value < bounds.min)
    return { ok: false, error: `It cannot be less than ${withUnit(bounds.min, bounds.unit)}.` };
  if (bounds.max !== null && value > bounds.max)
    return { ok: false, error: `It cannot be more than ${withUnit(bounds.max, bounds.unit)}.` };
  return { ok: true, value };
}
