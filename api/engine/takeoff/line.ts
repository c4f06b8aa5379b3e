/** Which counter or pile a line belongs to. */
export type TakeoffGroup =
  | 'cable'
  | 'accessories'
  | 'protection'
  | 'joints'
  | 'boxes'
  | 'containment'
  | 'fixings'
  | 'making-good'
  | 'sundries'
  | 'papers';

/** A length that must be cut as one: a run, a flex, a stretch of tube. Net: waste comes on top when it is cut. */
export interface Piece {
  /** The thing that it is for, the first by id where several share it. */
  readonly cause: string;
  readonly lengthMm: number;
  /** By the low and the high ends of what is assumed. */
  readonly lowMm: number;
  readonly highMm: number;
  /** False for tube, capping, channel and conduit, which may be put together where they are longer than what is sold. */
  readonly unbroken: boolean;
}

/** One thing that has to be in the van, with what caused it. */
export interface TakeoffLine {
  /** The catalogue's item id, as the price list names it. */
  readonly item: string;
  readonly description: string;
  readonly group: TakeoffGroup;
  readonly unit: 'each' | 'm' | 'kg' | 'set';
  /** Counted or measured from the drawing. */
  readonly measured: number;
  readonly wastePercent: number;
  /** measured + waste, rounded up to whole pieces for `each` and `set`, to 0.1 for m and kg. */
  readonly quantity: number;
  /** The same by the low and the high ends of what is assumed. */
  readonly lowQuantity: number;
  readonly highQuantity: number;
  /** What is cut, the longest first, then by cause; they add up to `measured`. Empty where nothing is cut to length. */
  readonly pieces: readonly Piece[];
  /** Ids of points, runs, joints, boxes, units, remedies and tasks, sorted. */
  readonly causes: readonly string[];
}
