import type { Standing, VariationStanding } from '#engine/quotation/standing.ts';
import type { QuotationEvent } from '#model/quotation-notes.ts';

/** A change of accepted work, and what was said of it. */
export interface VariationRecord extends VariationStanding {
  /** From 1, in its quotation. */
  readonly number: number;
  readonly offeredAt: string;
  readonly reason: string;
  readonly beforePence: number;
  readonly afterPence: number;
  /** They add up to the difference. */
  readonly parts: readonly { readonly words: string; readonly pence: number }[];
  /** What is done otherwise, in the customer's words; null: it was not written down. */
  readonly work: { readonly before: readonly string[]; readonly now: readonly string[] } | null;
  /** Ids of photos. */
  readonly photos: readonly string[];
}

/** A quotation as the server tells it. */
export interface QuotationRecord extends Omit<Standing, 'variations'> {
  readonly id: string;
  /** Of its history, for what is noted next. */
  readonly etag: string;
  readonly revision: number;
  readonly date: string;
  readonly issuedAt: string;
  readonly heading: string;
  readonly validUntil: string | null;
  readonly offers: readonly {
    readonly schemeId: string;
    readonly name: string;
    readonly grossPence: number;
  }[];
  readonly engine: string;
  /** What was erased of it: whose it was, or all that it said; null: nothing. */
  readonly lessened: { readonly what: 'customer' | 'whole'; readonly at: string } | null;
  readonly events: readonly QuotationEvent[];
  /** By number. */
  readonly variations: readonly VariationRecord[];
}
