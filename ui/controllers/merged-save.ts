import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { cameInWords } from '../differences/came-in.ts';
import { type Decisions, decide, type JobMerge, mergeJobs } from '../merging/merge-jobs.ts';
import type { Side } from '../merging/three-states.ts';
import type { BothChanged, Merged } from './both-changed.ts';
import type { DocumentSession } from './document-session.ts';

/** What was decided of each part of each clash: it holds for states that are undone to as well. */
function sidesByPart({ clashes }: JobMerge, decisions: Decisions): ReadonlyMap<string, Side> {
  return new Map(
    clashes.flatMap(({ key, parts }) => parts.map((part) => [part.key, decisions.get(key) ?? 'theirs'])),
  );
}

/** The decisions of one merge for the clashes of another: of each clash the first part that was decided tells. */
function decisionsFor({ clashes }: JobMerge, sides: ReadonlyMap<string, Side>): Decisions {
  return new Map(
    clashes.flatMap(({ key, parts }) => {
      const side = parts.map((part) => sides.get(part.key)).find((found) => found !== undefined);
      return side === undefined ? [] : [[key, side] as const];
    }),
  );
}

/**
 * How a job goes on with what was changed elsewhere, each clash as it was decided: states that can be undone to are merged
 * as the one of now is, so that undoing takes back what was done here and nothing of theirs.
 *
 * @returns null where the merged job could not be read again; then nothing of it may be saved.
 */
export function mergedBy(merge: JobMerge, decisions: Decisions): Merged<Job> | null {
  const { base, theirs, mine } = merge.of;
  const sides = sidesByPart(merge, decisions);
  const carry = (state: Job): Job => {
    const other = state === mine ? merge : mergeJobs(base, state, theirs);
    return decide(other, decisionsFor(other, sides));
  };
  return readJob(carry(mine)).ok ? { carry, cameIn: cameInWords(base, theirs) } : null;
}

/** Merges a job that was changed here and elsewhere without a question; null where something is to be decided. */
export function mergedUnasked({ base, mine, theirs }: BothChanged<Job>): Merged<Job> | null {
  const merge = mergeJobs(base, mine, theirs);
  return merge.clashes.length === 0 ? mergedBy(merge, new Map()) : null;
}

/** The two states of a job of which a person has to decide, brought together; null where nothing is to be decided. */
export function mergeOf({ base, now, theirs, keeping }: DocumentSession<Job>): JobMerge | null {
  return keeping === 'changed-elsewhere' && theirs !== null ? mergeJobs(base, now, theirs.value) : null;
}

const MOVED_ON = 'It was changed once more meanwhile: look at the rows again. Nothing was saved.';
const NO_FIT =
  'What was decided does not fit together. Nothing was saved: decide otherwise, or keep one of the two.';

/**
 * Saves a job that was changed here and elsewhere as it was decided, row by row; nothing where the job was changed again.
 *
 * @returns what came of it, in words. Throws what the server refuses.
 */
export async function saveDecided(session: DocumentSession<Job>, decisions: Decisions): Promise<string> {
  const merge = mergeOf(session);
  if (merge === null) return '';
  const theirs = await session.readTheirs();
  if (theirs.revision !== session.theirs?.revision || session.now !== merge.of.mine) {
    await session.lookAgain();
    return MOVED_ON;
  }
  if (merge.clashes.some(({ key }) => !decisions.has(key)))
    return 'Some rows are not decided yet. Nothing was saved.';
  const merged = mergedBy(merge, decisions);
  if (merged === null) return NO_FIT;
  await session.saveMerged(theirs, merged);
  session.takeCameIn();
  return session.keeping === 'kept' ? 'Saved as you decided.' : '';
}
