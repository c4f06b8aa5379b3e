import type { Worksheet } from 'exceljs';
import { agreedTerms } from '#engine/price/agreed-terms.ts';
import { PARKING_SUM } from '#engine/price/parking.ts';
import type { OtherLine, PriceBuildUp } from '#engine/price/totals.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { countsVisits, daysFormula, OWN_ROWS } from './build-up-rows.ts';
import { type CellContent, pounds, writeCell } from './cell-value.ts';
import { type MinuteRows, minutesFormula, writeStageMinutes } from './comparison-minutes.ts';
import type { FormatName } from './sheet-style.ts';
import { fitHeight, writeHeading } from './table-sheet.ts';
import type { WorkbookContext } from './workbook-context.ts';

/** The columns of what the other schemes are priced from, each at the width of the comparison above it. */
const columns: readonly {
  readonly header: string;
  readonly role: 'text' | 'number';
  readonly format?: FormatName;
  readonly widthChars: number;
}[] = [
  { header: 'Scheme', role: 'text', widthChars: 30 },
  { header: 'Sums beside the work', role: 'text', widthChars: 30 },
  { header: 'Minutes', role: 'number', format: 'minutes', widthChars: 9 },
  { header: 'Materials at cost', role: 'number', format: 'money', widthChars: 11 },
  { header: 'Low, minutes', role: 'number', format: 'minutes', widthChars: 11 },
  { header: 'Typical, minutes', role: 'number', format: 'minutes', widthChars: 11 },
  { header: 'High, minutes', role: 'number', format: 'minutes', widthChars: 11 },
  { header: 'Those sums', role: 'number', format: 'money', widthChars: 11 },
  { header: 'Visits', role: 'number', widthChars: 11 },
  { header: 'Travel, minutes', role: 'number', format: 'minutes', widthChars: 11 },
  { header: 'Travel', role: 'number', format: 'money', widthChars: 11 },
  { header: 'Overhead', role: 'number', format: 'money', widthChars: 11 },
  { header: 'Mark-up or margin on all', role: 'number', format: 'money', widthChars: 14 },
  { header: 'Contingency rate', role: 'number', format: 'percent', widthChars: 10 },
];

/** The rows of a scheme: in the comparison, and in what it is priced from. */
interface SchemeRows {
  readonly shown: number;
  readonly basis: number;
}

/** The formulas of a scheme's hours and money in the comparison. */
export interface MoneyFormulas {
  readonly hours: string;
  readonly materials: string;
  readonly labour: string;
  readonly other: string;
  readonly contingency: string;
  readonly vat: string;
}

/** The workbook's own scheme: what the summary comes to. */
export const ownMoney: MoneyFormulas = {
  hours: 'LabourHours',
  materials: 'TotalMaterials',
  labour: 'TotalLabour',
  other: 'OtherSums+MinimumTopUp',
  contingency: 'TotalContingency',
  vat: 'TotalVat',
};

/** Any other scheme: what it takes, by the rates that the summary has now; rounded where the summary rounds. */
export function moneyOf({ shown, basis }: SchemeRows): MoneyFormulas {
  const others = `(H${basis}+CallOut+K${basis}+L${basis}+M${basis})`;
  const work = `(D${shown}+E${shown}+${others})`;
  return {
    hours: `ROUND(C${basis}/60,2)`,
    materials: `IF(ProfitOnAll=1,D${basis},ROUND(D${basis}*(1+MarkupPercent),2))`,
    labour: `ROUND(C${basis}/60*LabourRate,2)`,
    other: `ROUND(${others}+MAX(0,MinimumCharge-(${work}+G${shown})),2)`,
    contingency: `ROUND(${work}*N${basis},2)`,
    vat: `ROUND(H${shown}*VatPercent,2)`,
  };
}

const penceOf = ({ other }: PriceBuildUp, sum: string): number =>
  other.find((line) => line.sum === sum)?.pence ?? 0;

const sumsOf = ({ price }: SchemeEstimate): readonly OtherLine[] =>
  price.other.filter(({ sum }) => !OWN_ROWS.includes(sum));

/** The sums of a scheme: those that the summary has too follow it, the others are figures. */
function sumsCell(context: WorkbookContext, scheme: SchemeEstimate, row: number): CellContent {
  const onSummary = sumsOf(context.scheme).map(({ sum }) => sum);
  const { parking } = scheme.price;
  const terms = [
    ...sumsOf(scheme).map(({ sum, pence }) =>
      onSummary.includes(sum) ? `OtherSum${onSummary.indexOf(sum) + 1}` : String(pounds(pence)),
    ),
    ...(parking === null ? [] : [parking.byVisits ? `I${row}*ParkingPerDay` : 'ParkingCharge']),
  ];
  const pence = sumsOf(scheme).reduce((all, line) => all + line.pence, penceOf(scheme.price, PARKING_SUM));
  return terms.length === 0 ? 0 : { formula: `ROUND(${terms.join('+')},2)`, result: pounds(pence) };
}

/** Follows the summary where the survey leaves as much open in both schemes; else its own, which may be changed. */
function contingencyCell(context: WorkbookContext, { price }: SchemeEstimate): CellContent {
  const result = price.contingencyPercent / 100;
  return price.contingencyPercent === context.scheme.price.contingencyPercent
    ? { formula: 'ContingencyPercent', result }
    : result;
}

/** How often a scheme is travelled to, as the summary counts it for its own: the days its minutes fill, and what plaster is come back for. */
function visitsCell(context: WorkbookContext, { price, labour }: SchemeEstimate, row: number): CellContent {
  // Where nothing hangs on visits the summary has no day to count by.
  if (!countsVisits(context.scheme.price)) return price.visits.count;
  const returning = labour.filter(({ task }) => task === 'return-visit');
  const [low, typical, high] = (['lowMin', 'typicalMin', 'highMin'] as const).map((level) =>
    returning.reduce((sum, task) => sum + (task[level] ?? 0), 0),
  );
  const returnMin = `CHOOSE(LabourLevelNumber,${low},${typical},${high})`;
  return {
    formula: `${daysFormula(`C${row}-${returnMin}`)}+${price.visits.returns}`,
    result: price.visits.count,
  };
}

/** Travelling in minutes and in money, as long a way each visit as on the summary; neither where the job has none. */
function travelCells(
  context: WorkbookContext,
  { price }: SchemeEstimate,
  row: number,
): readonly CellContent[] {
  const own = context.scheme.price;
  if (penceOf(own, 'travel') === 0) return [0, 0];
  const { travelMin } = agreedTerms(context.scheme.worked.job.terms, context.library.terms);
  return [
    { formula: `VisitTravelMinutes*I${row}`, result: travelMin * price.visits.count },
    { formula: `ROUND(J${row}/60*LabourRate,2)`, result: pounds(penceOf(price, 'travel')) },
  ];
}

/** Overhead, and mark-up or margin where it is on all of the work, as the summary puts them on. */
function onTopCells({ price }: SchemeEstimate, { shown, basis }: SchemeRows): readonly CellContent[] {
  const cost = `D${basis}+E${shown}+K${basis}`;
  const days = `(C${basis}+J${basis})/60/OverheadHours*OverheadPerDay`;
  const onCost = `ROUND((${cost})*OverheadPercent,2)+ROUND(${days},2)`;
  const all = `(${cost}+L${basis})`;
  return [
    {
      formula: `IF(RateBasis="cost",${onCost},ROUND(D${basis}*OverheadPercent,2))`,
      result: pounds(price.overheadPence),
    },
    {
      formula: `IF(ProfitOnAll=1,ROUND(ROUND(${all}*(1+MarkupPercent),2)-${all},2),0)`,
      result: pounds(penceOf(price, 'profit')),
    },
  ];
}

function minuteCells(
  { price, labour }: SchemeEstimate,
  minutes: MinuteRows | undefined,
  row: number,
): { readonly chosen: CellContent; readonly levels: readonly CellContent[] } {
  const sum = (key: 'lowMin' | 'typicalMin' | 'highMin'): number =>
    Math.round(labour.reduce((all, task) => all + (task[key] ?? 0), 0) * 100) / 100;
  return {
    chosen: { formula: `CHOOSE(LabourLevelNumber,E${row},F${row},G${row})`, result: price.labourMin },
    levels: [
      { formula: minutesFormula(minutes, 'E'), result: sum('lowMin') },
      { formula: minutesFormula(minutes, 'F'), result: sum('typicalMin') },
      { formula: minutesFormula(minutes, 'G'), result: sum('highMin') },
    ],
  };
}

function basisCells(
  context: WorkbookContext,
  scheme: SchemeEstimate,
  rows: SchemeRows & { readonly minutes: MinuteRows | undefined },
): readonly CellContent[] {
  const minutes = minuteCells(scheme, rows.minutes, rows.basis);
  return [
    scheme.name,
    scheme.price.other
      .filter(({ sum }) => sum === PARKING_SUM || !OWN_ROWS.includes(sum))
      .map(({ description }) => description)
      .join('; '),
    minutes.chosen,
    pounds(scheme.price.materialsCostPence),
    ...minutes.levels,
    sumsCell(context, scheme, rows.basis),
    visitsCell(context, scheme, rows.basis),
    ...travelCells(context, scheme, rows.basis),
    ...onTopCells(scheme, rows),
    contingencyCell(context, scheme),
  ];
}

/**
 * Writes under the comparison what every scheme but the workbook's own is priced from: materials at cost and minutes as
 * figures that may be changed, all else by the rates of the summary. Nothing where there is no other scheme.
 *
 * @param start the row of the table's heading.
 * @param firstShown the row of the first scheme in the comparison.
 * @returns the row of each scheme's basis, by scheme.
 */
export function writeBasis(
  context: WorkbookContext,
  sheet: Worksheet,
  { start, firstShown }: { readonly start: number; readonly firstShown: number },
): ReadonlyMap<string, number> {
  const { schemes } = context.estimate;
  const others = schemes.filter(({ id }) => id !== context.scheme.id);
  const found = new Map(others.map(({ id }, index) => [id, start + 2 + index] as const));
  if (others.length === 0) return found;
  writeHeading(
    sheet,
    start,
    'What the other schemes are priced from',
    columns.map(({ header, role }) => (role === 'number' ? { overNumbers: header } : header)),
  );
  const minutes = writeStageMinutes(context, sheet, start + others.length + 3);
  schemes.forEach((scheme, index) => {
    const basis = found.get(scheme.id);
    if (basis === undefined) return;
    const rows = { shown: firstShown + index, basis, minutes: minutes.get(scheme.id) };
    const cells = basisCells(context, scheme, rows);
    columns.forEach(({ role, format }, column) => {
      const content = cells[column] ?? null;
      writeCell(
        sheet.getCell(basis, column + 1),
        content,
        typeof content === 'number' ? 'input' : role,
        format,
      );
    });
    fitHeight(
      sheet,
      basis,
      columns.map(({ widthChars }, column) => ({ text: cells[column] ?? null, widthChars })),
    );
  });
  return found;
}
