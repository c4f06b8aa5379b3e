import type { Actuals, Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** A list with one entry put in its place, or taken out (null); the others keep theirs. */
function put<T>(list: readonly T[], isIt: (one: T) => boolean, entry: T | null): T[] {
  const at = list.findIndex(isIt);
  if (entry === null) return list.filter((one) => !isIt(one));
  return at < 0 ? [...list, entry] : list.map((one, index) => (index === at ? entry : one));
}

const nothing: Actuals = { stages: [], tasks: [], used: [] };

/** Writes what was taken; a job of which nothing is recorded has no actuals. */
function record(job: Pick<Job, 'actuals'>, change: Partial<Actuals>): void {
  const now = { ...(job.actuals ?? nothing), ...change };
  if (now.instead?.length === 0) delete now.instead;
  const isEmpty = now.stages.length + now.tasks.length + now.used.length + (now.instead?.length ?? 0) === 0;
  if (isEmpty) delete job.actuals;
  else job.actuals = now;
}

/** Records the minutes that a stage of the work took; null: not recorded. */
export const setActualStage = (
  stage: Actuals['stages'][number]['stage'],
  words: string,
  minutes: number | null,
): JobEdit => ({
  label: `What it took: ${words}`,
  change: (job) =>
    record(job, {
      stages: put(
        job.actuals?.stages ?? [],
        (one) => one.stage === stage,
        minutes === null ? null : { stage, minutes },
      ),
    }),
});

/** Records the minutes that a task took; null: not recorded. */
export const setActualTask = (task: string, words: string, minutes: number | null): JobEdit => ({
  label: `What it took: ${words}`,
  change: (job) =>
    record(job, {
      tasks: put(
        job.actuals?.tasks ?? [],
        (one) => one.task === task,
        minutes === null ? null : { task, minutes },
      ),
    }),
});

/** Records how much of an item was used; null: not recorded. */
export const setActuallyUsed = (item: string, words: string, quantity: number | null): JobEdit => ({
  label: `What was used: ${words}`,
  change: (job) =>
    record(job, {
      used: put(
        job.actuals?.used ?? [],
        (one) => one.item === item,
        quantity === null ? null : { item, quantity },
      ),
    }),
});

/** Records what was taken in the place of something that was not in stock; null: nothing was. No price hangs on it. */
export const setTookInstead = (
  entry: string,
  words: string,
  took: Omit<NonNullable<Actuals['instead']>[number], 'entry'> | null,
): JobEdit => ({
  label: took === null ? `Nothing taken instead: ${words}` : `Taken instead: ${words}`,
  change: (job) =>
    record(job, {
      instead: put(
        job.actuals?.instead ?? [],
        (one) => one.entry === entry,
        took === null ? null : { entry, ...took },
      ),
    }),
});
