import { type AgreedTerms, agreedTerms } from '#engine/price/agreed-terms.ts';
import { marginOfMarkup } from '#engine/price/markup.ts';
import { surveyGapWords } from '#engine/price/survey-gaps-of.ts';
import { vatPercentOf } from '#engine/price/vat.ts';
import { claimWords } from '#engine/price/vat-claim.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { pounds } from './cell-value.ts';
import type { SummaryRow } from './summary-row.ts';
import type { WorkbookContext } from './workbook-context.ts';

const levelNumber = { low: 1, typical: 2, high: 3 } as const;

function percentRow(label: string, name: string, percent: number, remark: string): SummaryRow {
  return { label, value: percent / 100, name, remark, role: 'input', format: 'percent' };
}

function moneyRow(label: string, name: string, formula: string, pence: number): SummaryRow {
  return { label, name, value: { formula, result: pounds(pence) }, role: 'number', format: 'money' };
}

/** Mark-up and margin, one of them given and the other following from it. */
function profitRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  const { markupPercent, marginPercent } = scheme.price;
  if (marginPercent !== null)
    return [
      percentRow('Margin', 'MarginPercent', marginPercent, 'Of the selling price'),
      {
        label: 'Mark-up',
        name: 'MarkupPercent',
        value: { formula: 'MarginPercent/(1-MarginPercent)', result: markupPercent / 100 },
        remark: 'On cost: margin ÷ (1 − margin)',
        role: 'number',
        format: 'percent',
      },
    ];
  return [
    percentRow('Mark-up', 'MarkupPercent', markupPercent, 'On cost'),
    {
      label: 'Margin',
      name: 'MarginPercent',
      value: { formula: 'MarkupPercent/(1+MarkupPercent)', result: marginOfMarkup(markupPercent) / 100 },
      remark: 'Of the selling price: mark-up ÷ (1 + mark-up)',
      role: 'number',
      format: 'percent',
    },
  ];
}

/** What the hourly rate is, and what mark-up or margin are put on by it. */
function basisRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
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

/** The standard rate as what a price with tax is of one without. */
const WITH_VAT = (100 + vatPercentOf.standard) / 100;

/** What a listed price is multiplied by to give what the material costs the firm. */
function costVatRow({ scheme, library }: WorkbookContext): SummaryRow {
  const bearsTax = scheme.price.vat === 'not-registered';
  const listed = library.prices.vat;
  const label = 'Cost of a listed price';
  const base = { label, name: 'CostVatFactor', role: 'number', format: 'quantity' } as const;
  if (listed === 'excluded' && bearsTax)
    return { ...base, value: WITH_VAT, remark: 'Listed without VAT; a firm that is not registered bears it' };
  if (listed === 'included' && !bearsTax)
    return {
      ...base,
      value: { formula: `1/${WITH_VAT}`, result: 1 / WITH_VAT },
      remark: 'Listed with VAT, which a registered firm recovers',
    };
  return { ...base, value: 1, remark: 'Times the price in the list' };
}

function materialRows(context: WorkbookContext): readonly SummaryRow[] {
  const { price } = context.scheme;
  return [
    costVatRow(context),
    moneyRow('Materials at cost', 'MaterialsAtCost', 'MaterialsCost', price.materialsCostPence),
    ...profitRows(context),
    ...basisRows(context),
    moneyRow(
      'Materials',
      'TotalMaterials',
      'IF(ProfitOnAll=1,MaterialsCost,ROUND(MaterialsCost*(1+MarkupPercent),2))',
      price.totals.materialsPence,
    ),
  ];
}

function labourRows({ scheme }: WorkbookContext): readonly SummaryRow[] {
  const { price } = scheme;
  return [
    {
      label: 'Labour norms',
      value: price.labourLevel,
      name: 'LabourLevel',
      remark: 'low, typical or high',
      role: 'input',
    },
    {
      label: 'Column of the norms',
      value: {
        formula: 'IF(LabourLevel="low",1,IF(LabourLevel="high",3,2))',
        result: levelNumber[price.labourLevel],
      },
      name: 'LabourLevelNumber',
      role: 'number',
    },
    {
      label: 'Hours',
      value: { formula: 'ROUND(LabourMinutes/60,2)', result: price.totals.hours },
      name: 'LabourHours',
      role: 'number',
      format: 'hours',
    },
    {
      label: 'Rate by the hour',
      value: pounds(price.ratePencePerHour),
      name: 'LabourRate',
      role: 'input',
      format: 'money',
    },
    moneyRow('Labour', 'TotalLabour', 'ROUND(LabourMinutes/60*LabourRate,2)', price.totals.labourPence),
  ];
}

/** Lines of the price that have rows of their own here. */
const OWN_ROWS: readonly string[] = ['call-out', 'travel', 'overhead', 'profit', 'minimum-charge'];

/** Travelling time and its charge; neither where the job has none. */
function travelRows({ scheme }: WorkbookContext, { travelMin }: AgreedTerms): readonly SummaryRow[] {
  const line = scheme.price.other.find(({ sum }) => sum === 'travel');
  if (line === undefined) return [];
  return [
    {
      label: 'Travelling time, minutes',
      value: travelMin,
      name: 'TravelMinutes',
      role: 'input',
      format: 'minutes',
    },
    {
      label: 'Travel',
      value: { formula: 'ROUND(TravelMinutes/60*LabourRate,2)', result: pounds(line.pence) },
      remark: `${travelMin} min by the same rate`,
      name: 'TravelCharge',
      role: 'number',
      format: 'money',
    },
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
      value: byDay?.hoursPerDay ?? USUAL_DAY,
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

/** Hours of a day where no overhead says. */
const USUAL_DAY = 8;

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
function otherRows(context: WorkbookContext, agreed: AgreedTerms): readonly SummaryRow[] {
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
  const travel = travelRows(context, agreed);
  const hasTravel = travel.length > 0;
  const added = [
    ...sums.flatMap(({ name }) => name ?? []),
    'CallOut',
    ...(hasTravel ? ['TravelCharge'] : []),
    'TotalOverhead',
    'TotalProfit',
  ];
  const pence = other
    .filter(({ sum }) => sum !== 'minimum-charge')
    .reduce((sum, line) => sum + line.pence, 0);
  return [
    ...sums,
    callOut,
    ...travel,
    ...overheadRows(context, hasTravel),
    profitOnAllRow(context, hasTravel),
    moneyRow('Other sums, together', 'OtherSums', `ROUND(${added.join('+')},2)`, pence),
  ];
}

function contingencyRemark({ price }: SchemeEstimate): string {
  const open = price.surveyGaps.map((gap) => surveyGapWords[gap]).join('; ');
  if (price.contingencySource === 'survey')
    return open === '' ? 'By the survey, which leaves nothing open' : 'By what the survey leaves open';
  return open === '' ? 'By the terms' : `By the terms. Left open by the survey: ${open}`;
}

/** What each gap makes of the contingency: each ends where the sum of so many parts does, so that they add up to it. */
function contingencyPartRows({ price }: SchemeEstimate): readonly SummaryRow[] {
  const count = price.contingencyParts.length;
  return price.contingencyParts.map(({ gap, pence }, index) => ({
    label: `of it, ${index + 1}`,
    value: {
      formula: `ROUND(TotalContingency*${index + 1}/${count},2)-ROUND(TotalContingency*${index}/${count},2)`,
      result: pounds(pence),
    },
    name: `ContingencyPart${index + 1}`,
    remark: surveyGapWords[gap],
    role: 'number',
    format: 'money',
  }));
}

function endRows({ scheme }: WorkbookContext, agreed: AgreedTerms): readonly SummaryRow[] {
  const { price } = scheme;
  const { totals } = price;
  const topUp = price.other.find(({ sum }) => sum === 'minimum-charge')?.pence ?? 0;
  const work = 'TotalMaterials+TotalLabour+OtherSums';
  return [
    percentRow('Contingency rate', 'ContingencyPercent', price.contingencyPercent, contingencyRemark(scheme)),
    moneyRow(
      'Contingency',
      'TotalContingency',
      `ROUND((${work})*ContingencyPercent,2)`,
      totals.contingencyPence,
    ),
    ...contingencyPartRows(scheme),
    {
      label: 'Minimum charge',
      value: pounds(agreed.minimumPence),
      name: 'MinimumCharge',
      remark: 'Net',
      role: 'input',
      format: 'money',
    },
    moneyRow(
      'To the minimum charge',
      'MinimumTopUp',
      `ROUND(MAX(0,MinimumCharge-(${work}+TotalContingency)),2)`,
      topUp,
    ),
    {
      ...moneyRow('Net', 'TotalNet', `ROUND(${work}+TotalContingency+MinimumTopUp,2)`, totals.netPence),
      role: 'total',
    },
    percentRow(
      'VAT rate',
      'VatPercent',
      price.vatPercent,
      price.vat === 'not-registered'
        ? 'Not registered for VAT: none is charged'
        : `Once, on the net total; the firm is registered. ${claimWords(price.vatClaim)}`,
    ),
    moneyRow('VAT', 'TotalVat', 'ROUND(TotalNet*VatPercent,2)', totals.vatPence),
    { ...moneyRow('Total', 'TotalGross', 'ROUND(TotalNet+TotalVat,2)', totals.grossPence), role: 'price' },
    ...depositRows(scheme, agreed),
    ...marginRows(scheme),
  ];
}

/** What is asked for before the work; a percentage beats a sum beside it. */
function depositRows({ price }: SchemeEstimate, { deposit }: AgreedTerms): readonly SummaryRow[] {
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
function marginRows({ price }: SchemeEstimate): readonly SummaryRow[] {
  const { costPence, jobMarginPercent, other } = price;
  if (costPence === null) return [];
  const sums = other.filter(({ sum }) => !OWN_ROWS.includes(sum)).map((_, index) => `OtherSum${index + 1}`);
  const travel = other.some(({ sum }) => sum === 'travel');
  const parts = [costOf(travel), 'TotalOverhead', ...sums].join('+');
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

/** The price as live formulas, in the order in which it is made up. */
export function priceRows(context: WorkbookContext): readonly SummaryRow[] {
  const agreed = agreedTerms(context.scheme.worked.job.terms, context.library.terms);
  return [
    ...materialRows(context),
    ...labourRows(context),
    ...otherRows(context, agreed),
    ...endRows(context, agreed),
  ];
}
