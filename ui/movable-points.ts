import type { JobView } from './job-view.ts';

/** The points that may be dragged in this step: what was found while finding, what is wanted while planning. */
export function movablePoints({ job, step }: Pick<JobView, 'job' | 'step'>): ReadonlySet<string> {
  const status = { 'as-found': 'existing', wanted: 'wanted', ways: 'wanted' } as const;
  if (step !== 'as-found' && step !== 'wanted' && step !== 'ways') return new Set();
  return new Set(job.points.filter((point) => point.status === status[step]).map(({ id }) => id));
}
