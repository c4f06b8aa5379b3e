import { createHash } from 'node:crypto';
import { type BatchJob, batchJob } from '#exports/batch-line.ts';
import type { Fault } from '#model/fault.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';

/** A job file of a batch: its name in the folder or the number of its line, and its text; null: it cannot be read at all. */
export interface BatchInput {
  readonly at: string | number;
  readonly text: string | null;
}

/** What every job of a batch is worked out with. */
export interface BatchTerms {
  readonly library: Library;
  /** ISO. */
  readonly date: string;
  /** Whether each line carries the whole estimate. */
  readonly isFull: boolean;
}

/** Of which file a line is and what it was worked out with: by this a later run knows it again. */
export interface BatchLineHead {
  readonly at: string | number;
  /** Of the file's text; null where there is none. */
  readonly sha256: string | null;
  /** One word for engine, library, day and kind of line. */
  readonly by: string;
  readonly date: string;
}

type LineFault = Omit<Fault, 'code'>;

/** A line of a batch as data: a job, or why there is none. */
export type BatchLine = BatchLineHead & (BatchJob | { readonly faults: readonly LineFault[] });

/** What came of a job: a scheme of it may go ahead as far as checked, none may, or it could not be read. */
export type Standing = 'goes-ahead' | 'held' | 'faulty';

/** What came of the job that a line is of. */
export const standingOf = (line: BatchLine): Standing =>
  'faults' in line
    ? 'faulty'
    : line.schemes.some(({ complies }) => complies !== 'no')
      ? 'goes-ahead'
      : 'held';

/** The hash of a text, as lines carry it. */
export const sha256Of = (text: string | null): string | null =>
  text === null ? null : createHash('sha256').update(text).digest('hex');

const unreadable = { path: 'file', message: 'the file cannot be read', remedy: 'Check who may read it' };

function jobOrFaults(text: string | null, terms: BatchTerms): BatchJob | { faults: readonly LineFault[] } {
  if (text === null) return { faults: [unreadable] };
  const read = readJobText(text);
  if (!read.ok) return { faults: read.faults.map(({ code: _, ...fault }) => fault) };
  try {
    return batchJob(read.job, terms.library, terms);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { faults: [{ path: 'file', message: `it could not be worked out: ${why}`, remedy: '' }] };
  }
}

/**
 * The line of one job file: equal files, terms and `by` give equal lines. What is wrong with a file is in its line, and stops nobody
 * else's.
 */
export const batchLine = ({ at, text }: BatchInput, terms: BatchTerms, by: string): BatchLine => ({
  at,
  sha256: sha256Of(text),
  by,
  date: terms.date,
  ...jobOrFaults(text, terms),
});
