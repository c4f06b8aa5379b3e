import type { QuotationDocument } from './document.ts';

/** What the sums of a paper are headed with. */
export interface SumHeads {
  /** Of the sum that VAT comes on top of; null: there is none, since none is charged. */
  readonly net: string | null;
  /** Of the sum that is paid. */
  readonly gross: string;
  /** Of a sum that stands alone, in a table. */
  readonly alone: string;
  /** After a sum in a sentence: ", VAT included"; empty where none is charged. */
  readonly after: string;
}

/**
 * The heads of the sums of a paper. Where no VAT is charged nothing is said of it beside sums: the sentence under the
 * price says why. Papers frozen before they told so have it beside every sum.
 */
export function sumHeads({ kind, schemes }: Pick<QuotationDocument, 'kind' | 'schemes'>): SumHeads {
  const hasVat = schemes.every(({ price }) => price.withoutVat !== true);
  const estimated = hasVat ? 'Estimated, with VAT' : 'Estimated';
  return {
    net: hasVat ? 'Price without VAT' : null,
    gross: kind === 'quotation' ? 'To pay' : estimated,
    alone: hasVat ? 'Price with VAT' : 'Price',
    after: hasVat ? ', VAT included' : '',
  };
}
