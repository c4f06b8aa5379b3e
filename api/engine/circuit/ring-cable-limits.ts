/** Least capacity as installed of every cable of a ring and its unfused spurs. Source: BS 7671 433.1.204. */
export const RING_CABLE_A = 20;

/** Least copper area of a ring and its unfused spurs in flat twin cable. Source: BS 7671 433.1.204. */
export const RING_CABLE_MM2 = 2.5;
