import type { AgreedTerms } from '#engine/price/agreed-terms.ts';
import { PARKING_SUM } from '#engine/price/parking.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import { USUAL_DAY_HOURS } from '#engine/price/visits.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { pounds } from './cell-value.ts';
import { moneyRow, percentRow } from './money-rows.ts';
import type { SummaryRow } from './summary-row.ts';
import type { WorkbookContext } from './workbook-context.ts';

/** What the hourly rate is, and what mark-up or margin are put on by it. */
export function basisRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  const { rateBasis, profitOn } = scheme.price;
  return [
    {
      label: 'The hourly rate is',
      value: rateBasis,
      name: 'RateBasis',
      remark: 'charged: overhead and profit are in it; cost: they come on top',
      role: 'input',
    },
    {
      label: 'Mark-up or margin on',
      value: profitOn,
      name: 'ProfitOn',
      remark: 'materials or all; on materials alone while the hourly rate is what is charged',
      role: 'input',
    },
    {
      label: 'On all of the work',
      value: { formula: 'IF(AND(RateBasis="cost",ProfitOn="all"),1,0)', result: profitOn === 'all' ? 1 : 0 },
      name: 'ProfitOnAll',
      remark: '1: yes, as a line of its own below; 0: on materials',
      role: 'number',
    },
  ];
}

/** Lines of the price that have rows of their own here; the others are `OtherSum1`, `OtherSum2` and so on. */
export const OWN_ROWS: readonly string[] = [
  'call-out',
  'travel',
  PARKING_SUM,
  'overhead',
  'profit',
  'minimum-charge',
];

/** Whether the summary counts visits: where anything hangs on them. */
export const countsVisits = ({ other, parking }: PriceBuildUp): boolean =>
  other.some(({ sum }) => sum === 'travel') || parking?.byVisits === true;

/** The days that minutes of work fill: hours to the hundredth, days begun counted whole, as the engine counts them. */
export const daysFormula = (minutes: string): string =>
  `MAX(1,ROUNDUP(ROUND(ROUND((${minutes})/60,2)/DayHours,6),0))`;

/** How often the job is travelled to: by the hours, which follow the labour sheet, and the plaster that is come back for. */
function visitRows({ scheme }: WorkbookContext, { dayHours }: AgreedTerms): readonly SummaryRow[] {
  const { visits } = scheme.price;
  return [
    {
      label: 'Work in a day, hours',
      // Where the terms say nothing it is the day that the overhead is spread over.
      value: dayHours ?? { formula: 'OverheadHours', result: visits.dayHours },
      name: 'DayHours',
      role: 'input',
      format: 'hours',
    },
    {
      label: 'Days of work',
      value: { formula: daysFormula('LabourMinutes-ReturnMinutes'), result: visits.days },
      remark: 'Without what plaster is come back for',
      name: 'WorkDays',
      role: 'number',
      format: 'quantity',
    },
    {
      label: 'Visits',
      value: { formula: 'WorkDays+ReturnVisits', result: visits.count },
      remark: 'The days, and each time that plaster is come back for',
      name: 'Visits',
      role: 'number',
      format: 'quantity',
    },
  ];
}

/** Travelling time and its charge, for each visit; neither where the job has none. */
function travelRows(context: WorkbookContext, agreed: AgreedTerms): readonly SummaryRow[] {
  const { other, visits } = context.scheme.price;
  const line = other.find(({ sum }) => sum === 'travel');
  if (line === undefined) return [];
  return [
    {
      label: 'Travel of a visit, minutes',
      value: agreed.travelMin,
      remark: 'There and back',
      name: 'VisitTravelMinutes',
      role: 'input',
      format: 'minutes',
    },
    {
      label: 'Travelling time, minutes',
      value: { formula: 'Visits*VisitTravelMinutes', result: agreed.travelMin * visits.count },
      name: 'TravelMinutes',
      role: 'number',
      format: 'minutes',
    },
    {
      label: 'Travel',
      value: { formula: 'ROUND(TravelMinutes/60*LabourRate,2)', result: pounds(line.pence) },
      remark: 'By the same rate',
      name: 'TravelCharge',
      role: 'number',
      format: 'money',
    },
  ];
}

/** Days of parking at the firm's sum for one; neither where the job has none. */
function parkingRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  const { parking, other } = scheme.price;
  if (parking === null) return [];
  const pence = other.find(({ sum }) => sum === PARKING_SUM)?.pence ?? 0;
  return [
    {
      label: 'Days of parking',
      value: parking.byVisits ? { formula: 'Visits', result: parking.days } : parking.days,
      remark: parking.byVisits ? 'Every visit' : 'As the terms say',
      name: 'ParkingDays',
      role: parking.byVisits ? 'number' : 'input',
      format: 'quantity',
    },
    {
      label: 'Parking, a day',
      value: pounds(parking.pencePerDay ?? 0),
      ...(parking.pencePerDay === null ? { remark: 'Not priced: the library has no such sum' } : {}),
      name: 'ParkingPerDay',
      role: 'input',
      format: 'money',
    },
    moneyRow('Parking', 'ParkingCharge', 'ROUND(ParkingDays*ParkingPerDay,2)', pence),
  ];
}

const costOf = (hasTravel: boolean): string =>
  hasTravel ? 'MaterialsCost+TotalLabour+TravelCharge' : 'MaterialsCost+TotalLabour';

/** The overhead: a percentage of cost and a sum a day, one of them nought. */
function overheadRows({ scheme }: WorkbookContext, hasTravel: boolean): readonly SummaryRow[] {
  const { overhead, overheadPence } = scheme.price;
  const byDay = overhead !== null && 'pencePerDay' in overhead ? overhead : null;
  const percent = overhead !== null && 'percent' in overhead ? overhead.percent : 0;
  const minutes = hasTravel ? '(LabourMinutes+TravelMinutes)' : 'LabourMinutes';
  const onCost = `ROUND((${costOf(hasTravel)})*OverheadPercent,2)+ROUND(${minutes}/60/OverheadHours*OverheadPerDay,2)`;
  return [
    percentRow('Overhead rate', 'OverheadPercent', percent, 'On materials, labour and travel at cost'),
    {
      label: 'Overhead a day',
      value: pounds(byDay?.pencePerDay ?? 0),
      name: 'OverheadPerDay',
      remark: 'Only while the hourly rate is at cost',
      role: 'input',
      format: 'money',
    },
    {
      label: 'Hours charged in a day',
      value: byDay?.hoursPerDay ?? USUAL_DAY_HOURS,
      name: 'OverheadHours',
      role: 'input',
      format: 'hours',
    },
    {
      ...moneyRow(
        'Overhead',
        'TotalOverhead',
        `IF(RateBasis="cost",${onCost},ROUND(MaterialsCost*OverheadPercent,2))`,
        overheadPence,
      ),
      remark: 'While the hourly rate is what is charged: on materials alone, since the rate bears it already',
    },
  ];
}

/** Mark-up or margin on all of the work, where it is on all. */
function profitOnAllRow({ scheme }: WorkbookContext, hasTravel: boolean): SummaryRow {
  const base = `(${costOf(hasTravel)}+TotalOverhead)`;
  const { profitOn, profitPence } = scheme.price;
  return {
    ...moneyRow(
      'Mark-up or margin on all',
      'TotalProfit',
      `IF(ProfitOnAll=1,ROUND(ROUND(${base}*(1+MarkupPercent),2)-${base},2),0)`,
      profitOn === 'all' ? profitPence : 0,
    ),
    remark: 'On materials, labour, travel and overhead',
  };
}

/** Sums beside materials and labour; each has a name, so that the total can say what it adds. */
export function otherRows(context: WorkbookContext, agreed: AgreedTerms): readonly SummaryRow[] {
  const { other } = context.scheme.price;
  const sums = other
    .filter(({ sum }) => !OWN_ROWS.includes(sum))
    .map(
      ({ description, pence }, index): SummaryRow => ({
        label: description,
        name: `OtherSum${index + 1}`,
        value: pounds(pence),
        role: 'input',
        format: 'money',
      }),
    );
  const callOut: SummaryRow = {
    label: 'Call-out',
    name: 'CallOut',
    value: pounds(agreed.callOutPence),
    role: 'input',
    format: 'money',
  };
  const visits = countsVisits(context.scheme.price) ? visitRows(context, agreed) : [];
  const travel = travelRows(context, agreed);
  const hasTravel = travel.length > 0;
  const parking = parkingRows(context);
  const added = [
    ...sums.flatMap(({ name }) => name ?? []),
    'CallOut',
    ...(hasTravel ? ['TravelCharge'] : []),
    ...(parking.length > 0 ? ['ParkingCharge'] : []),
    'TotalOverhead',
    'TotalProfit',
  ];
  const pence = other
    .filter(({ sum }) => sum !== 'minimum-charge')
    .reduce((sum, line) => sum + line.pence, 0);
  return [
    ...sums,
    callOut,
    ...visits,
    ...travel,
    ...parking,
    ...overheadRows(context, hasTravel),
    profitOnAllRow(context, hasTravel),
    moneyRow('Other sums, together', 'OtherSums', `ROUND(${added.join('+')},2)`, pence),
  ];
}

/** What is asked for before the work; a percentage beats a sum beside it. */
export function depositRows({ price }: SchemeEstimate, { deposit }: AgreedTerms): readonly SummaryRow[] {
  const percent = deposit !== null && 'percent' in deposit ? deposit.percent : 0;
  return [
    percentRow('Deposit rate', 'DepositPercent', percent, 'Of the total'),
    {
      label: 'or deposit, a sum',
      value: pounds(deposit !== null && 'pence' in deposit ? deposit.pence : 0),
      name: 'DepositSum',
      remark: 'Where there is no rate',
      role: 'input',
      format: 'money',
    },
    {
      ...moneyRow(
        'Deposit',
        'TotalDeposit',
        'IF(DepositPercent>0,ROUND(TotalGross*DepositPercent,2),MIN(DepositSum,TotalGross))',
        price.depositPence ?? 0,
      ),
      remark: 'Of the total, before the work begins',
    },
  ];
}

/** What the job costs the firm and leaves it; only where it was known what an hour costs. */
export function marginRows({ price }: SchemeEstimate): readonly SummaryRow[] {
  const { costPence, jobMarginPercent, other } = price;
  if (costPence === null) return [];
  const sums = other.filter(({ sum }) => !OWN_ROWS.includes(sum)).map((_, index) => `OtherSum${index + 1}`);
  const travel = other.some(({ sum }) => sum === 'travel');
  const parking = price.parking === null ? [] : ['ParkingCharge'];
  const parts = [costOf(travel), 'TotalOverhead', ...parking, ...sums].join('+');
  return [
    moneyRow('Cost of the job to the firm', 'JobCost', `ROUND(${parts},2)`, costPence),
    {
      label: 'Margin of the job',
      value: {
        formula:
          'IF(TotalNet=TotalContingency,0,(TotalNet-TotalContingency-JobCost)/(TotalNet-TotalContingency))',
        result: (jobMarginPercent ?? 0) / 100,
      },
      name: 'JobMargin',
      remark: 'Of the net sum without its contingency, which is taken to be spent',
      role: 'number',
      format: 'percent',
    },
  ];
}
