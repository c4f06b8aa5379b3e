import type { QuotedForm, QuotedParty, QuotedPassage } from './document.ts';

/** A line of what a change comes to, as printed. */
export interface VariedSum {
  readonly words: string;
  /** With its sign where it is a change: "+£35.76". */
  readonly sumWords: string;
  readonly isSum: boolean;
}

/**
 * A change of agreed work as the customer reads it: plain data, every word as printed. Its photos are not in it: whoever lays
 * it out has them by their numbers, from 1.
 */
export interface VariationDocument {
  /** "Variation 1". */
  readonly title: string;
  readonly number: number;
  readonly jobTitle: string;
  readonly reference: string;
  /** The day that it was put to the customer, ISO. */
  readonly date: string;
  readonly dateWords: string;
  /** What it changes: "Of quotation RW-0001, revision 2, 26 November 2026, accepted on 27 November 2026: Option A, branch cables". */
  readonly ofWords: string;
  /** What is said of an invented firm and its prices; null: nothing is invented. */
  readonly demoNote: string | null;
  readonly firm: QuotedParty;
  readonly customer: QuotedParty;
  readonly place: readonly string[];
  /** How it stands: waits for an answer, agreed, refused, withdrawn. */
  readonly statusWords: string;
  /** What was found, in a person's words. */
  readonly found: QuotedPassage;
  /** What is done otherwise than agreed; null: nothing, or it was not written down. */
  readonly work: QuotedPassage | null;
  /** Heading of the sums. */
  readonly priceHeading: string;
  /** Its causes, then the difference, then the work agreed before it and with it; VAT in all of them. */
  readonly sums: readonly VariedSum[];
  readonly vatWords: string;
  readonly howPriced: string;
  readonly photosHeading: string;
  /** Where the customer says yes; what was recorded already stands in its lines. */
  readonly acceptance: QuotedForm;
  readonly cautions: readonly string[];
}
