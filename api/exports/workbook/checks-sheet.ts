import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { type CellContent, pounds } from './cell-value.ts';
import { addTableSheet, type Column, FIRST_ROW, HEADER_ROW, writeRow } from './table-sheet.ts';
import { sheetNames, type WorkbookContext } from './workbook-context.ts';

const columns: readonly Column[] = [
  { header: 'Outcome', width: 11, role: 'text' },
  { header: 'Of', width: 9, role: 'text' },
  { header: 'Subject', width: 18, role: 'text' },
  { header: 'Check', width: 34, role: 'text' },
  { header: 'Actual', width: 12, role: 'text' },
  { header: 'Limit', width: 12, role: 'text' },
  { header: 'Finding', width: 54, role: 'text' },
  { header: 'What would put it right', width: 40, role: 'text' },
  { header: 'Costs', width: 10, role: 'number', format: 'money' },
  { header: 'Source', width: 26, role: 'text' },
  { header: 'Edition', width: 18, role: 'text' },
  { header: 'Rule', width: 7, role: 'text' },
];

const outcomeWords: Readonly<Record<Outcome, string>> = {
  fails: 'Fails',
  decide: 'To decide',
  'not-proven': 'Not proven',
  advice: 'Advice',
  passes: 'Passes',
};
const outcomeOrder: readonly Outcome[] = ['fails', 'decide', 'not-proven', 'advice', 'passes'];

/** Findings as people read them: the worst first, then by rule and subject. */
function inReadingOrder(findings: readonly Finding[]): readonly Finding[] {
  const rank = (finding: Finding): string =>
    [outcomeOrder.indexOf(finding.outcome), finding.rule, finding.subject, finding.messageId].join(' ');
  return findings
    .map((finding) => ({ finding, key: rank(finding) }))
    .toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ finding }) => finding);
}

function figure(value: number | string | null, unit: string | null): string | null {
  if (value === null) return null;
  return typeof value === 'number' && unit !== null ? `${value} ${unit}` : String(value);
}

function contentsOf({ labelOf }: WorkbookContext, finding: Finding): readonly CellContent[] {
  return [
    outcomeWords[finding.outcome] + (finding.stopGate ? ', stop' : ''),
    finding.origin === 'scheme' ? 'scheme' : 'as found',
    labelOf(finding.subject),
    finding.title,
    figure(finding.actual, finding.unit),
    figure(finding.limit, finding.unit),
    finding.message,
    finding.remedy,
    finding.consequencePence === null ? null : pounds(finding.consequencePence),
    finding.source,
    finding.edition,
    finding.rule,
  ];
}

/** Every check with its outcome, the worst first, with a filter on the header. */
export function addChecksSheet(context: WorkbookContext): void {
  const note =
    'Checks made from the survey, not a certificate. Check your own copy of the standard; decide on site.';
  const sheet = addTableSheet(context, sheetNames.checks, note, columns);
  const findings = inReadingOrder(context.scheme.findings);
  findings.forEach((finding, index) => {
    writeRow(sheet, FIRST_ROW + index, columns, contentsOf(context, finding));
  });
  sheet.autoFilter = {
    from: { row: HEADER_ROW, column: 1 },
    to: { row: Math.max(FIRST_ROW, FIRST_ROW + findings.length - 1), column: columns.length },
  };
}
