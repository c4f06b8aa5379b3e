import type { Job } from '#model/job.ts';
import { nextLabel } from '../edits/next-label.ts';
import type { ThreeJobs } from './belongs-together.ts';

/**
 * Points that both people added may have got one label, the next that was free to each: mine then go on from theirs, so that
 * no two points of a plan have the same. What stood before, and what they added, keeps its label.
 */
export function withMergedLabels(merged: Job, { base, theirs }: ThreeJobs): Job {
  const known = new Set([...base.points, ...theirs.points].map(({ id }) => id));
  const taken = new Set(merged.points.flatMap(({ id, label }) => (known.has(id) ? [label] : [])));
  const isTwice = (point: Job['points'][number]): boolean => !known.has(point.id) && taken.has(point.label);
  if (!merged.points.some(isTwice)) return merged;
  let points = merged.points;
  for (const [index, point] of merged.points.entries())
    if (isTwice(point))
      points = points.with(index, { ...point, label: nextLabel(points, point.status === 'wanted') });
  return { ...merged, points };
}
