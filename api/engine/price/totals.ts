import type { Overhead } from '#model/library.ts';
import type { ContingencyPart } from './contingency-parts.ts';
import type { Parking } from './parking.ts';
import type { OpenGap } from './survey-gaps-of.ts';
import type { VatClaim } from './vat-claim.ts';
import type { Visits } from './visits.ts';

/** A line of the bill as bought and charged. Money in whole pence, before mark-up and VAT. */
export interface BillLine {
  readonly item: string;
  readonly description: string;
  readonly group: string;
  readonly unit: string;
  /** What the job needs. */
  readonly quantity: number;
  /** Taken from the van's stock first. */
  readonly fromStock: number;
  readonly pricePence: number;
  readonly perQuantity: number;
  /** Sold in multiples of this; null: any quantity. */
  readonly packQuantity: number | null;
  /** What is charged: whole packs, or what was used. */
  readonly charge: 'packs' | 'used';
  readonly chargedQuantity: number;
  readonly costPence: number;
  /** False when the price list has no such item: it costs nothing here, and a finding says so. */
  readonly priced: boolean;
  readonly causes: readonly string[];
}

/** Selling figures of a scheme. The first four money figures add up to net. */
export interface Totals {
  readonly hours: number;
  readonly materialsPence: number;
  readonly labourPence: number;
  readonly otherPence: number;
  readonly contingencyPence: number;
  readonly netPence: number;
  readonly vatPence: number;
  readonly grossPence: number;
}

/** A sum that is neither material nor labour. */
export interface OtherLine {
  readonly sum: string;
  readonly description: string;
  readonly pence: number;
  /** The library has no such sum, so it counts as nothing; absent: it has. */
  readonly isUnpriced?: true;
}

/** How the totals came about, with every rate used. */
export interface PriceBuildUp {
  readonly bill: readonly BillLine[];
  readonly materialsCostPence: number;
  /** The mark-up as applied (a margin is converted: m = g / (1 − g)). */
  readonly markupPercent: number;
  readonly marginPercent: number | null;
  /** What mark-up or margin are put on: materials, or materials, labour, travel and overhead together. */
  readonly profitOn: 'materials' | 'all';
  /** What they add: within the materials, or as the line `profit`. */
  readonly profitPence: number;
  readonly labourMin: number;
  /** How often the job is travelled to: by the days that the work fills, and to come back for plaster. */
  readonly visits: Visits;
  /** What parking the job bears; null: none. */
  readonly parking: Parking | null;
  /** Travel of one visit, there and back, minutes. */
  readonly travelMin: number;
  readonly ratePencePerHour: number;
  /** Whether that rate is what is charged for an hour, or what it costs the firm. */
  readonly rateBasis: 'charged' | 'cost';
  readonly overhead: Overhead | null;
  /** What of it is in the price: the line `overhead`. */
  readonly overheadPence: number;
  /** What the job costs the firm, overhead and other sums included; null where nobody knows what an hour costs. */
  readonly costPence: number | null;
  /** What is left of the net sum over that cost, percent of it, the contingency being spent; below nought is a loss. */
  readonly jobMarginPercent: number | null;
  /** What was asked for and is not in the price, each with its reason, in sentences. */
  readonly refused: readonly string[];
  /** What is asked for before the work, of the sum with VAT; null: none. */
  readonly depositPence: number | null;
  readonly labourLevel: 'low' | 'typical' | 'high';
  readonly other: readonly OtherLine[];
  readonly contingencyPercent: number;
  /** `terms`: set by a person; `survey`: by how much of the job is assumed. */
  readonly contingencySource: 'terms' | 'survey';
  /** What of the scheme nobody has looked at, whatever the contingency goes by. */
  readonly surveyGaps: readonly OpenGap[];
  /** By the survey: what each gap makes of the contingency, adding up to it; none where a person set it. */
  readonly contingencyParts: readonly ContingencyPart[];
  readonly vatPercent: number;
  readonly vat: 'standard' | 'reduced' | 'zero' | 'not-registered';
  /** The condition of the rate, and whether it is claimed as it has to be. */
  readonly vatClaim: VatClaim;
  readonly totals: Totals;
}

/** The price at the low and the high end of what is assumed or unknown, VAT included. */
export interface PriceRange {
  readonly lowPence: number;
  readonly typicalPence: number;
  readonly highPence: number;
}
