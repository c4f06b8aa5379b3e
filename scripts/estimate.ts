import { readFile } from 'node:fs/promises';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { planScene, storeysToDraw } from '#drawing/plan/plan-scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { estimate } from '#engine/estimate.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Fault } from '#model/fault.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import { type EstimateArguments, estimateArguments, usage } from './estimate/arguments.ts';
import { peopleTable } from './estimate/people-table.ts';
import { type OutFile, writeAll } from './estimate/write-all.ts';

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

const faultLines = (path: string, faults: readonly Fault[]): string =>
  [
    `${path}: ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}, nothing written.`,
    ...faults.map((fault) =>
      `  ${fault.path}: ${sentence(fault.message)} ${sentence(fault.remedy)}`.trimEnd(),
    ),
  ].join('\n');

async function readJobFile(path: string): Promise<Job> {
  const read = readJobText(await textOf(path, 'job file'));
  if (!read.ok) throw new Refused(faultLines(path, read.faults));
  return read.job;
}

async function readLibraryFile(path: string | null): Promise<Library> {
  if (path === null) return demoLibrary();
  const read = readLibraryText(await textOf(path, 'library file'));
  if (!read.ok) throw new Refused(faultLines(path, read.faults));
  return read.library;
}

/** The scheme that workbook and plan show: asked for, else the cheapest that does not fail, else the first. */
function shownScheme(result: Estimate, schemeId: string | null): SchemeEstimate | null {
  const id = schemeId ?? result.cheapestId ?? result.schemes[0]?.id;
  const shown = result.schemes.find((scheme) => scheme.id === id);
  if (schemeId !== null && shown === undefined) {
    const known = result.schemes.map((scheme) => `  ${scheme.id}  ${scheme.name}`).join('\n');
    throw new Refused(`--scheme ${schemeId}: the job has no such scheme. It has:\n${known || '  none'}`);
  }
  return shown ?? null;
}

const fileWord = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'storey';

/** One plan a storey: the first as wiring-plan.svg, each other beside it by its storey's name. */
function planFiles(result: Estimate, shown: SchemeEstimate): readonly OutFile[] {
  const used = new Set<string>();
  return storeysToDraw(shown).map((storey, i) => {
    const word = used.has(fileWord(storey.name))
      ? `${fileWord(storey.name)}-${i + 1}`
      : fileWord(storey.name);
    used.add(word);
    const scene = planScene({
      ...result,
      worked: shown.worked,
      storeyId: storey.id,
      findings: shown.findings,
      schemeName: shown.name,
    });
    return { name: i === 0 ? 'wiring-plan.svg' : `wiring-plan-${word}.svg`, content: svgOf(scene) };
  });
}

/** A job without a scheme is drawn and counted as it stands: nothing joined. */
const withoutScheme = (job: Job): Job => ({
  ...job,
  schemes: [
    { id: 'as-found--', name: 'As found: nothing joined yet', connections: [], remedies: [], locks: [] },
  ],
});

async function run(args: EstimateArguments): Promise<number> {
  const job = await readJobFile(args.jobPath);
  const library = await readLibraryFile(args.libraryPath);
  const when = { date: args.date, revision: 1 };
  const result = estimate(job, library, when);
  const asked = shownScheme(result, args.schemeId);
  const drawn = asked === null ? estimate(withoutScheme(job), library, when) : result;
  const shown = asked ?? drawn.schemes[0];
  if (shown === undefined) throw new Error('a job with a scheme gave no estimate');
  const json = estimateJson(result);
  const workbook = await workbookOf(drawn, shown.id, { library });
  const written = await writeAll(args.outPath, [
    { name: 'estimate.json', content: json },
    { name: 'bill-of-materials.xlsx', content: workbook },
    ...planFiles(drawn, shown),
  ]);
  say(args.json ? json.trimEnd() : peopleTable(result, asked, written));
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
