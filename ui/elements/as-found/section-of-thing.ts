import type { Job } from '#model/job.ts';

/** The parts of the survey, in the order of a walk through a house. */
export type FoundSection = 'house' | 'rooms' | 'supply' | 'circuits' | 'points' | 'cables' | 'readings';

/** The part of the survey in which a thing is told of; null for what is not of the survey. */
export function sectionOfThing(job: Job, id: string): FoundSection | null {
  const holds = (things: readonly { readonly id: string }[]): boolean =>
    things.some((thing) => thing.id === id);
  if (id === 'site' || holds(job.storeys)) return 'house';
  if (job.storeys.some(({ rooms, walls }) => holds(rooms) || holds(walls))) return 'rooms';
  if (id === 'supply' || holds(job.boards)) return 'supply';
  if (holds(job.circuits)) return 'circuits';
  if (job.points.some((point) => point.id === id && point.status !== 'wanted')) return 'points';
  if (holds(job.legs)) return 'cables';
  return holds(job.readings) ? 'readings' : null;
}
