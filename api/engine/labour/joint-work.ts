import type { Leg } from '#model/installation.ts';
import type { Worked } from '../connections/worked.ts';
import { type Amount, certain } from './amount.ts';

/** Whether somebody has followed the cable: a drawn way that is not named counts as seen. */
function routeIsKnown(leg: Leg | undefined): boolean {
  if (leg?.via === undefined) return false;
  const route = leg.certainty?.route ?? 'seen';
  return route === 'seen' || route === 'measured';
}

/** New joints; a leg whose way is only assumed is located and identified once before it is cut. */
export function jointWork({ things, job }: Worked): readonly Amount[] {
  const joints = things.joints.filter(({ state }) => state === 'new');
  const legIds = [...new Set(joints.flatMap(({ legId }) => legId ?? []))];
  const legById = new Map(job.legs.map((leg) => [leg.id, leg]));
  return [
    ...joints.map(({ id }) => certain('fit-joint', id)),
    ...legIds.filter((id) => !routeIsKnown(legById.get(id))).map((id) => certain('locate-leg', id)),
  ];
}
