import type { ColumnMap } from '#model/library.ts';
import { basisOf } from './basis-words.ts';
import { ownHeaders } from './own-list.ts';
import { cellWords, type Sheet, type SheetRow } from './sheet.ts';

/** Columns of a merchant's list that a person can name. */
export type ListColumns = ColumnMap['columns'];

/** Words of headings by what their column says, the surest first. */
const headingWords: readonly (readonly [role: keyof ListColumns, words: readonly string[]])[] = [
  [
    'price',
    [
      'net price',
      'nett price',
      'your price',
      'trade price',
      'contract price',
      'unit price',
      'price each',
      'price per',
      'cost price',
      'price',
      'nett',
      'net',
      'cost',
      'list price',
      '£',
      'rrp',
    ],
  ],
  [
    'code',
    [
      'product code',
      'stock code',
      'item code',
      'part number',
      'part no',
      'cat no',
      'catalogue no',
      'order code',
      'supplier code',
      'product no',
      'item no',
      'sku',
      'code',
      'reference',
      'ref',
    ],
  ],
  [
    'description',
    [
      'product description',
      'item description',
      'description',
      'product name',
      'product',
      'details',
      'name',
      'item',
      'title',
    ],
  ],
  [
    'per',
    [
      'price basis',
      'price unit',
      'pricing unit',
      'unit of measure',
      'sold by',
      'uom',
      'basis',
      'unit',
      'per',
      'each per',
    ],
  ],
  [
    'pack',
    [
      'pack size',
      'pack qty',
      'pack quantity',
      'qty per pack',
      'packs of',
      'box qty',
      'coil length',
      'pack',
      'box',
      'length',
      'size of pack',
    ],
  ],
  ['discount', ['discount', 'disc']],
  ['date', ['price date', 'valid from', 'effective from', 'effective', 'date', 'updated']],
];

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}£]+/gu, ' ')
    .trim();

const holds = (heading: string, words: string): boolean =>
  ` ${heading} `.includes(` ${words} `) || heading === words;

/** How far down the headings are looked for: addresses and notes may stand above them. */
const LOOKED_AT = 50;

/** The columns that headings name: each the first of the surest words that stands there, no column twice. */
function columnsOf(headings: readonly string[]): ListColumns {
  const columns: { -readonly [Role in keyof ListColumns]: ListColumns[Role] } = {};
  const taken = new Set<number>();
  for (const [role, words] of headingWords) {
    const found = words
      .flatMap((word) => [headings.indexOf(word), headings.findIndex((heading) => holds(heading, word))])
      .find((at) => at >= 0 && !taken.has(at));
    if (found === undefined) continue;
    columns[role] = found;
    taken.add(found);
  }
  return columns;
}

const isList = ({ price, code, description }: ListColumns): boolean =>
  price !== undefined && (code !== undefined || description !== undefined);

/** What a price is for, by the heading of its column: “Price per 100”, “£/m”. */
function basisBy(heading: string, hasPer: boolean): ColumnMap['basis'] {
  const words = /(?:per|\/)\s*(.+)$|\b(each)\b/i.exec(heading);
  const read =
    words === null ? null : basisOf((words[1] ?? words[2] ?? '').replace(/\(?(?:ex|inc).*$/i, '').trim());
  if (read === null || !read.ok) return hasPer ? 'by-column' : 'each';
  const { quantity, unit, kind } = read.value;
  if (kind !== null) return 'per-pack';
  if (quantity === 1000) return 'per-1000';
  if (quantity === 100) return unit === 'm' ? 'per-100-m' : 'per-100';
  return unit === 'm' ? 'per-metre' : 'each';
}

const vatBy = (headings: readonly string[]): ColumnMap['vat'] =>
  headings.some((heading) => /\b(?:inc|incl|including|with|gross)\b.*\bvat\b|\bvat\b.*\binc/i.test(heading))
    ? 'included'
    : 'excluded';

/** A list in a file: its sheet, the row of its headings, and how it would be read. */
export interface FoundList {
  readonly sheet: Sheet;
  /** Null where the sheet has none: its columns are told by their numbers alone. */
  readonly headings: SheetRow | null;
  /** The rows below the headings. */
  readonly rows: readonly SheetRow[];
  readonly map: ColumnMap;
  /** `own`: this product wrote it. `known`: a person has set its columns before. `guessed`: by the words of its headings. */
  readonly how: 'own' | 'known' | 'guessed';
}

const headersOf = ({ cells }: SheetRow): readonly string[] => cells.map((cell) => cellWords(cell));

const sameHeaders = (row: SheetRow, headers: readonly string[]): boolean => {
  const own = headersOf(row);
  return (
    own.length === headers.length && own.every((heading, at) => plain(heading) === plain(headers[at] ?? ''))
  );
};

function guessedMap(headings: SheetRow | null): ColumnMap {
  const headers = headings === null ? [] : headersOf(headings);
  const columns = columnsOf(headers.map(plain));
  return {
    name: '',
    headers: [...headers],
    columns,
    basis: basisBy(headers[columns.price ?? -1] ?? '', columns.per !== undefined),
    vat: vatBy(headers),
    decimal: '.',
    matches: [],
  };
}

const below = ({ rows }: Sheet, headings: SheetRow | null): readonly SheetRow[] =>
  headings === null ? rows : rows.filter(({ number }) => number > headings.number);

/** How many of the roles headings name, for a row that could be the headings of a list; else nought. */
function score(row: SheetRow): number {
  const columns = columnsOf(headersOf(row).map(plain));
  const figures = row.cells.filter((cell) => typeof cell === 'number' || /^[£\d.,\s]+$/.test(cell)).length;
  return isList(columns) && figures === 0 ? Object.keys(columns).length : 0;
}

/** One sheet of a file as a list, with the columns that its headings tell, or a person has told before. */
export function listIn(sheet: Sheet, known: readonly ColumnMap[]): FoundList {
  const top = sheet.rows.slice(0, LOOKED_AT);
  const own = top.find((row) => sameHeaders(row, ownHeaders));
  if (own !== undefined)
    return { sheet, headings: own, rows: below(sheet, own), map: guessedMap(own), how: 'own' };
  for (const map of known) {
    const headings = top.find((row) => sameHeaders(row, map.headers));
    if (headings !== undefined) return { sheet, headings, rows: below(sheet, headings), map, how: 'known' };
  }
  const best = top.toSorted((a, b) => score(b) - score(a) || a.number - b.number)[0];
  const headings = best !== undefined && score(best) > 0 ? best : null;
  return { sheet, headings, rows: below(sheet, headings), map: guessedMap(headings), how: 'guessed' };
}

const surety: Readonly<Record<FoundList['how'], number>> = { own: 2000, known: 1000, guessed: 0 };

/** The list of a file: of several sheets the one that is known, else the one whose headings say most. */
export function findList(sheets: readonly Sheet[], known: readonly ColumnMap[]): FoundList | null {
  const found = sheets.map((sheet) => listIn(sheet, known));
  const worth = ({ how, map, headings }: FoundList): number =>
    surety[how] + (headings === null ? 0 : Object.keys(map.columns).length);
  return found.toSorted((a, b) => worth(b) - worth(a))[0] ?? null;
}
