import type { Worksheet } from 'exceljs';
import { lengthWords } from '#engine/price/buying/offer-words.ts';
import type { CutPiece } from '#engine/price/buying/pieces-of.ts';
import type { CutFrom, PurchaseLine } from '#engine/price/buying/purchase.ts';
import { scheduledCut } from './cable-layout.ts';
import { type CellContent, writeCell } from './cell-value.ts';
import { type CutRows, cutLayout, cutSum } from './cut-layout.ts';
import { addTableSheet, type Column, FIRST_ROW, writeHeading, writeRow } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Description', width: 40, role: 'text' },
  { header: 'Cut from', width: 26, role: 'text' },
  { header: 'Its length', width: 10, role: 'number', format: 'metres' },
  { header: 'Cut', width: 6, role: 'number' },
  { header: 'For', width: 44, role: 'text' },
  { header: 'Length of the cut', width: 11, role: 'input', format: 'metres' },
  { header: 'Used of it', width: 10, role: 'number', format: 'metres' },
  { header: 'Left over', width: 10, role: 'number', format: 'metres' },
  { header: 'Item', width: 24, role: 'text' },
];

const metres = (lengthMm: number): number => lengthMm / 1000;
const sumMm = (lengths: readonly { readonly lengthMm: number }[]): number =>
  lengths.reduce((sum, { lengthMm }) => sum + lengthMm, 0);

/** One unbroken length as it is handed over, with its number: "25 m coil, no. 2", "From the van, no. 1". */
function fromWords({ from, lengthMm }: CutFrom, line: PurchaseLine): string {
  const [key = '', number = ''] = from.split('/');
  if (key === 'van') return `From the van, no. ${number}`;
  const offer = line.packs.find((pack) => pack.offer.key === key)?.offer;
  if (offer === undefined) throw new Error(`Cut from "${from}", which the plan does not buy.`);
  if (offer.kind === 'cut') return `${metres(lengthMm)} m cut to measure`;
  return `${lengthWords(offer)}, no. ${number}`;
}

/** How long a piece is cut: a run's cable as the schedule has it. */
function lengthCell(piece: CutPiece, line: PurchaseLine, context: WorkbookContext): CellContent {
  const formula = scheduledCut(piece, line, context);
  const result = metres(piece.lengthMm);
  return formula === null ? result : { formula, result };
}

/** The cuts of one length, a row each; the first carries what the length is, what is used and what is left of it. */
function rowsOf(
  line: PurchaseLine,
  from: CutFrom,
  first: number,
  context: WorkbookContext,
): readonly (readonly CellContent[])[] {
  const last = first + from.cuts.length - 1;
  const sums: readonly CellContent[] = [
    { formula: cutSum('F', first, last, null), result: metres(from.lengthMm - from.leftMm) },
    { formula: `ROUND(C${first}-G${first},3)`, result: metres(from.leftMm) },
  ];
  return from.cuts.map(({ cause, lengthMm }, index) => [
    line.description,
    fromWords(from, line),
    index === 0 ? metres(from.lengthMm) : null,
    index + 1,
    context.labelOf(cause),
    lengthCell({ cause, lengthMm }, line, context),
    ...(index === 0 ? sums : [null, null]),
    line.item,
  ]);
}

/** What no length that is sold or in the van is long enough for. */
const unservedRows = (line: PurchaseLine, context: WorkbookContext): readonly (readonly CellContent[])[] =>
  line.unserved.map(({ cause, lengthMm }) => [
    line.description,
    'Nothing on the price list is as long',
    null,
    null,
    context.labelOf(cause),
    lengthCell({ cause, lengthMm }, line, context),
    null,
    null,
    line.item,
  ]);

/** By item, under the cuts: what its lengths come to, what is cut from them, what is left. */
function writeSums(sheet: Worksheet, layout: ReadonlyMap<PurchaseLine, CutRows>, start: number): void {
  if (layout.size === 0) return;
  writeHeading(sheet, start, 'By item', [
    'Description',
    '',
    { overNumbers: 'Lengths' },
    '',
    '',
    { overNumbers: 'Cuts' },
    '',
    { overNumbers: 'Left over' },
  ]);
  [...layout].forEach(([line, { first, last }], index) => {
    const row = start + 2 + index;
    const cells: readonly (readonly [number, string, number])[] = [
      [3, 'C', sumMm(line.cuts)],
      [6, 'F', sumMm(line.cuts.flatMap(({ cuts }) => cuts)) + sumMm(line.unserved)],
      [8, 'H', line.cuts.reduce((sum, { leftMm }) => sum + leftMm, 0)],
    ];
    writeCell(sheet.getCell(row, 1), line.description, 'text');
    for (const [at, column, mm] of cells)
      writeCell(
        sheet.getCell(row, at),
        { formula: cutSum(column, first, last, null), result: metres(mm) },
        'number',
        'metres',
      );
  });
}

/**
 * The cut sheet: every coil, drum and length with what is cut from it, the longest cut first; then by item. Waste is in
 * the cuts of cable already; those of runs follow the cable schedule. A cut may be changed: what is used and left over follows, here and on the shopping sheet.
 */
export function addCutSheet(context: WorkbookContext): void {
  const note =
    'Every piece of cable is cut in one, waste in it; a run’s follows the cable schedule. Shaded cells may be changed; what is used and left over follows: below nought, the length is too short.';
  const sheet = addTableSheet(context, sheetNames.cuts, note, columns);
  const layout = cutLayout(context.shopping.purchase.lines);
  let row = FIRST_ROW;
  for (const line of layout.keys()) {
    const cuts: (readonly CellContent[])[] = [];
    for (const from of line.cuts) cuts.push(...rowsOf(line, from, row + cuts.length, context));
    cuts.push(...unservedRows(line, context));
    for (const cells of cuts) writeRow(sheet, row++, columns, cells);
  }
  writeSums(sheet, layout, row + 1);
}
