import { connectionsTold } from '#drawing/connection-words.ts';
import { labelsOf } from '#drawing/label-of.ts';
import { verdictOf } from '#drawing/verdict.ts';
import { openedUp } from '#engine/labour/opened-up.ts';
import type { Totals } from '#engine/price/totals.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { schemeCable } from '#engine/schemes/scheme-cable.ts';
import { type CellContent, pounds } from './cell-value.ts';
import { type MoneyFormulas, moneyOf, ownMoney, writeBasis } from './comparison-basis.ts';
import { addTableSheet, type Column, FIRST_ROW, writeRow } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Scheme', width: 30, role: 'text' },
  { header: 'Checks', width: 30, role: 'text' },
  { header: 'Hours', width: 9, role: 'number', format: 'hours' },
  { header: 'Materials', width: 11, role: 'number', format: 'money' },
  { header: 'Labour', width: 11, role: 'number', format: 'money' },
  { header: 'Other', width: 11, role: 'number', format: 'money' },
  { header: 'Contingency', width: 11, role: 'number', format: 'money' },
  { header: 'Net', width: 11, role: 'number', format: 'money' },
  { header: 'VAT', width: 11, role: 'number', format: 'money' },
  { header: 'Total', width: 11, role: 'number', format: 'money' },
  { header: 'at least', width: 11, role: 'number', format: 'money' },
  { header: 'at most', width: 11, role: 'number', format: 'money' },
  { header: 'Against the cheapest that does not fail', width: 14, role: 'number', format: 'money' },
  { header: 'New cable', width: 10, role: 'number', format: 'metres' },
  { header: 'Joints', width: 8, role: 'number' },
  { header: 'Holes', width: 8, role: 'number' },
  { header: 'Boards up', width: 8, role: 'number' },
  { header: 'Disturbance, points', width: 12, role: 'number' },
  { header: 'How points are joined', width: 40, role: 'text' },
  { header: 'Fails', width: 40, role: 'text' },
];

/** Titles of the rules that a scheme fails, each once. */
function failures(scheme: SchemeEstimate): string {
  const titles = scheme.findings
    .filter(({ outcome, origin }) => outcome === 'fails' && origin === 'scheme')
    .map(({ rule, title }) => `${rule} ${title}`);
  return [...new Set(titles)].sort().join('; ');
}

/** Materials, labour, other sums and contingency. */
function moneyCells(totals: Totals, money: MoneyFormulas): readonly CellContent[] {
  const parts = [
    [money.materials, totals.materialsPence],
    [money.labour, totals.labourPence],
    [money.other, totals.otherPence],
    [money.contingency, totals.contingencyPence],
  ] as const;
  return parts.map(([formula, pence]) => ({ formula, result: pounds(pence) }));
}

/** Against the least total of those that do not fail, whichever that is by now; empty where all fail. */
function differenceCell({ schemes, cheapestId }: Estimate, scheme: SchemeEstimate, row: number): CellContent {
  const cheapest = schemes.find(({ id }) => id === cheapestId);
  if (cheapest === undefined) return null;
  const totals = schemes.flatMap(({ complies }, index) =>
    complies === 'no' ? [] : [`J$${FIRST_ROW + index}`],
  );
  return {
    formula: `ROUND(J${row}-MIN(${totals.join(',')}),2)`,
    result: pounds(scheme.totals.grossPence - cheapest.totals.grossPence),
  };
}

function contentsOf(
  context: WorkbookContext,
  scheme: SchemeEstimate,
  { row, money }: { readonly row: number; readonly money: MoneyFormulas },
): readonly CellContent[] {
  const { totals, range } = scheme;
  const { cableMm } = schemeCable(scheme.runs);
  const { holes, boards } = openedUp(scheme.labour);
  return [
    scheme.name,
    verdictOf(scheme).words,
    { formula: money.hours, result: totals.hours },
    ...moneyCells(totals, money),
    { formula: `ROUND(SUM(D${row}:G${row}),2)`, result: pounds(totals.netPence) },
    { formula: money.vat, result: pounds(totals.vatPence) },
    { formula: `ROUND(H${row}+I${row},2)`, result: pounds(totals.grossPence) },
    pounds(range.lowPence),
    pounds(range.highPence),
    differenceCell(context.estimate, scheme, row),
    cableMm / 1000,
    scheme.joints.filter(({ state }) => state === 'new').length,
    holes,
    boards,
    Math.round(scheme.messPoints * 10) / 10,
    connectionsTold(scheme.worked.scheme?.connections ?? [], labelsOf(scheme.worked))
      .map(({ words }) => words)
      .join('; '),
    failures(scheme),
  ];
}

/** All schemes of the job side by side, in the job's order, and below them what the others are priced from. */
export function addComparisonSheet(context: WorkbookContext): void {
  const { schemes } = context.estimate;
  const isTypical = schemes.some(({ runs }) => schemeCable(runs).typicalRuns > 0);
  const note = `This workbook's scheme, ${context.scheme.name}, follows its sheets; the others what they take, below, at the same rates. At least and at most stand as estimated.${
    isTypical ? ' Cable to an end without a place is counted with a typical length.' : ''
  }`;
  const sheet = addTableSheet(context, sheetNames.comparison, note, columns);
  const start = FIRST_ROW + schemes.length + 1;
  const basis = writeBasis(context, sheet, { start, firstShown: FIRST_ROW });
  schemes.forEach((scheme, index) => {
    const row = FIRST_ROW + index;
    const basisRow = basis.get(scheme.id);
    const money = basisRow === undefined ? ownMoney : moneyOf({ shown: row, basis: basisRow });
    writeRow(sheet, row, columns, contentsOf(context, scheme, { row, money }));
  });
}
