/** What a number field takes. */
export interface NumberBounds {
  readonly min: number | null;
  readonly max: number | null;
  /** Only whole numbers. */
  readonly whole: boolean;
  readonly unit: string;
}

/** A number as typed: the value, nothing, or why it cannot be. */
export type TypedNumber =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly error: string };

const withUnit = (value: number, unit: string): string => (unit === '' ? String(value) : `${value} ${unit}`);

/**
 * Reads a number as people type it: spaces and thousands commas are let pass ("2,400"), a decimal comma is not
 * guessed at. An empty text is null: not known.
 */
export function readNumber(typed: string, bounds: NumberBounds): TypedNumber {
  const text = typed.trim();
  if (text === '') return { ok: true, value: null };
  const bare = /^[-+]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(text)
    ? text.replaceAll(',', '')
    : text.replaceAll(' ', '');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(bare))
    return { ok: false, error: `“${text}” is not a number. Write it like 2400 or 0.24.` };
  const value = Number(bare);
  if (bounds.whole && !Number.isInteger(value)) return { ok: false, error: 'Only whole numbers go here.' };
  if (bounds.min !== null && value < bounds.min)
    return { ok: false, error: `It cannot be less than ${withUnit(bounds.min, bounds.unit)}.` };
  if (bounds.max !== null && value > bounds.max)
    return { ok: false, error: `It cannot be more than ${withUnit(bounds.max, bounds.unit)}.` };
  return { ok: true, value };
}
