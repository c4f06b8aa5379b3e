import type { WorkTask } from '#engine/work/task-list.ts';
import { isTask, tickOf } from '#engine/work/task-progress.ts';
import type { Job } from '#model/job.ts';
import type { Testing } from '#model/site-work.ts';
import type { JobEdit } from '../job-events.ts';

type Instrument = NonNullable<Testing['instruments']>[number];

/**
 * Ticks a task of a scheme as it stands now, answers its hold, or takes either away.
 *
 * @param is of a hold whether what has to be so is so; null, and false of a task without a hold: it is not done.
 */
export function tickTask(schemeId: string, task: WorkTask, is: boolean | null): JobEdit {
  const isTaken = is === null || (is === false && task.hold === null);
  return {
    label: `${isTaken ? 'Not done' : task.hold === null ? 'Done' : is === true ? 'Held, and so' : 'Held, and not so'}: ${task.words}`,
    change: (job) => {
      const others = (job.done ?? []).filter((one) => !isTask(one, schemeId, task.id));
      putDone(job, isTaken ? others : [...others, tickOf(schemeId, task, is)]);
    },
  };
}

/** Takes away what was ticked of a scheme that goes. */
export function forgetDone(job: Pick<Job, 'done'>, schemeId: string): void {
  putDone(
    job,
    (job.done ?? []).filter(({ entry }) => !entry.startsWith(`${schemeId}/`)),
  );
}

function putDone(job: Pick<Job, 'done'>, done: NonNullable<Job['done']>): void {
  if (done.length === 0) delete job.done;
  else job.done = done;
}

/** Records an instrument that was tested with, or changes the one of its id. */
export const putInstrument = (instrument: Instrument): JobEdit => ({
  label: `Tested with ${instrument.what === '' ? 'an instrument' : instrument.what}`,
  change: (job) => {
    const known = job.testing?.instruments ?? [];
    const place = known.findIndex(({ id }) => id === instrument.id);
    putTesting(job, { instruments: place < 0 ? [...known, instrument] : known.with(place, instrument) });
  },
});

/** Takes an instrument off the list. */
export const removeInstrument = ({ id, what }: Pick<Instrument, 'id' | 'what'>): JobEdit => ({
  label: `Not tested with ${what === '' ? 'an instrument' : what}`,
  change: (job) =>
    putTesting(job, { instruments: (job.testing?.instruments ?? []).filter((one) => one.id !== id) }),
});

/** Says what could not be tested, and why; empty: nothing is said. */
export const setNotTested = (words: string): JobEdit => ({
  label: 'What could not be tested',
  change: (job) => putTesting(job, { notTested: words.trim() }),
});

function putTesting(job: Pick<Job, 'testing'>, change: Testing): void {
  const now = { ...job.testing, ...change };
  if (now.instruments?.length === 0) delete now.instruments;
  if (now.notTested === '') delete now.notTested;
  if (Object.keys(now).length === 0) delete job.testing;
  else job.testing = now;
}
