import type { Worksheet } from 'exceljs';
import { pounds, writeCell } from './cell-value.ts';
import { headRows } from './head-rows.ts';
import { priceRows } from './price-rows.ts';
import type { SummaryRow } from './summary-row.ts';
import { addSheet, fitHeight } from './table-sheet.ts';
import { nameCell, sheetNames, type WorkbookContext } from './workbook-context.ts';

function rangeRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  const withContingency = scheme.price.contingencyPercent === 0 ? '' : '; the contingency is in all three';
  const { lowPence, typicalPence, highPence } = scheme.range;
  const vat = scheme.price.vat === 'not-registered' ? 'No VAT charged' : 'VAT included';
  const row = (label: string, pence: number, remark: string): SummaryRow => ({
    label,
    value: pounds(pence),
    remark,
    role: 'number',
    format: 'money',
  });
  return [
    row('At least', lowPence, `${vat}, as estimated: does not follow changes in this workbook`),
    row('As priced', typicalPence, `${vat}, as estimated${withContingency}`),
    row('At most', highPence, `${vat}, as estimated`),
    ...scheme.openQuestions.map(({ words, worthPence }) => row('To narrow it', worthPence, words)),
  ];
}

/** What the price leaves out because the library does not know it. */
function unpricedRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  return [
    ...scheme.price.bill
      .filter(({ priced }) => !priced)
      .map(({ description }) => ({ label: 'Not priced', value: 'Material', remark: description })),
    ...scheme.labour
      .filter(({ typicalMin }) => typicalMin === null)
      .map(({ description }) => ({ label: 'Not priced', value: 'Labour', remark: description })),
  ];
}

const widths = [28, 46, 86];

function writeBlock(
  context: WorkbookContext,
  sheet: Worksheet,
  start: number,
  block: { readonly heading: string; readonly rows: readonly SummaryRow[] },
): number {
  if (block.rows.length === 0) return start;
  writeCell(sheet.getCell(start, 1), block.heading, 'heading');
  block.rows.forEach(({ label, value, remark, name, role = 'text', format }, index) => {
    const row = start + 1 + index;
    const edge = role === 'price' || role === 'total' ? role : 'text';
    writeCell(sheet.getCell(row, 1), label, edge);
    writeCell(sheet.getCell(row, 2), value, role, format);
    writeCell(sheet.getCell(row, 3), remark ?? null, edge);
    fitHeight(
      sheet,
      row,
      [label, value, remark ?? null].map((text, column) => ({ text, widthChars: widths[column] ?? 0 })),
    );
    if (name !== undefined) nameCell(context.book, name, sheetNames.summary, `B${row}`);
  });
  return start + block.rows.length + 2;
}

/** The first sheet: the job, the price with every rate, its range, what it leaves out, and the cautions. */
export function addSummarySheet(context: WorkbookContext): void {
  const sheet = addSheet(context, sheetNames.summary, '1:1');
  sheet.views = [{ state: 'frozen', xSplit: 0, ySplit: 1, showGridLines: false }];
  widths.forEach((width, index) => {
    sheet.getColumn(index + 1).width = width;
  });
  writeCell(sheet.getCell(1, 1), `${context.estimate.title}, ${context.scheme.name}`, 'title');
  const cautions = context.estimate.cautions.map((remark, index) => ({
    label: `Caution ${index + 1}`,
    value: null,
    remark,
  }));
  const blocks = [
    { heading: 'The job', rows: headRows(context) },
    { heading: 'The price', rows: priceRows(context) },
    { heading: 'How far it may move', rows: rangeRows(context) },
    { heading: 'Left out of the price', rows: unpricedRows(context) },
    { heading: 'Cautions', rows: cautions },
  ];
  let row = 3;
  for (const block of blocks) row = writeBlock(context, sheet, row, block);
}
