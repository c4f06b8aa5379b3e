import type { TakeoffGroup, TakeoffLine } from '../../takeoff/line.ts';
import type { CutFrom, NearMiss, PackKind } from '../buying/purchase.ts';

/** Where a thing is had: out of the van, over a counter, or wherever somebody sells it, since the price list does not. */
export type ShoppingPlace = 'van' | 'counter' | 'unlisted';

/** So many of one size of a thing, as they are asked for. */
export interface Ask {
  readonly kind: PackKind;
  readonly count: number;
  /** What one of them holds or measures, in the entry's unit; 1 of what is sold singly. */
  readonly quantity: number;
  /** How many, in words without the thing's name: "1 coil of 25 m", "12 m in one length", "4". */
  readonly words: string;
  /** The merchant's number for this size; empty where the list tells none. */
  readonly code: string;
}

/** One thing on the list, to be ticked once. Quantities in its unit. */
export interface ShoppingEntry {
  /** Where and what: `counter/socket-twin`; no two entries of a list share one, and it stays when quantities change. */
  readonly key: string;
  readonly place: ShoppingPlace;
  readonly item: string;
  readonly description: string;
  readonly group: TakeoffGroup;
  readonly unit: TakeoffLine['unit'];
  /** What to ask for or take, the largest first; at least one. */
  readonly asks: readonly Ask[];
  /** The merchant's words for it; empty where the list tells none. */
  readonly supplierWords: string;
  /** What the job uses of this entry; with those of the item's other entries all that it needs. */
  readonly used: number;
  /** What is left of what is asked for; of the van 0, since it was there before. */
  readonly leftOver: number;
  /** The firm's outlay, tax as the list has it; null where nothing is paid or no price is known. */
  readonly pence: number | null;
  /** The lengths of this entry and what is cut from each; empty where nothing is cut to length. */
  readonly cuts: readonly CutFrom[];
  /** Of a counter's entry: what would have done, had the pieces been shorter. */
  readonly nearMisses: readonly NearMiss[];
  /** What it is for: ids of points, runs, joints, boxes, units, remedies and tasks, sorted. */
  readonly causes: readonly string[];
}

/** What is had in one place. */
export interface ShoppingGroup {
  /** `van`, `counter/<merchant>/<counter>`, `unlisted`. */
  readonly key: string;
  readonly place: ShoppingPlace;
  /** The merchant and the counter that the price list names; empty where it names none. */
  readonly supplier: string;
  readonly counter: string;
  /** In words: "Take from the van", "Wiring accessories", "Not on the price list". */
  readonly title: string;
  /** As in the bill; at least one. */
  readonly entries: readonly ShoppingEntry[];
  /** What is paid there, tax as the list has it. */
  readonly pence: number;
}

/** What to take along and to buy for a scheme, as people go for it. */
export interface ShoppingList {
  /** The van, then by merchant and counter, those without a name last, then what the list does not hold. */
  readonly groups: readonly ShoppingGroup[];
  readonly pence: number;
  /** Whether the pence have value added tax in them. */
  readonly vat: 'excluded' | 'included';
}
