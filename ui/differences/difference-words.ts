import type { DataDifference } from './data-differences.ts';
import { fieldWords, numberWords } from './field-words.ts';

/** One line of what differs between two states of a document, in plain words. */
export interface Difference {
  /** The thing: "W1", "Terms". */
  readonly thing: string;
  /** The field of it: "where", "travel"; empty where the whole thing is meant. */
  readonly field: string;
  readonly mine: string;
  readonly theirs: string;
  /** Who changed it since both were one. */
  readonly by: 'me' | 'them' | 'both';
}

/** How a document's own words are found. */
export interface Wording {
  /** The thing at the beginning of a path, and how many steps of the path name it. */
  readonly thing: (path: readonly string[]) => { readonly name: string; readonly steps: number };
  /** A value at a path in words; null where it is written as any other. */
  readonly value: (path: readonly string[], value: unknown, whose: 'mine' | 'theirs') => string | null;
}

/** More than a line's worth is not written out, characters. */
const MOST_CHARACTERS = 90;

function plainWords(field: string, value: unknown): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberWords(field, value);
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return listWords(field, value);
  const parts = Object.entries(value as object).filter(([key]) => key !== 'id');
  const words = parts.map(([key, part]) => `${fieldWords(key)} ${plainWords(key, part)}`).join(', ');
  return words.length > MOST_CHARACTERS ? 'given, in several parts' : words;
}

function listWords(field: string, list: readonly unknown[]): string {
  if (list.length === 0) return 'nothing';
  const words = list.map((one) => plainWords(field, one)).join(', ');
  return words.length > MOST_CHARACTERS ? `${list.length} of them` : words;
}

/** A whole thing that only one of the two has. */
function presence(value: unknown, base: unknown): string {
  if (value === undefined) return base === undefined ? 'not there' : 'removed';
  return base === undefined ? 'added' : 'there';
}

/** Tells a difference in plain words. */
export function differenceWords(
  difference: DataDifference,
  by: Difference['by'],
  wording: Wording,
): Difference {
  const { path, mine, theirs, base } = difference;
  const { name, steps } = wording.thing(path);
  const fields = path.slice(steps);
  const field = fields.map(fieldWords).join(': ');
  if (field === '' && (mine === undefined || theirs === undefined))
    return { thing: name, field: '', mine: presence(mine, base), theirs: presence(theirs, base), by };
  const last = fields.at(-1) ?? path.at(-1) ?? '';
  const written = (value: unknown, whose: 'mine' | 'theirs'): string =>
    wording.value(path, value, whose) ?? plainWords(last, value);
  const [here, there] = [written(mine, 'mine'), written(theirs, 'theirs')];
  // Told apart although a line has no room for it, or words are the same.
  const isAlike = here === there;
  return {
    thing: name,
    field,
    mine: isAlike ? `${here} (differs in its details)` : here,
    theirs: there,
    by,
  };
}
