import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { Job } from '#model/job.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { spursOf } from '#tests/houses/spurs-of.ts';
import { growthExponent, medianOf, timed } from '../growth.ts';
import type { FigureGroup } from '../measuring.ts';

const ROOMS = [5, 10, 20, 40];
const WANTED = 4;

/** An invented house with a scheme of spurs. */
function houseWithScheme(seed: number, rooms: number): Job {
  const job = houseOf({ seed, rooms, wanted: WANTED });
  return { ...job, schemes: [spursOf(job)] };
}

/** How a whole estimate grows with the house. */
export const growthFigures: FigureGroup = {
  name: 'growth',
  measure: ({ rounds }) => {
    const library = demoLibrary();
    const msOf = (rooms: number, seed: number): number => {
      const job = houseWithScheme(seed, rooms);
      return timed(() => estimate(job, library, { date: '2026-11-27', revision: 1 })).ms;
    };
    // Once for nothing, so that the first size does not pay for the compiler.
    for (const rooms of ROOMS) msOf(rooms, 1000);
    // Each round has houses of its own; sizes come by turns.
    const times = Array.from({ length: rounds }, (_, round) => ROOMS.map((rooms) => msOf(rooms, round + 1)));
    const samples = ROOMS.map((size, i) => ({ size, ms: medianOf(times.map((each) => each[i] ?? 0)) }));
    return { estimateGrowthExponent: growthExponent(samples) };
  },
};
