import type { Floor } from '#model/building.ts';

/** How a floor is opened for a cable: the ids of the labour tasks. */
export type FloorOpening = 'lift-board' | 'chipboard-trap' | 'open-fixed-floor';

/** Coverings that do not come up whole. */
const fixed: readonly Floor['covering'][] = ['tile', 'wood'];

/** How a floor is opened; one that nobody has said of whether it lifts by its covering. */
export function floorOpening({ covering, liftable }: Floor): FloorOpening {
  if (liftable === false || (liftable === undefined && fixed.includes(covering))) return 'open-fixed-floor';
  return covering === 'chipboard' ? 'chipboard-trap' : 'lift-board';
}

/** A hand reaches this far to either side under a board that is up, mm. Common practice, no source. */
export const BOARD_REACH_MM = 600;
/** Across joists a board is lifted at least this often to drill and feed, mm. Common practice, no source. */
export const BOARD_ACROSS_MM = 2000;
/** Along a joist bay rods reach this far, mm. Common practice, no source. */
export const BOARD_ALONG_MM = 4000;
