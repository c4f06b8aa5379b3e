import type { Worked } from '../connections/worked.ts';
import { placesOfPoints } from './room-left.ts';

/**
 * What may be joined to the new points of a scheme in years to come, by the usual practice of one unfused spur at a point
 * of a ring and one outlet on such a spur. Points in the job's order; each wanted and wired point that is behind no fuse is in one of them.
 */
export interface AllowsLater {
  /** Points of a ring at which no spur begins: one may. */
  readonly takesSpur: readonly string[];
  /** Points of a ring at which one begins already. */
  readonly hasSpur: readonly string[];
  /** Points on an unfused spur: nothing may follow without a fuse. */
  readonly endsSpur: readonly string[];
  /** Points of a radial: it may be carried on from them within what its device and cable allow. */
  readonly carriesOn: readonly string[];
}

/** What each new point of a worked scheme allows to be joined on later. Points that are not wired are in no list. */
export function allowsLater(worked: Worked): AllowsLater {
  const placeOf = placesOfPoints(worked);
  const spurred = new Set(
    [...worked.shapes.values()].flatMap(({ spurs }) => spurs.map(({ rootNode }) => rootNode)),
  );
  const later: Record<keyof AllowsLater, string[]> = {
    takesSpur: [],
    hasSpur: [],
    endsSpur: [],
    carriesOn: [],
  };
  for (const { id, status } of worked.job.points) {
    const role = status === 'wanted' ? placeOf(id)?.role : undefined;
    if (role === 'ring' || role === 'claimed-ring') later[spurred.has(id) ? 'hasSpur' : 'takesSpur'].push(id);
    if (role === 'unfused-spur' || role === 'claimed-spur') later.endsSpur.push(id);
    if (role === 'radial') later.carriesOn.push(id);
  }
  return later;
}
