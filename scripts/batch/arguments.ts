import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { isDay } from '../product/days.ts';

/** A batch as it was called. */
export interface BatchArguments {
  /** A folder, a file of one job a line, or `-`. */
  readonly from: string;
  readonly outPath: string;
  readonly libraryPath: string | null;
  /** ISO; null: that of the lines that are there, else today. */
  readonly date: string | null;
  readonly isFull: boolean;
  readonly workers: number;
}

export const usage = `Usage: npm run -s estimate -- --batch DIR|FILE|- --out FILE [--full] [--library FILE] [--date YYYY-MM-DD] [--workers N]

Estimates every job of a folder (*.json, by name), or of a stream with one job a line (a file, or - for standard input),
on all cores, and writes one line of JSON for each, in that order:
  at, sha256    the file's name or the line's number, and the hash of its text
  by, date      what it was worked out with, in one word, and the day that it carries
  id, reference, state, cheapestId
  asFound       findings of the house as found: how many of each outcome, how many shut stop gates
  schemes       of each: id, name, complies, totals, range, messPoints, and its findings counted alike
  faults        in the place of all these, of a file that is no job or a faulty one: it is reported and skipped
With --full each line also carries, as "estimate", all that estimate.json has of the job.
A run that was broken off goes on where the same call finds whole lines in FILE: half a line is cut off, lines of files that
have changed since are worked out anew from there on. The result is that of one run, on however many cores.
Exit: 0 each job has a scheme that may go ahead as far as checked; 1 some have none or are faulty, everything is written;
2 the call is faulty, or FILE is something else's.`;

const MOST_WORKERS = 256;

/** Whether a call asks for a batch. */
export const isBatch = (argv: readonly string[]): boolean =>
  argv.some((word) => word === '--batch' || word.startsWith('--batch='));

/** Reads the command line of a batch; a string instead says what is wrong with it. */
export function batchArguments(argv: readonly string[]): BatchArguments | string {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: {
        batch: { type: 'string' },
        out: { type: 'string' },
        full: { type: 'boolean', default: false },
        library: { type: 'string' },
        date: { type: 'string' },
        workers: { type: 'string', default: String(availableParallelism()) },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return usage;
    const { batch, out, date } = values;
    if (!batch) return `Say with --batch what to estimate.\n\n${usage}`;
    if (!out) return `Say with --out into which file to write.\n\n${usage}`;
    if (date !== undefined && !isDay(date)) return `--date wants a date such as 2026-11-25, not "${date}".`;
    const workers = Number(values.workers);
    if (!Number.isInteger(workers) || workers < 1 || workers > MOST_WORKERS)
      return `--workers wants a whole number from 1 to ${MOST_WORKERS}, not "${values.workers}".`;
    return {
      from: batch,
      outPath: out,
      libraryPath: values.library ?? null,
      date: date ?? null,
      isFull: values.full,
      workers,
    };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}
