import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import { billCsv } from '#exports/csv/bill-csv.ts';
import { labourCsv } from '#exports/csv/labour-csv.ts';
import { dangerLetterPdf } from '#exports/danger-letter-pdf.ts';
import { estimateFile } from '#exports/estimate-file.ts';
import { papersOf } from '#exports/papers.ts';
import { type PlanFile, planFiles, planPdf } from '#exports/plan-files.ts';
import { quotationOfJob } from '#exports/quotation-paper.ts';
import { shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import { recordJson } from '#exports/work/record-json.ts';
import { recordPdf } from '#exports/work/record-pdf.ts';
import { testsPdf } from '#exports/work/tests-pdf.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Library } from '#model/library.ts';
import { readLibraryText } from '#model/read-library.ts';
import { type EstimateArguments, estimateArguments, usage } from './estimate/arguments.ts';
import { foundLines } from './estimate/found-lines.ts';
import { peopleTable } from './estimate/people-table.ts';
import { LETTER, writeAll } from './estimate/write-all.ts';
import { faultLines, Refused, readJobFile, textOf } from './product/job-file.ts';
import { runCommand } from './product/run-command.ts';

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

async function readLibraryFile(path: string | null): Promise<Library> {
  if (path === null) return demoLibrary();
  const read = readLibraryText(await textOf(path, 'library file'));
  if (!read.ok) throw new Refused(faultLines(path, 'library', read.faults));
  return read.library;
}

/** Says of which storeys there is no plan, and why; nothing where there is one of each. */
function notDrawn(plans: readonly PlanFile[]): string {
  const names = plans.filter(({ isEmpty }) => isEmpty).map(({ storeyName }) => storeyName);
  if (names.length === 0) return '';
  return `\n\nNothing to draw yet: ${names.join(', ')}. A plan wants walls, or a point placed there.`;
}

async function run(args: EstimateArguments): Promise<number> {
  const job = await readJobFile(args.jobPath);
  const library = await readLibraryFile(args.libraryPath);
  const papers = papersOf(job, library, { date: args.date, revision: 1, schemeId: args.schemeId });
  if (papers === null) {
    const known = job.schemes.map((scheme) => `  ${scheme.id}  ${scheme.name}`).join('\n');
    throw new Refused(`--scheme ${args.schemeId}: the job has no such scheme. It has:\n${known || '  none'}`);
  }
  const { result, chosen, drawn, shown, state, demoNote } = papers;
  const found = args.search ? findSchemes(job, library) : null;
  const json = estimateFile({ job, library, papers, found });
  const paper = args.sheet ?? undefined;
  const plans = planFiles(papers, paper);
  const bought = shoppingOf(papers, library, job);
  const workbook = await workbookOf(drawn, shown.id, { library, state, shopping: bought });
  const shopping = shoppingFiles(bought);
  const letter = warnOfDanger(job, library, result);
  const csv = { estimate: drawn, schemeId: shown.id, library, state };
  const written = await writeAll(args.outPath, [
    { name: 'estimate.json', content: json },
    { name: 'bill-of-materials.xlsx', content: workbook },
    { name: 'bill-of-materials.csv', content: billCsv(csv) },
    { name: 'labour.csv', content: labourCsv(csv) },
    { name: 'quotation.pdf', content: await quotationOfJob({ job, library, estimate: result }) },
    { name: 'test-sheet.pdf', content: await testsPdf({ papers, library }) },
    { name: 'record.pdf', content: await recordPdf({ papers, library }) },
    { name: 'record.json', content: recordJson({ papers, library }) },
    ...(letter === null ? [] : [{ name: LETTER, content: await dangerLetterPdf(letter) }]),
    { name: 'shopping.txt', content: shopping.text },
    { name: 'shopping.csv', content: shopping.csv },
    { name: 'wiring-plan.pdf', content: await planPdf(papers, paper) },
    ...plans
      .filter(({ isEmpty }, i) => i === 0 || !isEmpty)
      .flatMap(({ name, svg, dxfName, dxf }) => [
        { name, content: svg() },
        { name: dxfName, content: dxf() },
      ]),
  ]);
  say(
    args.json
      ? json.trimEnd()
      : `${peopleTable(result, chosen, written)}${notDrawn(plans)}${found === null ? '' : foundLines(found)}`,
  );
  if (letter !== null)
    complain(
      `Dangerous as found: ${letter.dangers.map(({ heading }) => heading).join('; ')}. ${LETTER} tells the customer.`,
    );
  if (demoNote !== null) complain(`${demoNote} Your own go into a library file: --library FILE.`);
  const judged = args.schemeId === null ? result.schemes : [shown];
  return judged.some((scheme) => scheme.complies !== 'no') ? 0 : 1;
}

await runCommand({ args: estimateArguments(process.argv.slice(2)), usage, run });
