import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** A point on its way, or where it was let go. */
export interface PointMove {
  readonly pointId: string;
  readonly place: Place;
  /** Counts drags: one drag is one step back. */
  readonly drag: number;
  readonly moving: boolean;
}

/** Moves a point over the plan; it keeps the height that it has. */
export function movePoint(job: Job, { pointId, place, drag, moving }: PointMove): JobEdit {
  const label = job.points.find(({ id }) => id === pointId)?.label ?? 'a point';
  return {
    label: `Move ${label}`,
    group: `move/${pointId}/${drag}`,
    moving,
    change: ({ points }) => {
      const point = points.find(({ id }) => id === pointId);
      if (point === undefined) return;
      point.place = { ...place, heightMm: point.place?.heightMm ?? place.heightMm };
    },
  };
}
