import { concealedCable } from '#data/standards/concealed-cable.ts';

type Figure = (typeof concealedCable.rows)[number]['figure'];

const mmOf = (figure: Figure): number =>
  concealedCable.rows.find((row) => row.figure === figure)?.mm ?? Number.POSITIVE_INFINITY;

/** Zone along the top of a wall and beside each inside corner, mm. Source: BS 7671 522.6.202. */
export const ZONE_MM = mmOf('zone');

/** Walls up to this thickness carry the zones of the accessories on their other side, mm. Source: BS 7671 522.6.202. */
export const THROUGH_WALL_MM = mmOf('through-wall');

/** Depth from either face of a wall at which no zone and no further protection is asked for, mm. Source: BS 7671 522.6.202. */
export const DEEP_IN_WALL_MM = mmOf('deep-in-wall');

/**
 * Least depth of a cable below the top of a joist, and above its underside where a ceiling is fixed there, mm.
 * Source: BS 7671 522.6.201.
 */
export const JOIST_COVER_MM = mmOf('joist-cover');
