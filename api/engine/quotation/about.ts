import type { Job, Quoting } from '#model/job.ts';
import type { Firm } from '#model/library.ts';
import type { QuotationDocument, QuotedPassage } from './document.ts';

/** The firm's own words as a sentence of the paper. */
const sentence = (label: string, words: string | undefined): readonly string[] =>
  words === undefined || words.trim() === '' ? [] : [`${label}: ${words.trim()}`];

const RIGHT =
  'the law gives you the right to work done with reasonable care and skill, and to have it put right or pay less if it is not.';

/**
 * What the law gives a consumer whatever the paper says; a business has no such right by it, and where nobody has said which
 * the customer is, the sentence says of whom it holds.
 * Source: Consumer Rights Act 2015, sections 2, 49 and 54 to 56 (who is a consumer; care and skill, and what follows where
 * it is missing).
 */
function rightSaid(customer: Quoting['customer']): readonly string[] {
  if (customer === 'business') return [];
  return [`Whatever is said here, ${customer === 'consumer' ? '' : 'if you are a consumer '}${RIGHT}`];
}

/**
 * What else a customer wants to know of the firm: its scheme, insurance, guarantee, complaints; and whether it is
 * registered for VAT. What it has not said is left out, but for the rights that the law gives a consumer anyhow.
 *
 * @param quoting who the customer is, as far as somebody said so.
 */
export function aboutOf(firm: Firm, registered: boolean, quoting: Quoting | undefined): QuotedPassage {
  return {
    heading: 'About us',
    paragraphs: [
      ...sentence('Registered with', firm.scheme),
      ...(registered ? [] : ['We are not registered for VAT.']),
      ...sentence('Insurance', firm.insurance),
      ...sentence('Guarantee', firm.guarantee),
      ...rightSaid(quoting?.customer),
      ...sentence('If you are not content', firm.complaints),
    ],
  };
}

/** By which rules the work is designed, for somebody who has no copy of them; what was not looked at is said. */
export const rulesWords = (edition: string): string =>
  `The work is designed to the wiring rules, ${edition}. The figures behind it are from public sources of earlier amendments; what the latest changes here is checked by whoever does the work.`;

/** When the work can begin, and what else the firm says to this customer. */
export const ownWords = ({ quoting }: Pick<Job, 'quoting'>): readonly string[] => [
  `When we can begin: ${quoting?.start?.trim() || 'to be agreed'}`,
  ...(quoting?.remarks === undefined ? [] : [quoting.remarks]),
];

/** The usual cautions, for somebody who lives where the work is done. Common practice, no source. */
export const customerCautions: readonly string[] = [
  'Electricity can kill and burn. Keep children and pets away from where we work, and touch no wire, box or open plate.',
  'Leave the fuse box alone while we work: a switch turned on by somebody else can kill.',
  'Afterwards do not drill or nail straight above, below or beside a socket or switch: the cables run there.',
  'This paper is an offer, not a certificate. Nothing in it says that the wiring of the house is safe: that takes an inspection and tests on the spot.',
];

/** The lines that a customer fills in to accept. */
export function acceptanceOf(
  { kind, validWords }: Pick<QuotationDocument, 'kind' | 'validWords'>,
  letters: readonly string[],
  firm: Firm,
): QuotationDocument['acceptance'] {
  const which = letters.length < 2 ? [] : [{ label: `Which option (${letters.join(', ')})`, value: '' }];
  return {
    heading: 'To accept',
    intro: [
      `${validWords}. Sign and send this back, or write to us that you accept: ${firm.email ?? firm.contact}.`,
      ...(kind === 'estimate' ? ['By this you agree to be charged as the estimate says.'] : []),
    ],
    lines: [
      ...which,
      { label: 'Extras wanted, if any', value: '' },
      { label: 'Name', value: '' },
      { label: 'Signature', value: '' },
      { label: 'Date', value: '' },
    ],
  };
}
