import type { Pack } from '#model/library.ts';
import type { TakeoffGroup, TakeoffLine } from '../../takeoff/line.ts';

/** How a thing is handed over the counter, as the price list has it. */
export type PackKind = Pack['kind'];

/**
 * One way to buy an item. Quantities of what is sold by the metre are whole mm, all others in the line's unit;
 * money is whole thousandths of a penny, value added tax as the list has it.
 */
export interface Offer {
  /** Kind and quantity, `coil-25`; no two offers of an item share one. */
  readonly key: string;
  readonly kind: PackKind;
  readonly quantity: number;
  readonly millipence: number;
  /** Of `cut`: any multiple of `quantity` from here on, as one unbroken length, at so much a step. Null for the rest. */
  readonly least: number | null;
}

/** So many of an offer; of a cut length the steps. Whole pence, rounded half up once. */
export interface BoughtPacks {
  readonly offer: Offer;
  readonly count: number;
  readonly pence: number;
}

/** One unbroken length and what is cut from it, the longest piece first. Whole mm. */
export interface CutFrom {
  /** `van/1`, `coil-25/1`, `cut-1/1`: the offer, and which of them. */
  readonly from: string;
  readonly lengthMm: number;
  readonly cuts: readonly { readonly cause: string; readonly lengthMm: number }[];
  readonly leftMm: number;
}

/** What would have done, had the pieces been so much shorter. */
export interface NearMiss {
  /** "25 m coil". */
  readonly words: string;
  readonly shortMm: number;
  readonly wouldSavePence: number;
}

/** Whether nothing cheaper serves; else what no plan can be below, and by which share of that this one is dearer. */
export interface Proof {
  readonly optimal: boolean;
  readonly boundPence: number;
  /** 0 where it is proved; null where nothing can be said: no price, or a bound of nothing. */
  readonly gap: number | null;
}

/** How one line of the take-off is bought. Quantities in the line's unit, money as the firm pays it, tax as the list has it. */
export interface PurchaseLine {
  readonly item: string;
  readonly description: string;
  readonly group: TakeoffGroup;
  readonly unit: TakeoffLine['unit'];
  /** The counter that the price list names; empty where it names none. */
  readonly counter: string;
  /** What is cut to length is the sum of its pieces, waste in them; all else the line's quantity. */
  readonly needed: number;
  readonly fromVan: number;
  readonly packs: readonly BoughtPacks[];
  readonly boughtQuantity: number;
  /** Of what is bought. */
  readonly leftOver: number;
  readonly pence: number;
  /** False when the price list has no such item in this unit: nothing is bought, and a finding says so. */
  readonly priced: boolean;
  /** Van's lengths, coils, then cut lengths; only what something is cut from. Empty where nothing is cut to length. */
  readonly cuts: readonly CutFrom[];
  /** Pieces that no length on the list, nor in the van, is long enough for: nothing is bought for them. Of what is not priced all that the van lacks. */
  readonly unserved: readonly { readonly cause: string; readonly lengthMm: number }[];
  /** The nearest first. */
  readonly nearMisses: readonly NearMiss[];
  readonly proof: Proof;
  readonly causes: readonly string[];
}

/** What the firm buys for a scheme, after the van. */
export interface PurchasePlan {
  /** By counter, lines without one last, then as in the bill. */
  readonly lines: readonly PurchaseLine[];
  readonly pence: number;
  /** Whether every priced line is proved to be the cheapest. */
  readonly proved: boolean;
}
