import { produce } from 'immer';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

/** A job after edits, each made upon what the one before it left. */
export const edited = (job: Job, ...edits: readonly JobEdit[]): Job =>
  edits.reduce((now, { change }) => produce(now, (draft) => change(draft)), job);

/** What the reader finds wrong with a job written to its file and read again. */
export const faultsOf = (job: Job): readonly string[] => {
  const read = readJob(JSON.parse(JSON.stringify(job)));
  return read.ok ? [] : read.faults.map(({ path, message }) => `${path}: ${message}`);
};

/** The names of the parts of a job that an edit changed. */
export const partsChanged = (before: Job, after: Job): readonly string[] =>
  Object.entries(before)
    .filter(
      ([part, value]) =>
        JSON.stringify(value) !== JSON.stringify(Object.entries(after).find(([name]) => name === part)?.[1]),
    )
    .map(([part]) => part)
    .sort();

/** One of a list, chosen by any whole number; undefined of an empty list. */
export const pick = <T>(list: readonly T[], number: number): T | undefined =>
  list[number % Math.max(1, list.length)];
