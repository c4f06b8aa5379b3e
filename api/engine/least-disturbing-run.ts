import type { Waypoint } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { houseFor } from './schemes/house-for.ts';
import { isSameWay, pinOf, wayEndOf } from './schemes/search/pins.ts';
import { waysInHouse } from './schemes/search/ways-in-house.ts';
import type { Run } from './ways/run.ts';

/**
 * The way that disturbs the house least for one new cable of a scheme, money breaking ties: the corners to pin it by, from its
 * first end to its last.
 *
 * @returns null where the cable runs so already, and where an end has no place.
 */
export function leastDisturbingRun(job: Job, ofFirm: Library, run: Run): readonly Waypoint[] | null {
  const { house, library } = houseFor(job, ofFirm);
  const [from, to] = [wayEndOf(house.plan, run.from), wayEndOf(house.plan, run.to)];
  if (from === null || to === null) return null;
  const corners = pinOf({ house, ways: waysInHouse(house, library) }, from, to);
  return isSameWay(run, corners) ? null : corners;
}
