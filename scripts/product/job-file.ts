import { readFile } from 'node:fs/promises';
import type { Fault } from '#model/fault.ts';
import { type FileKind, isForeign } from '#model/foreign-file.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';

/** The call or a file is faulty: nothing is written. */
export class Refused extends Error {}

/** A file's text. */
export async function textOf(path: string, what: string): Promise<string> {
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

/** One fault in words: what is wrong, what to do about it, and where. */
export const faultWords = ({ path, message, remedy }: Omit<Fault, 'code'>): string =>
  `${sentence(message)} ${remedy === '' ? '' : `${sentence(remedy)} `}(${path})`;

/** Every fault of a file, a line each. */
export const faultLines = (path: string, kind: FileKind, faults: readonly Fault[]): string =>
  [
    ...(isForeign(kind, faults) ? [`${path}: This is no Ringwright ${kind} file. ${starts[kind]}.`] : []),
    `${path}: ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}, nothing written.`,
    ...faults.map((fault) => `  ${faultWords(fault)}`),
  ].join('\n');

/** Reads a job file; a file that is not there or faulty is refused, every fault named. */
export async function readJobFile(path: string): Promise<Job> {
  const read = readJobText(await textOf(path, 'job file'));
  if (!read.ok) throw new Refused(faultLines(path, 'job', read.faults));
  return read.job;
}
