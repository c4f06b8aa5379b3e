import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';

/** A scheme in which each wanted point hangs on a spur from the outlet nearest to it, each outlet taken once. */
export function spursOf(job: Job): Scheme {
  const { positionOfPoint } = buildPlan(job);
  const taken = new Set<string>();
  const outlets = job.points.filter(({ status }) => status === 'existing');
  const connections = job.points.flatMap(({ id: to, status }): readonly Connection[] => {
    const at = positionOfPoint.get(to);
    if (status !== 'wanted' || at === undefined) return [];
    const far = (id: string): number => {
      const other = positionOfPoint.get(id);
      if (other === undefined || other.storeyId !== at.storeyId || taken.has(id))
        return Number.POSITIVE_INFINITY;
      return Math.hypot(other.at[0] - at.at[0], other.at[1] - at.at[1]);
    };
    const [nearest] = outlets.toSorted((a, b) => far(a.id) - far(b.id));
    if (nearest === undefined || !Number.isFinite(far(nearest.id))) return [];
    taken.add(nearest.id);
    return [{ id: `spur-${to}`, kind: 'spur', from: { point: nearest.id }, to }];
  });
  return { id: 'spurs', name: 'Spurs', connections, remedies: [], locks: [] };
}
