import type { Job } from '#model/job.ts';
import { type ClashRow, clashRows } from '../differences/clash-rows.ts';
import type { Difference } from '../differences/difference-words.ts';
import { jobDifferences } from '../differences/job-differences.ts';
import type { JobMerge } from '../merging/merge-jobs.ts';
import type { DocumentSession } from './document-session.ts';
import { mergeOf } from './merged-save.ts';

/** A job that was changed here and elsewhere, as it is shown to whoever decides. */
export interface ChangedTwice {
  readonly merge: JobMerge;
  /** What both changed unlike, row by row. */
  readonly clashes: readonly ClashRow[];
  /** All in which the two differ. */
  readonly differences: readonly Difference[];
}

/** Compares the two states of a job once for each pair of them: typing on does not compare the same two again. */
export class Comparing {
  #last: ChangedTwice | null = null;

  /** Null where nobody has anything to decide. */
  of(session: DocumentSession<Job> | null): ChangedTwice | null {
    if (session === null || session.keeping !== 'changed-elsewhere') return null;
    const { mine, theirs } = this.#last?.merge.of ?? {};
    if (mine === session.now && theirs === session.theirs?.value) return this.#last;
    const merge = mergeOf(session);
    if (merge === null) return null;
    const differences = jobDifferences(merge.of.mine, merge.of.theirs, merge.of.base);
    this.#last = { merge, clashes: clashRows(merge), differences };
    return this.#last;
  }
}
