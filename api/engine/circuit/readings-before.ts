import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inIdOrder } from './id-order.ts';

/** A reading of one kind. */
type ReadingOf<Kind extends Reading['kind']> = Extract<Reading, { readonly kind: Kind }>;

/**
 * The readings of one kind that were taken before the work, in the job's order: all that may be designed by. What is read
 * after it says how the work turned out: it moves no limit, no expected figure, no minute and no price.
 */
export const readingsBefore = <Kind extends Reading['kind']>(
  job: Pick<Job, 'readings'>,
  kind: Kind,
): readonly ReadingOf<Kind>[] =>
  job.readings.filter(
    (reading): reading is ReadingOf<Kind> => reading.kind === kind && reading.phase === 'before',
  );

/** One conductor of a circuit from end to end before the work, Ω: the latest by its day, ties by id; null where nobody read it. */
export function endToEndBefore(
  job: Pick<Job, 'readings'>,
  circuitId: string,
  loop: 'L' | 'N' | 'cpc',
): number | null {
  const latest = readingsBefore(job, 'loop')
    .filter(({ circuit, loop: of, from }) => circuit === circuitId && of === loop && from === 'end-to-end')
    .toSorted((a, b) => inIdOrder(a.takenOn ?? '', b.takenOn ?? '') || inIdOrder(a.id, b.id))
    .at(-1);
  return latest?.ohm ?? null;
}
