import type { JobEdit } from '../job-events.ts';

/** Says by which scheme and on which day the work was finished; null: it is not done after all, and what was said of it goes. */
export const setBuilt = (schemeId: string, on: string | null): JobEdit => ({
  label: on === null ? 'The work is not done yet' : 'The work is done',
  change: (job) => {
    if (on === null) delete job.built;
    else job.built = { ...job.built, scheme: schemeId, on };
  },
});

/** Says what was done otherwise; empty: nothing. Of work that is not done there is nothing to say. */
export const setBuiltWords = (words: string): JobEdit => ({
  label: 'What was done otherwise',
  change: (job) => {
    if (job.built === undefined) return;
    if (words.trim() === '') delete job.built.words;
    else job.built.words = words.trim();
  },
});
