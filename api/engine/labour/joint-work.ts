import type { Worked } from '../connections/worked.ts';
import { isFollowed } from '../plan/is-followed.ts';
import { type Amount, certain } from './amount.ts';

/** New joints; a leg whose way is only assumed is located and identified once before it is cut. */
export function jointWork({ things, job }: Worked): readonly Amount[] {
  const joints = things.joints.filter(({ state }) => state === 'new');
  const legIds = [...new Set(joints.flatMap(({ legId }) => legId ?? []))];
  const legById = new Map(job.legs.map((leg) => [leg.id, leg]));
  return [
    ...joints.map(({ id }) => certain('fit-joint', id)),
    ...legIds.filter((id) => !isFollowed(legById.get(id))).map((id) => certain('locate-leg', id)),
  ];
}
