import type { PackFor } from '#model/job.ts';
import type { PurchasePlan } from '../../price/buying/purchase.ts';
import type { TakeBack } from '../../price/packing/take-back.ts';
import type { KitDifference } from './kit-differences.ts';
import type { MatterKind } from './open-matter.ts';

/** What is to be bought for, question by question; of those not named what the scheme is counted by. */
export type PackChoice = readonly PackFor[];

/** The outcome that came true of each question by id; of those not named what is counted by. */
export type TurnedOut = Readonly<Record<string, string>>;

/** The id of the question which of the kept schemes is carried out; its outcomes are schemes. */
export const WHICH_SCHEME = 'scheme';

/** One outcome of a question, as the kit sees it. */
export interface OutcomeChoice {
  readonly id: string;
  readonly words: string;
  /** What it takes more or less than what is counted by, everything else as counted. */
  readonly kit: readonly KitDifference[];
  readonly isServed: boolean;
  /** What having it served too costs over not having it, all else as chosen; null for the only one that is served. */
  readonly addsPence: number | null;
}

/** Something that is open, and that what is bought hangs on. */
export interface OutcomeQuestion {
  readonly id: string;
  readonly kind: MatterKind | 'scheme';
  readonly subjects: readonly string[];
  readonly words: string;
  /** The first is what the scheme is counted by. */
  readonly outcomes: readonly OutcomeChoice[];
}

/** What is bought so that the job can be carried out however the chosen questions turn out. */
export interface OutcomePlan {
  readonly schemeId: string;
  /** Boxes, starts of cables, RCDs, RCBOs, surge protection, floors; then which scheme, where others are kept. */
  readonly questions: readonly OutcomeQuestion[];
  /** Cut lists are those of the case that leads: the first served outcome of each question. */
  readonly purchase: PurchasePlan;
  /** Over what the scheme takes as it is counted; below nought where something else is bought for in its stead. */
  readonly extraPence: number;
  /** What it would cost over that to have every outcome of every question served, the schemes as chosen. */
  readonly openPence: number;
  /** How many things of that more are in no price list, and so not in its sum. */
  readonly openUnpriced: number;
  /** Minutes of a trip to the merchant by the norms, and what they cost the firm's customer at the rate; null where no norm says. */
  readonly trip: { readonly minutes: number; readonly pence: number } | null;
}

/** What goes back for one way that it may turn out. */
export interface TakeBackFor extends TakeBack {
  readonly schemeId: string;
}
