import type { QuotationStatus, VariationStatus } from '#engine/quotation/standing.ts';

/** How a quotation stands, as people read it. */
export const statusWords: Readonly<Record<QuotationStatus, string>> = {
  issued: 'Issued, no answer yet',
  accepted: 'Accepted',
  declined: 'Declined',
  withdrawn: 'Withdrawn',
  replaced: 'Replaced by a later one',
};

/** How a variation stands, as people read it. */
export const variationWords: Readonly<Record<VariationStatus, string>> = {
  offered: 'Waits for the customer’s answer: do not go on with it',
  agreed: 'Agreed',
  refused: 'Refused: the work stays as it was agreed',
  withdrawn: 'Withdrawn',
};

/** A price against another, in words: "£12.40 dearer". */
export function dearer(pence: number, written: (pence: number) => string): string {
  if (pence === 0) return 'no dearer and no cheaper';
  return `${written(Math.abs(pence))} ${pence > 0 ? 'dearer' : 'cheaper'}`;
}
