import type { Job } from '#model/job.ts';
import type { Worked } from '../../connections/worked.ts';
import { storeysNotTried } from '../../survey/void-asks.ts';
import type { OpenMatter } from './open-matter.ts';

/** The floors that new cable runs under and that nobody has tried to lift; by storey. */
export function floorMatters(worked: Worked): readonly OpenMatter[] {
  return storeysNotTried(worked).map((storeyId): OpenMatter => {
    const name = worked.job.storeys.find(({ id }) => id === storeyId)?.name ?? storeyId;
    return {
      id: `floor/${storeyId}`,
      kind: 'floor',
      subjects: [storeyId],
      words: `Does the floor lift: ${name}?`,
      outcomes: [
        { id: 'lifts', words: 'Yes: cable goes under it', change: {} },
        {
          id: 'stays',
          words: 'No: cable goes the next cheapest way',
          change: { job: (job) => withFixedFloor(job, storeyId) },
        },
      ],
    };
  });
}

const withFixedFloor = (job: Job, storeyId: string): Job => ({
  ...job,
  storeys: job.storeys.map((storey) =>
    storey.id === storeyId ? { ...storey, floor: { ...storey.floor, liftable: false } } : storey,
  ),
});
