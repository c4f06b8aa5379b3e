import { readFile } from 'node:fs/promises';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles } from '#exports/plan-files.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Fault } from '#model/fault.ts';
import { type FileKind, isForeign } from '#model/foreign-file.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import { type EstimateArguments, estimateArguments, usage } from './estimate/arguments.ts';
import { peopleTable } from './estimate/people-table.ts';
import { writeAll } from './estimate/write-all.ts';

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/** The call or a file is faulty: nothing is written. */
class Refused extends Error {}

async function textOf(path: string, what: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : String(error);
    throw new Refused(
      code === 'ENOENT'
        ? `${path}: there is no such ${what}. Check the path.`
        : `${path}: the ${what} cannot be read (${String(code)}).`,
    );
  }
}

const sentence = (text: string): string => (text === '' || /[.?!]$/.test(text) ? text : `${text}.`);

const starts: Readonly<Record<FileKind, string>> = {
  job: 'Give one that the step Papers has made, or start from one in data/jobs/',
  library: 'Give one that the page Firm, prices and norms has made',
};

const faultLines = (path: string, kind: FileKind, faults: readonly Fault[]): string =>
  [
    ...(isForeign(kind, faults) ? [`${path}: This is no Ringwright ${kind} file. ${starts[kind]}.`] : []),
    `${path}: ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}, nothing written.`,
    ...faults.map(({ path: at, message, remedy }) =>
      ['  ', sentence(message), ' ', remedy === '' ? '' : `${sentence(remedy)} `, `(${at})`].join(''),
    ),
  ].join('\n');

async function readJobFile(path: string): Promise<Job> {
  const read = readJobText(await textOf(path, 'job file'));
  if (!read.ok) throw new Refused(faultLines(path, 'job', read.faults));
  return read.job;
}

async function readLibraryFile(path: string | null): Promise<Library> {
  if (path === null) return demoLibrary();
  const read = readLibraryText(await textOf(path, 'library file'));
  if (!read.ok) throw new Refused(faultLines(path, 'library', read.faults));
  return read.library;
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
  const json = estimateJson(result);
  const workbook = await workbookOf(drawn, shown.id, { library, state });
  const written = await writeAll(args.outPath, [
    { name: 'estimate.json', content: json },
    { name: 'bill-of-materials.xlsx', content: workbook },
    ...planFiles(papers).map(({ name, svg }) => ({ name, content: svg() })),
  ]);
  say(args.json ? json.trimEnd() : peopleTable(result, chosen, written));
  if (demoNote !== null) complain(`${demoNote} Your own go into a library file: --library FILE.`);
  const judged = args.schemeId === null ? result.schemes : [shown];
  return judged.some((scheme) => scheme.complies !== 'no') ? 0 : 1;
}

async function main(): Promise<number> {
  const args = estimateArguments(process.argv.slice(2));
  if (args === usage) {
    say(usage);
    return 0;
  }
  if (typeof args === 'string') {
    complain(args);
    return 2;
  }
  return run(args);
}

main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (error instanceof Refused) complain(error.message);
    else
      complain(
        `Could not finish: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`,
      );
    process.exitCode = 2;
  },
);
