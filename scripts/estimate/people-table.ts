import { labelsOf } from '#drawing/label-of.ts';
import { outcomeOrder, outcomeWords } from '#drawing/marks.ts';
import { pounds } from '#engine/quotation/said.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { schemeCable } from '#engine/schemes/scheme-cable.ts';

const compliesWords = { yes: 'yes', no: 'NO', 'not-proven': 'not proven' } as const;

/** Sets columns side by side; the first is left aligned, the others right. */
function columns(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i < 2 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function schemeRows(estimate: Estimate): readonly (readonly string[])[] {
  const head = ['Scheme', 'Name', 'Complies', 'Hours', 'Cable', 'Joints', 'Net', 'VAT', 'Total', 'Range'];
  const rows = estimate.schemes.map((scheme) => {
    const { cableMm, typicalRuns } = schemeCable(scheme.runs);
    const { totals, range } = scheme;
    return [
      scheme.id,
      scheme.name,
      compliesWords[scheme.complies],
      `${totals.hours.toFixed(1)} h`,
      `${typicalRuns > 0 ? 'about ' : ''}${(cableMm / 1000).toFixed(1)} m`,
      String(scheme.joints.filter((joint) => joint.state === 'new').length),
      pounds(totals.netPence),
      pounds(totals.vatPence),
      pounds(totals.grossPence),
      `${pounds(range.lowPence)} to ${pounds(range.highPence)}`,
    ];
  });
  return [head, ...rows];
}

function findingLines(findings: readonly Finding[], labelOf: (id: string) => string): readonly string[] {
  return outcomeOrder.flatMap((outcome) => {
    const of = findings.filter((finding) => finding.outcome === outcome);
    if (of.length === 0) return [];
    if (outcome === 'passes')
      return [`${outcomeWords.passes}: ${of.length} ${of.length === 1 ? 'check' : 'checks'}`];
    return of.flatMap((finding) => {
      const price =
        finding.consequencePence === null ? '' : ` (${pounds(finding.consequencePence)} with VAT)`;
      const gate = finding.stopGate ? ' Stop: work must not go on before this is settled.' : '';
      const first = `${outcomeWords[outcome]}  ${finding.rule}  ${labelOf(finding.subject)}: ${finding.message}${gate}`;
      return finding.remedy === null ? [first] : [first, `      Remedy: ${finding.remedy}${price}`];
    });
  });
}

function openLines(scheme: SchemeEstimate): readonly string[] {
  if (scheme.openQuestions.length === 0) return [];
  return [
    'What would narrow the price most:',
    ...scheme.openQuestions
      .slice(0, 3)
      .map((question) => `  ${question.words} (${pounds(question.worthPence)})`),
  ];
}

/** What the command prints for people: the schemes side by side, then the shown scheme's checks. */
export function peopleTable(
  estimate: Estimate,
  shown: SchemeEstimate | null,
  written: readonly string[],
): string {
  const head = `${estimate.reference}  ${estimate.title}  (${estimate.date})`;
  const schemes =
    estimate.schemes.length === 0
      ? 'No scheme as yet: nothing says how the wanted points are to be joined.'
      : columns(schemeRows(estimate));
  const findings = shown === null ? estimate.asFound.findings : shown.findings;
  const of = shown === null ? 'The house as found' : `Checks of "${shown.name}"`;
  const parts = [
    head,
    '',
    schemes,
    '',
    `${of}:`,
    ...findingLines(findings, labelsOf((shown ?? estimate.asFound).worked)),
    '',
    ...(shown === null ? [] : openLines(shown)),
    '',
    ...estimate.cautions,
    estimate.editionNote,
  ];
  return [...parts, ...(written.length === 0 ? [] : ['', 'Written:', ...written.map((path) => `  ${path}`)])]
    .join('\n')
    .replace(/\n{3,}/g, '\n\n');
}
