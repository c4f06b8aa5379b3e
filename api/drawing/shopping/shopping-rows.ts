import type { CsvCell } from '#engine/price/list/csv-text.ts';
import type { ShoppingEntry, ShoppingGroup } from '#engine/price/shopping/shopping-list.ts';
import type { ShoppingSheet } from './shopping-sheet.ts';
import type { TookInstead } from './took-instead.ts';

const placeWords = { van: 'from the van', counter: 'to buy', unlisted: 'not on the price list' } as const;

const heads = [
  'where',
  'merchant',
  'counter',
  'item',
  'description',
  'ask for',
  'count',
  'of',
  'unit',
  "merchant's number",
  "merchant's words",
  'used',
  'left over',
  'cost, pounds',
  'for',
  'in case',
  'may go back',
  'taken instead',
  'paid instead, pounds',
] as const;

/**
 * The shopping list as rows for a spreadsheet, a row of heads first: one row a size that is asked for. What belongs to a
 * whole entry (used, left over, cost, what for and why) stands in its first row only, so that columns add up. What is still open and
 * not on the list comes last, a question a row, after what nobody counted; neither is in the sums.
 */
export const shoppingRows = ({
  list,
  forWords,
  inCase,
  stillOpen,
  instead,
  uncounted,
}: ShoppingSheet): readonly (readonly CsvCell[])[] => [
  heads,
  ...list.groups.flatMap((group) =>
    group.entries.flatMap((entry) =>
      entryRows(group, entry, [
        forWords.get(entry.key) ?? '',
        inCase.words.get(entry.key) ?? '',
        inCase.back.get(entry.key) ?? '',
        ...insteadCells(instead.byKey.get(entry.key)?.took),
      ]),
    ),
  ),
  ...uncounted.map((line) => wholeRow(['not counted', '', '', '', line])),
  ...stillOpen.lines.map((line) => wholeRow(['still open', '', '', '', line])),
];

/** A row as wide as all others: strict readers refuse a shorter one. */
const wholeRow = (cells: readonly CsvCell[]): readonly CsvCell[] => heads.map((_, i) => cells[i] ?? '');

const insteadCells = (took: TookInstead | undefined): readonly CsvCell[] => [
  took?.took ?? '',
  took?.pence === undefined ? '' : took.pence / 100,
];

function entryRows(
  { place, supplier, counter }: ShoppingGroup,
  entry: ShoppingEntry,
  said: readonly CsvCell[],
): readonly (readonly CsvCell[])[] {
  const { used, leftOver, pence } = entry;
  const whole: readonly CsvCell[] = [used, leftOver, pence === null ? '' : pence / 100, ...said];
  return entry.asks.map(({ words, count, quantity, code }, i): readonly CsvCell[] => [
    placeWords[place],
    supplier,
    counter,
    entry.item,
    entry.description,
    words,
    count,
    quantity,
    entry.unit,
    code,
    entry.supplierWords,
    ...(i === 0 ? whole : whole.map(() => '')),
  ]);
}
