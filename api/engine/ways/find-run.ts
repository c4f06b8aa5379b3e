import { cheapestPath } from './cheapest-path.ts';
import { pinnedPath } from './pinned-path.ts';
import type { FindRun } from './route.ts';
import { stepsOf } from './steps.ts';

/**
 * The plain way to find a path: by waypoints pinned by hand where there are any, else the cheapest of a few
 * usual ones. Stands behind `FindRun`, so that a search over a graph of the house can take its place.
 */
export const plainRoute: FindRun = (request) => {
  const segments = request.via.length > 0 ? pinnedPath(request) : cheapestPath(request);
  return { segments, steps: stepsOf(request.plan, segments) };
};
