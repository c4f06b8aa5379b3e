import type { Fault } from '#model/fault.ts';
import { type FileKind, isForeign } from '#model/foreign-file.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJob } from '#model/read-job.ts';
import { readLibrary } from '#model/read-library.ts';
import type { JobHeading } from '../db/stores.ts';
import { parsedBody } from './body-text.ts';
import { faultDetails, Problem, type ProblemCode } from './problems.ts';

/** What no stored column should hold: control characters and halves of surrogate pairs. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}]+/gu;

const printable = (text: string): string => text.replace(UNPRINTABLE, ' ').trim();

/** What the list of jobs shows of a job. */
export function headingOf(job: Job): JobHeading {
  return {
    id: job.id,
    reference: printable(job.reference),
    title: printable(job.title),
    customer: printable(job.site.customer),
    wantedPoints: job.points.filter(({ status }) => status === 'wanted').length,
    schemes: job.schemes.length,
  };
}

function refusal(code: ProblemCode, what: FileKind, faults: readonly Fault[]): Problem {
  if (isForeign(what, faults))
    return new Problem(code, `This is no Ringwright ${what} file; nothing was saved.`, faultDetails(faults));
  const count = faults.length === 1 ? 'one fault' : `${faults.length} faults`;
  return new Problem(code, `The ${what} has ${count}; nothing was saved.`, faultDetails(faults));
}

const within = (above: string, faults: readonly Fault[]): readonly Fault[] =>
  above === ''
    ? faults
    : faults.map((fault) => ({ ...fault, path: fault.path === 'file' ? above : `${above}.${fault.path}` }));

/**
 * A job from parsed JSON; one that cannot be read is a problem with every fault.
 *
 * @param above where in the body it stands, for the faults' paths; empty when it is the body.
 */
export function jobFrom(value: unknown, above = ''): Job {
  const read = readJob(value);
  if (!read.ok) throw refusal('job-unreadable', 'job', within(above, read.faults));
  return read.job;
}

/** A library from parsed JSON; as `jobFrom`. */
export function libraryFrom(value: unknown, above = ''): Library {
  const read = readLibrary(value);
  if (!read.ok) throw refusal('library-unreadable', 'library', within(above, read.faults));
  return read.library;
}

/** A job from the text of its file. */
export const jobFromText = (text: string): Job => jobFrom(parsedBody(text));

/** A library from the text of its file. */
export const libraryFromText = (text: string): Library => libraryFrom(parsedBody(text));

/**
 * What is read from a text that the store has. It was checked when it was saved: where it is no JSON any more, or holds more
 * than is ever taken, the store's file was damaged since, and whoever asks has sent nothing wrong.
 */
export function fromStored<Read>(read: () => Read, remedy: string): Read {
  try {
    return read();
  } catch (error) {
    const isDamage =
      error instanceof Problem && (error.code === 'not-json' || error.code === 'beyond-bounds');
    if (!isDamage) throw error;
    throw new Problem('stored-damaged', `${remedy} ${error.message}`);
  }
}
