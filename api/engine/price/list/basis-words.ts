import type { Pack, Price } from '#model/library.ts';
import { decimalOf } from '../exact.ts';
import { type DecimalSign, figureAt } from './decimal-words.ts';
import { asQuoted, type Told, told, untold } from './told.ts';

/** What a price is for: so much of a unit, loose or as one pack. */
export interface Basis {
  /** Null where a pack is named and not what it holds. */
  readonly quantity: number | null;
  /** Null: the item's own. */
  readonly unit: Price['unit'] | null;
  /** What it is handed over as; null where it is only reckoned by so much. */
  readonly kind: Pack['kind'] | null;
}

const all = <T>(words: string, meaning: T): readonly (readonly [string, T])[] =>
  words.split(' ').map((word) => [word, meaning] as const);

const units = new Map<string, Price['unit']>([
  ...all('each ea unit units no nr pc pcs piece pieces item items single one', 'each' as const),
  ...all('m mt mtr mtrs metre metres meter meters lm', 'm' as const),
  ...all('kg kgs kilo kilos kilogram', 'kg' as const),
  ...all('set sets kit kits', 'set' as const),
]);

const containers = new Map<string, Pack['kind']>([
  ...all('coil coils reel reels roll rolls hank', 'coil' as const),
  ...all('drum drums', 'drum' as const),
  ...all('length lengths len lgth bar', 'length' as const),
  ...all('pack packs pk pkt packet box boxes bx bag bags tub carton ctn outer sack', 'pack' as const),
  ...all('cut', 'cut' as const),
]);

const counts = new Map<string, number>([
  ...all('hundred hundreds c', 100),
  ...all('thousand thousands', 1000),
  ...all('pair', 2),
  ...all('dozen', 12),
]);

/** Words between the others that say nothing by themselves. */
const idle = new Set([
  'per',
  'of',
  'a',
  'an',
  'the',
  'price',
  'priced',
  'by',
  'in',
  'to',
  'x',
  'qty',
  'sold',
  'for',
]);

interface Words {
  readonly figures: readonly number[];
  readonly words: readonly string[];
}

/** A text as its figures and its words in lower case; null where it holds anything else. */
function wordsOf(text: string, sign: DecimalSign): Words | null {
  const figures: number[] = [];
  const words: string[] = [];
  let rest = text.toLowerCase().replace(/^[/@\s]+/, '');
  while (rest !== '') {
    const word = /^\p{L}+/u.exec(rest)?.[0];
    if (word !== undefined) {
      if (!idle.has(word)) words.push(word);
      rest = rest.slice(word.length);
    } else if (/^[\d.,]/.test(rest) && !/^[.,](?!\d)/.test(rest)) {
      const read = figureAt(rest, sign);
      if (!read.ok) return null;
      figures.push(decimalOf(read.value.value, 6));
      rest = read.value.rest;
    } else if (/^[\s./()'’-]/.test(rest)) rest = rest.slice(1);
    else return null;
  }
  return { figures, words };
}

/** What a pack may hold: from a gram of plaster to a million clips. */
export const isAmount = (quantity: number): boolean => quantity >= 0.001 && quantity <= 1_000_000;

/** The fault of what is no amount. */
export const noAmount = (text: string): Told<never> =>
  untold(`${asQuoted(text)} is no amount that anything is sold by`, 'Write how many the price is for');

const only = <T>(found: readonly T[]): T | null => found[0] ?? null;

/**
 * Reads words of what a price is for: each, per 100, 100 m, per coil of 50 m, pk 100, drum 100m, dozen.
 *
 * @returns what they say; a fault where a word is not known, or they could mean two things.
 */
export function basisOf(text: string, sign: DecimalSign = '.'): Told<Basis> {
  const unclear = untold(
    `${asQuoted(text)} does not say what the price is for`,
    'Write each, per 100, per metre, per 100 m, or per coil (drum, length, pack) of so many',
  );
  const found = wordsOf(text, sign);
  if (found === null || found.figures.length > 1) return unclear;
  const known = { units: [] as Price['unit'][], kinds: [] as Pack['kind'][], counts: [] as number[] };
  for (const word of found.words) {
    const [unit, kind, count] = [units.get(word), containers.get(word), counts.get(word)];
    if (unit !== undefined) known.units.push(unit);
    else if (kind !== undefined) known.kinds.push(kind);
    else if (count !== undefined) known.counts.push(count);
    else return unclear;
  }
  if (known.units.length > 1 || known.kinds.length > 1 || known.counts.length > 1) return unclear;
  const [unit, kind, count] = [only(known.units), only(known.kinds), only(known.counts)];
  const figure = only(found.figures);
  if (unit === null && kind === null && count === null && figure === null) return unclear;
  const holds = (figure ?? 1) * (count ?? 1);
  if (!isAmount(holds)) return noAmount(text);
  const isSized = figure !== null || count !== null || kind === null || kind === 'cut';
  return told({ quantity: isSized ? holds : null, unit, kind });
}
