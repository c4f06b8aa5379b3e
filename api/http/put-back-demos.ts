import type { Stores } from '../db/stores.ts';
import { headingOf, jobFromText } from './readable-job.ts';

/** What became of each demo job, by id. */
export interface DemosPutBack {
  readonly added: string[];
  /** Was on the list already, and was left as it is. */
  readonly kept: string[];
}

/**
 * Puts the demo jobs that are not on the list back on it, and notes that they were offered. A removed one comes
 * back as it was when it was removed: somebody's work may be in it.
 */
export async function putBackDemos(stores: Stores, texts: readonly string[]): Promise<DemosPutBack> {
  const done: DemosPutBack = { added: [], kept: [] };
  const removed = new Set((await stores.jobs.list({ removed: true })).map(({ id }) => id));
  for (const text of texts) {
    const heading = headingOf(jobFromText(text));
    const { outcome } = removed.has(heading.id)
      ? await stores.jobs.restore(heading.id)
      : await stores.jobs.create(heading, text);
    (outcome === 'id-taken' ? done.kept : done.added).push(heading.id);
  }
  await stores.firm.noteDemosOffered();
  return done;
}
