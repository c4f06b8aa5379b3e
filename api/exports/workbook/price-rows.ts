import { type AgreedTerms, agreedTerms } from '#engine/price/agreed-terms.ts';
import { marginOfMarkup } from '#engine/price/markup.ts';
import { surveyGapWords } from '#engine/price/survey-gaps-of.ts';
import { vatPercentOf } from '#engine/price/vat.ts';
import { claimWords } from '#engine/price/vat-claim.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { stageWords } from '../line-notes.ts';
import { basisRows, depositRows, marginRows, otherRows } from './build-up-rows.ts';
import { pounds } from './cell-value.ts';
import { multipliersIn } from './labour-sheet.ts';
import { moneyRow, percentRow } from './money-rows.ts';
import type { SummaryRow } from './summary-row.ts';
import type { WorkbookContext } from './workbook-context.ts';

const levelNumber = { low: 1, typical: 2, high: 3 } as const;

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

/** What makes the work slower or faster, as the job chose; the labour sheet multiplies by them. */
const factorRows = (context: WorkbookContext): readonly SummaryRow[] =>
  multipliersIn(context).map(({ words, factor, on, origin }, index) => ({
    label: `Minutes times, ${index + 1}`,
    value: factor,
    name: `Factor${index + 1}`,
    remark: `${words} (${on.map((stage) => stageWords[stage].toLowerCase()).join(', ')})${origin === 'demo' ? '; from memory' : ''}`,
    role: 'input',
    format: 'factor',
  }));

function labourRows(context: WorkbookContext): readonly SummaryRow[] {
  const { price } = context.scheme;
  return [
    ...factorRows(context),
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
