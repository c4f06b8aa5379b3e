import type { AgreedTerms } from '../price/agreed-terms.ts';
import type { Complies } from '../schemes/estimate-result.ts';
import type { QuotationDocument } from './document.ts';

/** What decides it: `hourly` and `fixed` are the firm's word; the others how much is proven. */
export type KindReason = 'hourly' | 'fixed' | 'proven' | 'not-proven' | 'nothing-offered';

/** Whether a paper is a quotation or an estimate, why, and in the customer's words what that means. */
export interface KindOfPaper extends Pick<QuotationDocument, 'kind' | 'title' | 'kindWords'> {
  readonly reason: KindReason;
}

const words: Readonly<Record<KindReason, string>> = {
  fixed:
    'This is a quotation: a fixed price. If you accept it, this is what you pay for the work described here, and no more unless you agree a change in writing first.',
  proven:
    'This is a quotation: a fixed price. If you accept it, this is what you pay for the work described here, and no more unless you agree a change in writing first.',
  hourly:
    'This is an estimate: our best reckoning, not a fixed price. You pay for the hours the work takes and the materials it uses, at the rates shown here. We tell you before it goes above the upper figure, and go on only if you agree.',
  'not-proven':
    'This is an estimate: our best reckoning, not a fixed price, because some of your wiring has not been looked at yet and the work may have to be done another way. Once it has been looked at we can give you a fixed price. Nothing is charged above the upper figure unless you agree to it first.',
  'nothing-offered': 'Nothing is priced yet.',
};

function reasonOf(charging: AgreedTerms['charging'], complies: readonly Complies[]): KindReason {
  if (complies.length === 0) return 'nothing-offered';
  if (charging !== null) return charging;
  return complies.every((each) => each === 'yes') ? 'proven' : 'not-proven';
}

/**
 * A price is a quotation where the firm says that it holds to it, or says nothing and every way that is offered is proven;
 * it is an estimate where the firm charges by the hour, or where a way is not proven and may have to change.
 * Source of the two names: a quotation binds as a fixed price once it is accepted, an estimate is a best guess
 * (rcsolicitors.co.uk, "Quote or estimate?"); the rule between them is this program's.
 */
export function kindOfPaper(
  { charging }: Pick<AgreedTerms, 'charging'>,
  complies: readonly Complies[],
): KindOfPaper {
  const reason = reasonOf(charging, complies);
  const fixed = reason === 'fixed' || reason === 'proven';
  return {
    kind: fixed ? 'quotation' : 'estimate',
    title: fixed ? 'Quotation' : 'Estimate',
    kindWords: words[reason],
    reason,
  };
}
