import { boughtOf } from '#engine/price/bought.ts';
import type { BillLine } from '#engine/price/totals.ts';
import { billNote } from '../line-notes.ts';
import { billedCable } from './cable-layout.ts';
import { type CellContent, pounds, writeCell } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, writeRow } from './table-sheet.ts';
import { nameCell, sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Item', width: 22, role: 'text' },
  { header: 'Description', width: 42, role: 'text' },
  { header: 'Group', width: 13, role: 'text' },
  { header: 'Unit', width: 6, role: 'text' },
  { header: 'Quantity', width: 9, role: 'input', format: 'quantity' },
  { header: 'In the van', width: 8, role: 'input', format: 'quantity' },
  { header: 'From the van', width: 8, role: 'number', format: 'quantity' },
  { header: 'Pack of', width: 8, role: 'input', format: 'quantity' },
  { header: 'Charge', width: 8, role: 'input' },
  { header: 'Charged', width: 9, role: 'number', format: 'quantity' },
  { header: 'Price', width: 10, role: 'input', format: 'money' },
  { header: 'buys', width: 7, role: 'input', format: 'quantity' },
  { header: 'Cost', width: 11, role: 'number', format: 'money' },
  { header: 'Caused by', width: 40, role: 'text' },
  { header: 'Note', width: 20, role: 'text' },
  { header: 'Packs to buy', width: 8, role: 'number', format: 'quantity' },
  { header: 'Left over', width: 8, role: 'number', format: 'quantity' },
  { header: 'Quantity may come to', width: 9, role: 'number', format: 'quantity' },
];

/** What the van holds of a line's item when its turn comes: earlier lines of the same item took theirs. */
function vanBefore(context: WorkbookContext, bill: readonly BillLine[], index: number): number {
  const { stock } = context.scheme.worked.job;
  const line = bill[index];
  const inVan = stock.reduce((sum, { item, quantity }) => (item === line?.item ? sum + quantity : sum), 0);
  const taken = bill
    .slice(0, index)
    .reduce((sum, { item, fromStock }) => (item === line?.item ? sum + fromStock : sum), 0);
  return Math.round((inVan - taken) * 1e6) / 1e6;
}

/** Whole packs or what was used, wherever it comes from; a remainder under a millionth opens no pack. */
function chargedFormula(row: number): string {
  const packs = `ROUNDUP(ROUND(E${row}/H${row},6),0)`;
  return `IF(OR(I${row}="used",H${row}=""),ROUND(E${row},6),ROUND(${packs}*H${row},6))`;
}

function contentsOf(context: WorkbookContext, index: number, row: number): readonly CellContent[] {
  const { bill } = context.scheme.price;
  const line = bill[index];
  if (line === undefined) return [];
  return [
    line.item,
    line.description,
    line.group,
    line.unit,
    quantityCell(context, index),
    vanBefore(context, bill, index),
    { formula: `MIN(E${row},F${row})`, result: line.fromStock },
    line.packQuantity,
    line.charge,
    { formula: chargedFormula(row), result: line.chargedQuantity },
    line.priced ? pounds(line.pricePence) : null,
    line.perQuantity,
    { formula: `ROUND(J${row}*K${row}/L${row}*CostVatFactor,2)`, result: pounds(line.costPence) },
    line.causes.map(context.labelOf).join(', '),
    billNote(line, context),
    ...packCells(line, row),
    context.scheme.takeoff[index]?.highQuantity ?? line.quantity,
  ];
}

/** What is wanted of a line: of cable that runs are laid in by the cable schedule, of all else as counted. */
function quantityCell({ scheme, ...context }: WorkbookContext, index: number): CellContent {
  const result = scheme.price.bill[index]?.quantity ?? 0;
  const counted = scheme.takeoff[index];
  const formula = counted === undefined ? null : billedCable(counted, { scheme, ...context });
  return formula === null ? result : { formula, result };
}

/** How many packs are bought, and what the job does not use of them; what is sold in any quantity leaves nothing. */
function packCells(line: BillLine, row: number): readonly CellContent[] {
  const { packs, leftOver } = boughtOf(line);
  const wanted = `E${row}-G${row}`;
  return [
    {
      formula: `IF(H${row}="","",ROUNDUP(ROUND((${wanted})/H${row},6),0))`,
      result: packs ?? '',
    },
    {
      formula: `IF(H${row}="","",ROUND(P${row}*H${row}-(${wanted}),6))`,
      result: packs === null ? '' : leftOver,
    },
  ];
}

/** The bill of materials: what is wanted, what the van holds, what is bought, and what it costs. */
export function addBillSheet(context: WorkbookContext): void {
  const { price } = context.scheme;
  const note =
    'Shaded cells may be changed; the rest follows, cable from the cable schedule. What a quantity may come to is as estimated, while things are assumed or not looked at. Bought in whole packs where sold so: “packs” charges them whole, ' +
    '“used” what the job uses of them. Cost is before mark-up and VAT ' +
    `(prices: ${context.library.prices.source}, ${context.library.prices.date}).`;
  const sheet = addTableSheet(context, sheetNames.bill, note, columns);
  price.bill.forEach((_line, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, index, FIRST_ROW + index));
    // What follows the schedule is changed there.
    const quantity = quantityCell(context, index);
    if (typeof quantity === 'object')
      writeCell(sheet.getCell(FIRST_ROW + index, 5), quantity, 'number', 'quantity');
  });
  const last = FIRST_ROW + price.bill.length - 1;
  const totalRow = last + 2;
  columns.forEach((_column, index) => {
    writeCell(sheet.getCell(totalRow, index + 1), null, 'total');
  });
  writeCell(sheet.getCell(totalRow, 2), 'Materials at cost', 'total');
  const total = price.bill.length === 0 ? '0' : `ROUND(SUM(M${FIRST_ROW}:M${last}),2)`;
  const result = pounds(price.materialsCostPence);
  writeCell(sheet.getCell(totalRow, 13), { formula: total, result }, 'total', 'money');
  nameCell(context.book, 'MaterialsCost', sheetNames.bill, `M${totalRow}`);
}
