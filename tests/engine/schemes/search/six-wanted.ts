import type { Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';

/** A job with six wanted points: more twin outlets, each a little further along the wall from one that is there. */
export function withSixWanted(job: Job): Job {
  const wanted = job.points.filter(({ status }) => status === 'wanted');
  const beside = job.points.flatMap(({ status, place }): readonly Place[] =>
    status === 'existing' && place !== undefined && 'wall' in place
      ? [{ ...place, alongMm: roomOnWall(job, place) }]
      : [],
  );
  const more = beside.slice(0, 6 - wanted.length).map(
    (place, i): Point => ({
      id: `more-${i + 1}`,
      label: `M${i + 1}`,
      status: 'wanted',
      kind: 'socket-twin',
      features: [],
      photos: [],
      place,
    }),
  );
  return { ...job, points: [...job.points, ...more], schemes: [] };
}

function roomOnWall({ storeys }: Job, place: Extract<Place, { wall: string }>): number {
  const wall = storeys.flatMap(({ walls }) => walls).find(({ id }) => id === place.wall);
  const [fromX, fromY] = wall?.from ?? [0, 0];
  const [toX, toY] = wall?.to ?? [0, 0];
  const longMm = Math.hypot(toX - fromX, toY - fromY);
  return place.alongMm + 700 < longMm ? place.alongMm + 600 : place.alongMm - 600;
}

/** The job with its last wanted point so much further along its wall; all else is the same objects. */
export function withLastMoved(job: Job, byMm: number): Job {
  const last = job.points.findLast(({ status, place }) => status === 'wanted' && place && 'wall' in place);
  return {
    ...job,
    points: job.points.map((point) =>
      point === last && point.place && 'wall' in point.place
        ? { ...point, place: { ...point.place, alongMm: point.place.alongMm + byMm } }
        : point,
    ),
  };
}
