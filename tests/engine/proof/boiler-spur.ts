import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { pointOf } from '../rules/facts-builder.ts';
import { ringOf, wiredJob } from './wired-job.ts';

/** A ring with a wanted boiler of 150 W on a fused unit whose fuse nobody has chosen, in scheme `s`. */
export function boilerSpur(partial: Partial<Point> = {}): Job {
  const job = wiredJob(ringOf([5, 5, 5, 5]));
  const boiler = pointOf('boiler', {
    status: 'wanted',
    kind: 'fused-unit',
    load: { use: 'Boiler', fixed: true, watts: 150 },
    ...partial,
  });
  const spur = { id: 'k1', kind: 'fused-spur', from: { point: 'p1' }, unit: 'boiler', feeds: [] } as const;
  return {
    ...job,
    points: [...job.points, boiler],
    schemes: [
      { id: 's', name: 'Fused spur', connections: [{ ...spur, feeds: [] }], remedies: [], locks: [] },
    ],
  };
}
