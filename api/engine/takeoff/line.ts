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
  /** Ids of points, runs, joints, boxes, units, remedies and tasks, sorted. */
  readonly causes: readonly string[];
}
