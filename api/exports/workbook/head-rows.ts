import { verdictOf } from '#drawing/verdict.ts';
import { demoShare, demoShareWords } from '#engine/demo-marks.ts';
import { agreedTerms } from '#engine/price/agreed-terms.ts';
import { dayAfter } from '#engine/price/list/day-count.ts';
import type { SummaryRow } from './summary-row.ts';
import type { WorkbookContext } from './workbook-context.ts';

/** What stands where nobody has said it yet. */
const NOT_GIVEN = 'not given';

const given = (text: string): string => (text.trim() === '' ? NOT_GIVEN : text);

/** Lines of an address in one. */
const inOneLine = (lines: readonly string[]): string => lines.filter((line) => line.trim() !== '').join(', ');

function validityRow({ estimate, scheme, library }: WorkbookContext): SummaryRow {
  const { validDays } = agreedTerms(scheme.worked.job.terms, library.terms);
  if (validDays === null) return { label: 'Price holds until', value: NOT_GIVEN };
  const value = dayAfter(estimate.date, validDays) ?? NOT_GIVEN;
  return { label: 'Price holds until', value, remark: `${validDays} days from its date` };
}

function firmRows({ library, scheme }: WorkbookContext): readonly SummaryRow[] {
  const { firm } = library;
  const number = firm.vatNumber === undefined ? 'VAT number not given' : `VAT number ${firm.vatNumber}`;
  const vat = scheme.price.vat === 'not-registered' ? 'No VAT is charged' : number;
  return [
    { label: 'Firm', value: given(firm.name), remark: given(inOneLine(firm.address)) },
    { label: 'Contact', value: given(firm.contact), remark: vat },
  ];
}

function demoRows({ scheme, library, demoNote }: WorkbookContext): readonly SummaryRow[] {
  if (demoNote === null) return [];
  const remark = [...demoShareWords(demoShare(scheme, library)), 'Put your own in.'].join(' ');
  return [{ label: 'Mind', value: demoNote, remark }];
}

/** What the workbook is of: job, customer, firm, scheme, date and how long it holds; what is missing is said. */
export function headRows(context: WorkbookContext): readonly SummaryRow[] {
  const { estimate, scheme, library, state } = context;
  const { site } = scheme.worked.job;
  return [
    ...demoRows(context),
    { label: 'Reference', value: given(estimate.reference) },
    { label: 'Customer', value: given(site.customer) },
    { label: 'Address of the job', value: given(inOneLine(site.address)) },
    { label: 'Date', value: estimate.date },
    validityRow(context),
    ...firmRows(context),
    {
      label: 'State',
      value: state,
      remark: 'On screen and on paper the same: the same job, to the last fact',
    },
    { label: 'Scheme', value: scheme.name },
    { label: 'Price list', value: library.prices.date, remark: library.prices.source },
    { label: 'Checks', value: verdictOf(scheme).words },
    { label: 'Edition', value: estimate.edition, remark: estimate.editionNote },
  ];
}
