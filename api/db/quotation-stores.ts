import type { QuotationEvent, QuotationNote } from '#model/quotation-notes.ts';
import type { Version } from './stores.ts';

/** One scheme that a quotation offers, for the list. */
export interface QuotedOffer {
  readonly schemeId: string;
  readonly name: string;
  /** VAT included. */
  readonly grossPence: number;
}

/** One cause of what a variation costs. */
export interface VariationPart {
  readonly words: string;
  /** VAT included; below nought: cheaper. */
  readonly pence: number;
}

/** A change of accepted work as it was priced. */
export interface StoredVariation {
  readonly id: string;
  /** From 1, in its quotation. */
  readonly number: number;
  readonly offeredAt: string;
  readonly reason: string;
  readonly beforePence: number;
  readonly afterPence: number;
  readonly parts: readonly VariationPart[];
  /** Ids of assets. */
  readonly photos: readonly string[];
  readonly engine: string;
  readonly beforeJobRevision: number;
  readonly jobRevision: number;
}

/** A quotation without the texts that it froze. */
export interface StoredQuotation {
  readonly id: string;
  readonly jobId: string;
  readonly revision: number;
  readonly date: string;
  readonly issuedAt: string;
  readonly heading: string;
  readonly validUntil: string | null;
  readonly offers: readonly QuotedOffer[];
  readonly engine: string;
  readonly edition: string;
  readonly jobRevision: number;
  readonly libraryRevision: number;
  /** In the order in which things were noted. */
  readonly events: readonly QuotationEvent[];
  /** By their number. */
  readonly variations: readonly StoredVariation[];
}

/** The texts that a quotation froze. */
export const frozenTexts = ['document', 'drawings', 'job', 'library'] as const;
export type FrozenText = (typeof frozenTexts)[number];

/** A quotation and the last line of its history that somebody saw. */
export interface SeenQuotation {
  readonly id: string;
  readonly seq: number;
}

/** What a quotation is issued from. */
export interface NewQuotation
  extends Omit<StoredQuotation, 'issuedAt' | 'jobRevision' | 'events' | 'variations'> {
  /** The state of the job that counts; else nothing is issued. */
  readonly base: Version;
  readonly texts: Readonly<Record<FrozenText, string>>;
  /** The earlier ones that it takes the place of, as they were seen. */
  readonly replaces: readonly SeenQuotation[];
}

/** What a variation is offered from. */
export interface NewVariation extends Omit<StoredVariation, 'number' | 'offeredAt' | 'jobRevision'> {
  readonly base: Version;
  readonly jobText: string;
}

/** `moved-on`: job or quotations are no longer as they were seen, and nothing was written. */
export type Written = 'written' | 'moved-on';

/** The quotations of one firm. What is issued is frozen; everything later is added beside it. */
export interface QuotationStore {
  /** Those of a job by revision, the first one first. */
  list(jobId: string): Promise<readonly StoredQuotation[]>;
  read(jobId: string, id: string): Promise<StoredQuotation | null>;
  /** What it froze, to the byte. */
  readText(jobId: string, id: string, which: FrozenText): Promise<string | null>;
  /** The job file that a variation was priced as, to the byte. */
  readVariationJob(jobId: string, id: string, variationId: string): Promise<string | null>;
  /**
   * Writes it down whole, with its first event, and keeps the job's revision for good; all of it or nothing. A number
   * that is not the next one counts as moved on.
   */
  issue(quotation: NewQuotation): Promise<Written>;
  /** Adds a line to the history, after the last that was seen. */
  note(jobId: string, seen: SeenQuotation, note: QuotationNote): Promise<Written>;
  /** Writes a variation down and notes that it is offered. */
  offerVariation(jobId: string, seen: SeenQuotation, variation: NewVariation): Promise<Written>;
}

/** A photo without its bytes. */
export interface StoredAsset {
  readonly id: string;
  readonly mediaType: string;
  readonly bytes: number;
}

/** The photos of one firm, each kept once under the hash of its bytes. */
export interface AssetStore {
  keep(content: Uint8Array, mediaType: string): Promise<StoredAsset>;
  read(id: string): Promise<(StoredAsset & { readonly content: Uint8Array }) | null>;
  /** Those of the ids that are there. */
  known(ids: readonly string[]): Promise<ReadonlySet<string>>;
}
