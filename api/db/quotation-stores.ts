import type { QuotationEvent, QuotationNote } from '#model/quotation-notes.ts';
import type { Saved, Version } from './stores.ts';

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

/** Sentences on what is done: those that were agreed and no longer hold, and those in their place. */
export interface VariationWork {
  readonly before: readonly string[];
  readonly now: readonly string[];
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
  /** Null: it was not written down. */
  readonly work: VariationWork | null;
  /** Ids of assets. */
  readonly photos: readonly string[];
  readonly engine: string;
  readonly beforeJobRevision: number;
  readonly jobRevision: number;
}

/** What was taken out of something that was frozen: whose it was, or all that it said. */
export interface Lessened {
  readonly what: 'customer' | 'whole';
  /** ISO 8601 in UTC. */
  readonly at: string;
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
  /** Null: it is whole. */
  readonly lessened: Lessened | null;
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
  extends Omit<StoredQuotation, 'issuedAt' | 'jobRevision' | 'lessened' | 'events' | 'variations'> {
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

/** How texts go on without the customer: by whoever knows what they hold. */
export interface Lessening {
  readonly job: (text: string) => string;
  /** @param jobText the job file that the document was made from. */
  readonly document: (text: string, jobText: string) => string;
  readonly note: (note: QuotationEvent['note']) => QuotationEvent['note'];
  /** What stands as the reason of a variation. */
  readonly reason: string;
  /** What the list of jobs shows. */
  readonly heading: { readonly title: string; readonly customer: string };
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
  /** Writes a variation down and notes that it is offered; a photo of it that is not there any more counts as moved on. */
  offerVariation(jobId: string, seen: SeenQuotation, variation: NewVariation): Promise<Written>;
  /** Takes all that it said out of a quotation; its number, its days and what kind of things became of it stay. */
  erase(jobId: string, seen: SeenQuotation): Promise<Written>;
  /** Takes the customer out of the job, out of every kept state of it and out of its quotations; all of it or nothing. */
  forgetCustomer(jobId: string, how: { readonly base: Version; readonly lessen: Lessening }): Promise<Saved>;
}

/** A photo without its bytes. */
export interface StoredAsset {
  readonly id: string;
  readonly mediaType: string;
  readonly bytes: number;
}

/** What a removal of photos came to. */
export interface Swept {
  readonly removed: number;
  readonly bytes: number;
}

/** The photos of one firm, each kept once under the hash of its bytes. */
export interface AssetStore {
  keep(content: Uint8Array, mediaType: string): Promise<StoredAsset>;
  read(id: string): Promise<(StoredAsset & { readonly content: Uint8Array }) | null>;
  /** Those of the ids that are there. */
  known(ids: readonly string[]): Promise<ReadonlySet<string>>;
  /**
   * Removes photos that no kept state of a job, no quotation, no variation and no library refers to: those of some ids, or
   * those that were kept before a moment, ISO 8601 in UTC. What was sent just now may belong to something that is being made.
   */
  sweep(which: { readonly ids: readonly string[] } | { readonly keptBefore: string }): Promise<Swept>;
}
