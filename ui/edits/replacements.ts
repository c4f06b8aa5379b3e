import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

type Named = Pick<Point, 'id' | 'label'>;

/** Lets go of whatever a point replaces: that one stays as it was, unless another replaces it too. */
function release(job: Job, point: Point): void {
  const { replaces } = point;
  if (replaces === undefined) return;
  delete point.replaces;
  const old = job.points.find(({ id }) => id === replaces);
  const isTaken = job.points.some((other) => other.replaces === replaces);
  if (old?.status === 'replaced' && !isTaken) old.status = 'existing';
}

/**
 * Says which point a wanted one replaces, or that it replaces none (null). The old point is marked as replaced;
 * the one that was to be replaced before stays.
 */
export const setReplaces = ({ id, label }: Named, old: Named | null): JobEdit => ({
  label: old === null ? `${label} replaces nothing` : `Replace ${old.label} by ${label}`,
  change: (job) => {
    const point = job.points.find((each) => each.id === id);
    if (point === undefined || old?.id === id) return;
    release(job, point);
    const found = old === null ? undefined : job.points.find((each) => each.id === old.id);
    if (found === undefined) return;
    point.replaces = found.id;
    found.status = 'replaced';
  },
});

/** Marks an existing point as to be taken away, or as to stay; what was to replace it replaces nothing. */
export const setTakenAway = ({ id, label }: Named, isTakenAway: boolean): JobEdit => ({
  label: isTakenAway ? `Take ${label} away` : `Leave ${label} where it is`,
  change: ({ points }) => {
    const point = points.find((each) => each.id === id);
    if (point === undefined || point.status === 'wanted') return;
    for (const other of points) if (other.replaces === id) delete other.replaces;
    point.status = isTakenAway ? 'removed' : 'existing';
  },
});
