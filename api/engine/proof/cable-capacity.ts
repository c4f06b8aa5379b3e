/** What a cable may carry along its worst stretch. */
export interface CableCapacity {
  /** Run or leg id. */
  readonly id: string;
  /** Amperes after all factors; null when no figure is held for the cable or its method. */
  readonly izA: number | null;
  /** Reference method of the worst stretch: C, A, B, 100, 101, 102, 103. */
  readonly method: string | null;
  /** Index of the worst segment in the run, and where it starts along the cable. */
  readonly worstSegment: number | null;
  readonly worstFromMm: number | null;
  /** Grouping factor that counted there, 1 when none. */
  readonly groupFactor: number;
  /**
   * Where `izA` is null because only some stretches can be judged: the least of those that can. It never
   * proves a cable, but it can fail one.
   */
  readonly knownIzA?: number;
  /** Grade of the table cell: seen on a published page, or from memory. */
  readonly grade: 'seen' | 'memory' | null;
}
