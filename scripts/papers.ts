import type { WorkMoved } from '#engine/quotation/work-said.ts';
import { workMoved } from '#engine/work-moved.ts';
import { packPdf } from '#exports/pack/pack-pdf.ts';
import { PACK_PDF, PACK_ZIP, packZip } from '#exports/pack/pack-zip.ts';
import { type PapersArguments, papersArguments, usage } from './papers/arguments.ts';
import { Refused, readJobFile, textOf } from './product/job-file.ts';
import { type PapersOfFile, papersOfFile } from './product/papers-of-file.ts';
import { runCommand } from './product/run-command.ts';
import { writeAll } from './product/write-all.ts';

/** What the work does otherwise than an agreed job file has it. */
async function movedSince(path: string, { job, library, papers }: PapersOfFile): Promise<WorkMoved> {
  if (papers.built === null)
    throw new Refused(
      '--agreed tells what changed once the work is done: the job file does not say yet that this scheme is (under Papers).',
    );
  const agreed = await readJobFile(path);
  const moved = workMoved({ schemeId: papers.shown.id, quotedJob: agreed, agreedJob: agreed, library }, job);
  if (moved === null)
    throw new Refused(`${path}: the agreed job has no scheme "${papers.shown.id}" to set the work against.`);
  return moved;
}

async function run(args: PapersArguments): Promise<number> {
  const of = await papersOfFile(args);
  const moved = args.agreedPath === null ? null : await movedSince(args.agreedPath, of);
  const request = { ...of, moved };
  const pack = await packPdf(request);
  const zip = await packZip(
    { ...request, found: null, jobText: await textOf(args.jobPath, 'job file'), pictures: [] },
    pack,
  );
  const written = await writeAll(args.outPath, [
    { name: PACK_PDF, content: pack },
    { name: PACK_ZIP, content: zip },
  ]);
  process.stdout.write(`${written.join('\n')}\n`);
  const { demoNote } = of.papers;
  if (demoNote !== null)
    process.stderr.write(`${demoNote} Your own go into a library file: --library FILE.\n`);
  return 0;
}

await runCommand({ args: papersArguments(process.argv.slice(2)), usage, run });
