import { createHash } from 'node:crypto';
import { type FileHandle, mkdir, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { ENGINE_VERSION } from '#engine/engine-version.ts';
import { today } from '../product/days.ts';
import { faultWords, Refused } from '../product/job-file.ts';
import { readLibraryFile } from '../product/papers-of-file.ts';
import type { BatchArguments } from './arguments.ts';
import { type BatchInput, type BatchTerms, sha256Of, standingOf } from './batch-line.ts';
import { type BatchAnswer, BatchWorkers, type WorkerTerms } from './batch-workers.ts';
import { inOrder } from './in-order.ts';
import { type BatchInputs, batchInputs } from './inputs.ts';
import { type KeptLine, keptLines } from './kept-lines.ts';
import { closingWords, counted, noneYet, progressWords, type Tally } from './tally.ts';

/** So many jobs for each worker are under way or wait for one before them: a job that takes long holds up no other. */
const AHEAD = 8;
/** How often it is said how far it has got: where a person looks on, and in a record of what was said. */
const TELL_MS = { person: 1000, record: 10_000 } as const;
/** Of a faulty file so many faults are told as it is met; its line has all of them. */
const FAULTS_TOLD = 3;

const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/** One word for all that lines of a batch hang on beside their job. */
function wordFor({ library, date, isFull }: BatchTerms): string {
  const all = JSON.stringify([ENGINE_VERSION, library, date, isFull]);
  return createHash('sha256').update(all).digest('hex').slice(0, 12);
}

async function firstOf(path: string): Promise<KeptLine | null> {
  for await (const kept of keptLines(path)) return kept;
  return null;
}

/** What the lines are worked out with; refuses a file whose lines were worked out with something else. */
async function termsOf({ outPath, libraryPath, date, isFull }: BatchArguments): Promise<WorkerTerms> {
  const library = await readLibraryFile(libraryPath);
  const first = await firstOf(outPath);
  const terms = { library, date: date ?? first?.line.date ?? today(), isFull };
  const by = wordFor(terms);
  if (first !== null && first.line.by !== by)
    throw new Refused(
      `${outPath}: its lines were worked out with another library, day, version or another --full. Call it as before, or name another file with --out.`,
    );
  return { ...terms, by };
}

/** What an earlier run leaves: where the file goes on, and the job that it goes on with if that is known already. */
interface Rest {
  readonly toByte: number;
  readonly tally: Tally;
  readonly jobs: AsyncIterable<BatchInput>;
}

async function* from(first: BatchInput | null, rest: AsyncIterator<BatchInput>): AsyncGenerator<BatchInput> {
  if (first !== null) yield first;
  for (let next = await rest.next(); next.done !== true; next = await rest.next()) yield next.value;
}

/** Passes over the jobs whose lines are there: the same names in the same order, with the same texts. */
async function restOf({ jobs }: BatchInputs, path: string): Promise<Rest> {
  const source = jobs[Symbol.asyncIterator]();
  let [toByte, tally] = [0, noneYet];
  for await (const { line, toByte: end } of keptLines(path)) {
    const next = await source.next();
    const job = next.done === true ? null : next.value;
    if (tally.done === 0 && job?.at !== line.at)
      throw new Refused(`${path}: it is the result of another batch. Name another file with --out.`);
    if (job === null || line.at !== job.at || line.sha256 !== sha256Of(job.text)) {
      complain(`${path}: from ${line.at} on it is of other files; from there all is worked out anew.`);
      return { toByte, tally, jobs: from(job, source) };
    }
    toByte = end;
    tally = counted(tally, standingOf(line), true);
  }
  return { toByte, tally, jobs: from(null, source) };
}

/** Cuts the file to what is whole; made where there is none. */
async function openAt(path: string, toByte: number): Promise<FileHandle> {
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, 'a');
  await file.truncate(toByte);
  return file;
}

function tellFaults({ at, faults }: BatchAnswer): void {
  const more = faults.length - FAULTS_TOLD;
  complain(
    [
      `${typeof at === 'number' ? `Line ${at}` : at}: ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}, skipped.`,
      ...faults.slice(0, FAULTS_TOLD).map((fault) => `  ${faultWords(fault)}`),
      ...(more > 0 ? [`  and ${more} more`] : []),
    ].join('\n'),
  );
}

/** Says now and then how far it has got. */
function teller(count: number | null, startMs: number): (tally: Tally) => void {
  const everyMs = process.stderr.isTTY ? TELL_MS.person : TELL_MS.record;
  let toldMs = startMs;
  return (tally) => {
    const nowMs = performance.now();
    if (nowMs - toldMs < everyMs) return;
    toldMs = nowMs;
    complain(progressWords(tally, count, nowMs - startMs));
  };
}

/** Estimates a folder or a stream of jobs into one file, a line each; goes on where an earlier run was broken off. */
export async function runBatch(args: BatchArguments): Promise<number> {
  const inputs = await batchInputs(args.from);
  const terms = await termsOf(args);
  const rest = await restOf(inputs, args.outPath);
  const file = await openAt(args.outPath, rest.toByte);
  const workers = new BatchWorkers(args.workers, terms);
  const startMs = performance.now();
  const tell = teller(inputs.count, startMs);
  let { tally } = rest;
  try {
    const answers = inOrder(rest.jobs, (job) => workers.answer(job), AHEAD * args.workers);
    for await (const answer of answers) {
      await file.appendFile(`${answer.text}\n`);
      tally = counted(tally, answer.standing);
      if (answer.standing === 'faulty') tellFaults(answer);
      tell(tally);
    }
  } finally {
    await Promise.all([file.close(), workers.close()]);
  }
  process.stdout.write(`${closingWords(tally, args.outPath, performance.now() - startMs)}\n`);
  return tally.faulty + tally.held > 0 || tally.done === 0 ? 1 : 0;
}
