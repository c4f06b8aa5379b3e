import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import type { MoneyMoved } from '#engine/quotation/money-moved.ts';
import type { Variation } from '#engine/quotation/variation.ts';
import type { WorkMoved } from '#engine/quotation/work-said.ts';
import type { QuotationNote } from '#model/quotation-notes.ts';
import type { QuotationRecord } from './quotation-record.ts';

/** A photo that goes with a variation that is being made. */
export interface DraftPhoto {
  /** Shows it from this device. */
  readonly url: string;
  readonly file: Blob;
  /** By which the device keeps it, and the server once it has it: the SHA-256 of its bytes. */
  readonly id: string;
}

/** What has moved in an offered scheme since it was quoted; `moved` null: the scheme is no longer in the job. */
export interface OfferMoved {
  readonly schemeId: string;
  readonly moved: MoneyMoved | null;
}

/** A quotation as it was issued, to be read. */
export interface ReadQuotation {
  readonly id: string;
  readonly paper: QuotationDocument;
  readonly drawings: QuotationDrawings;
}

/** A change of agreed work: what it comes to, and what is done otherwise. */
export interface Varied extends Variation {
  readonly work: WorkMoved;
}

/** What the quotations of a job are shown from; replaced whole at each change. */
export interface QuotationsView {
  readonly state: 'fetching' | 'there' | 'not-reached';
  /** The first one first. */
  readonly quotations: readonly QuotationRecord[];
  /** True while something is being sent. */
  readonly busy: boolean;
  /** Why the last thing asked for was not done; empty: it was. */
  readonly trouble: string;
  /** Of the newest quotation while it is not accepted, offer by offer; null while it is worked out, or there is none. */
  readonly moved: readonly OfferMoved[] | null;
  /** Of an accepted one: what the job has changed by since it was agreed; null while it is worked out, or cannot be. */
  readonly variation: Varied | null;
  /** True while either is being worked out. */
  readonly working: boolean;
  /** What is typed of a variation, and its photos; kept until it is offered. */
  readonly reason: string;
  readonly photos: readonly DraftPhoto[];
  /** The one that is being read as it was issued; null: none. */
  readonly read: ReadQuotation | null;
}

/** What is asked for of a job's quotations. */
export type QuotationAsk =
  | { readonly do: 'issue' }
  | { readonly do: 'look-again' }
  /** Read one as it was issued; null: put it away. */
  | { readonly do: 'read'; readonly quotationId: string | null }
  | { readonly do: 'note'; readonly quotationId: string; readonly note: QuotationNote }
  /** Take out all that one said. */
  | { readonly do: 'erase'; readonly quotationId: string }
  /** Take the customer out of the job and its papers. */
  | { readonly do: 'forget' }
  | { readonly do: 'type-reason'; readonly reason: string }
  | { readonly do: 'add-photo'; readonly file: Blob }
  | { readonly do: 'drop-photo'; readonly url: string }
  | { readonly do: 'vary'; readonly quotationId: string };
