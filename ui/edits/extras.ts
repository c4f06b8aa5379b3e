import type { Extra } from '#model/extra.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

type WithExtras = Pick<Job, 'extras'>;

/** What may be said of extra work beside its words; null takes it away. */
export type ExtraFacts = {
  readonly [K in Exclude<keyof Extra, 'id' | 'words'>]?: Extra[K] | null;
};

/** As a list of what was done names it: no longer than a line. */
const named = (words: string): string => (words.length > 40 ? `${words.slice(0, 39).trimEnd()}…` : words);

/** A job without any has no list. */
function putAll(job: WithExtras, extras: Extra[]): void {
  if (extras.length === 0) delete job.extras;
  else job.extras = extras;
}

/** Adds work that is not on the drawing, last of all. */
export const addExtra = (extra: Extra): JobEdit => ({
  label: `Add “${named(extra.words)}”`,
  change: (job) => putAll(job, [...(job.extras ?? []), extra]),
});

/** Changes what extra work is called; empty words change nothing, since the customer has to read what it is. */
export const renameExtra = (id: string, words: string): JobEdit => ({
  label: `Change the words “${named(words)}”`,
  change: (job) => {
    const extra = job.extras?.find((one) => one.id === id);
    if (extra !== undefined && words.trim() !== '') extra.words = words.trim().slice(0, 500);
  },
});

/** Keeps the three figures in order: an end that the typical one passes goes with it. */
function inOrder(extra: Extra): void {
  const { lowMin, typicalMin, highMin } = extra;
  if (typicalMin === undefined) {
    delete extra.lowMin;
    delete extra.highMin;
    return;
  }
  if (lowMin !== undefined && lowMin > typicalMin) extra.lowMin = typicalMin;
  if (highMin !== undefined && highMin < typicalMin) extra.highMin = typicalMin;
}

/** Says what extra work takes, what it costs or where it is. */
export const setExtra = (id: string, facts: ExtraFacts): JobEdit => ({
  label: 'Change work that is not on the drawing',
  change: (job) => {
    const extra = job.extras?.find((one) => one.id === id);
    if (extra === undefined) return;
    for (const [fact, value] of Object.entries(facts)) {
      if (value === null || value === undefined) Reflect.deleteProperty(extra, fact);
      else Reflect.set(extra, fact, value);
    }
    inOrder(extra);
  },
});

/** Takes extra work out of the job. */
export const removeExtra = ({ id, words }: Pick<Extra, 'id' | 'words'>): JobEdit => ({
  label: `Remove “${named(words)}”`,
  change: (job) =>
    putAll(
      job,
      (job.extras ?? []).filter((one) => one.id !== id),
    ),
});

/** Extra work at a thing that leaves stays to be done: at another thing (null: nobody says where any more). */
export function extrasWithout(
  job: WithExtras,
  gone: ReadonlySet<string>,
  instead: string | null = null,
): void {
  for (const extra of job.extras ?? []) {
    if (extra.at === undefined || !gone.has(extra.at)) continue;
    if (instead === null) delete extra.at;
    else extra.at = instead;
  }
}
