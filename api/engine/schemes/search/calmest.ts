import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import { labourTasks } from '../../labour/labour-tasks.ts';
import { messPoints } from '../../labour/mess.ts';
import { kitCountsOf } from '../../takeoff/kit-counts.ts';
import { takeOff } from '../../takeoff/take-off.ts';
import { type House, workScheme } from '../work-scheme.ts';
import type { Looked, Passing } from './passing.ts';

/**
 * Of what was looked at by disturbance those that disturb least by the whole of their work, where openings that cables
 * share count once and a room is set up once; and the one that is proved by the additive measure. A step a scheme.
 */
export function* calmest(
  { house, library }: { readonly house: House; readonly library: Library },
  { passing }: Looked,
  most: number,
): Generator<null, readonly Passing[]> {
  const weighed: { readonly one: Passing; readonly points: number }[] = [];
  for (const one of passing) {
    weighed.push({ one, points: wholeMess(house, library, one.scheme) });
    yield null;
  }
  const calm = weighed
    .toSorted((a, b) => a.points - b.points || a.one.cost - b.one.cost)
    .slice(0, most)
    .map(({ one }) => one);
  const [proved] = passing;
  return proved === undefined || calm.includes(proved) ? calm : [proved, ...calm.slice(0, most - 1)];
}

/** The disturbance of a scheme as its estimate has it. */
function wholeMess(house: House, library: Library, scheme: Scheme): number {
  const worked = workScheme(house, scheme);
  const takeoff = takeOff(worked, library.norms.waste, kitCountsOf(library));
  return messPoints(labourTasks(worked, takeoff, library.norms), library.norms);
}
