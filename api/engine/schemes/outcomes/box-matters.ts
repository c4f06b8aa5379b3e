import type { Job } from '#model/job.ts';
import { STOCK_DEPTHS_MM } from '../../connections/box-depth.ts';
import type { BackBox } from '../../connections/things.ts';
import type { Worked } from '../../connections/worked.ts';
import { labelOfPoint, type OpenMatter } from './open-matter.ts';

const [SHALLOWEST_MM] = STOCK_DEPTHS_MM;

/** The back boxes that get another cable and that nobody has measured, where a shallow one would have to be exchanged, or framed; by id. */
export function boxMatters({ job, things }: Worked): readonly OpenMatter[] {
  return things.boxes.flatMap((box): readonly OpenMatter[] => {
    const { pointId } = box;
    if (box.action !== 'unknown' || pointId === null || box.minimumDepthMm <= SHALLOWEST_MM) return [];
    return [matterOf(job, box, pointId)];
  });
}

function matterOf(job: Job, { id, minimumDepthMm, frameMm }: BackBox, pointId: string): OpenMatter {
  return {
    id: `box/${id}`,
    kind: 'box',
    subjects: [id],
    words: `Is the back box of ${labelOfPoint(job, pointId)} deep enough?`,
    outcomes: [
      { id: 'deep', words: `${minimumDepthMm} mm or more: it stays`, change: {} },
      {
        id: 'shallow',
        words: `Less than ${minimumDepthMm} mm: ${frameMm === undefined ? 'a deeper one in its place' : 'a spacer frame over it'}`,
        change: { job: (surveyed) => withShallowBox(surveyed, pointId) },
      },
    ],
  };
}

/** The job with a box measured and found too shallow: at the point, and at the one whose place it takes. */
function withShallowBox(job: Job, pointId: string): Job {
  const own = job.points.find(({ id }) => id === pointId);
  return {
    ...job,
    points: job.points.map((point) =>
      point.id === pointId || point.id === own?.replaces
        ? {
            ...point,
            asFound: { ...point.asFound, boxDepthMm: SHALLOWEST_MM },
            certainty: { ...point.certainty, boxDepthMm: 'measured' },
          }
        : point,
    ),
  };
}
