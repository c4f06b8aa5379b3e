import { findSchemes } from '#engine/find-schemes.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import { allFiles, LETTER } from '#exports/pack/all-files.ts';
import { type PlanFile, planFiles } from '#exports/plan-files.ts';
import { batchArguments, usage as batchUsage, isBatch } from './batch/arguments.ts';
import { runBatch } from './batch/run-batch.ts';
import { type EstimateArguments, estimateArguments, usage } from './estimate/arguments.ts';
import { foundLines } from './estimate/found-lines.ts';
import { peopleTable } from './estimate/people-table.ts';
import { papersOfFile } from './product/papers-of-file.ts';
import { runCommand } from './product/run-command.ts';
import { writeAll } from './product/write-all.ts';

const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/** Says of which storeys there is no plan, and why; nothing where there is one of each. */
function notDrawn(plans: readonly PlanFile[]): string {
  const names = plans.filter(({ isEmpty }) => isEmpty).map(({ storeyName }) => storeyName);
  if (names.length === 0) return '';
  return `\n\nNothing to draw yet: ${names.join(', ')}. A plan wants walls, or a point placed there.`;
}

async function run(args: EstimateArguments): Promise<number> {
  const { job, library, papers } = await papersOfFile(args);
  const { result, chosen, shown, demoNote } = papers;
  const found = args.search ? findSchemes(job, library) : null;
  const letter = warnOfDanger(job, library, result);
  const files = await allFiles({
    job,
    library,
    papers,
    found,
    letter,
    ...(args.sheet === null ? {} : { sheet: args.sheet }),
  });
  const written = await writeAll(args.outPath, files);
  const json = files.find(({ name }) => name === 'estimate.json')?.content ?? '';
  const plans = planFiles(papers);
  say(
    args.json
      ? String(json).trimEnd()
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

const argv = process.argv.slice(2);
if (isBatch(argv)) await runCommand({ args: batchArguments(argv), usage: batchUsage, run: runBatch });
else await runCommand({ args: estimateArguments(argv), usage, run });
