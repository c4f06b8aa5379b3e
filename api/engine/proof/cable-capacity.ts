/** The stretch of a cable that can carry least. */
export interface WorstStretch {
  /** Amperes after all factors. */
  readonly izA: number;
  /** Reference method there: C, A, B, 100, 101, 102, 103. */
  readonly method: string;
  /** Index of the segment in the run, and where it starts along the cable. */
  readonly worstSegment: number;
  readonly worstFromMm: number;
  /** Grouping factor that counted there, 1 when none. */
  readonly groupFactor: number;
  /** Factor for thermal insulation all round the cable that counted there, 1 when none. */
  readonly insulationFactor: number;
  /** Factor for warmer or cooler air than 30 °C that counted there; absent: 1. */
  readonly ambientFactor?: number;
  /** Grade of the table cell: seen on a published page, or from memory. */
  readonly grade: 'seen' | 'memory';
}

/** What a cable may carry: what is sure of it, and what it may carry at the best by what is told. */
export interface CableCapacity {
  /** Run id for new cable; for cable found its edge: the leg, or the part of a leg that stays. */
  readonly id: string;
  /** What it carries whatever the survey left open, A; null when some stretch cannot be judged at all. */
  readonly izA: number | null;
  /** Of the stretch that gives `izA`; null (factors 1) without one. */
  readonly method: string | null;
  readonly worstSegment: number | null;
  readonly worstFromMm: number | null;
  readonly groupFactor: number;
  readonly insulationFactor: number;
  readonly ambientFactor?: number;
  readonly grade: 'seen' | 'memory' | null;
  /**
   * The kinder end, where the survey leaves some stretch open: the least by the kindest method that each may
   * have, stretches of which nothing can be said left out. It never proves a cable, but it can fail one.
   */
  readonly atBest?: WorstStretch;
  /**
   * Of a cable found in a tube or channel in which the scheme changes the number of cables: what it carried
   * before, by the same stretches. Absent where nothing changes.
   */
  readonly asFound?: CableCapacity;
}
