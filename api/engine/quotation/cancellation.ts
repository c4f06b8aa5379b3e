import { type CancellationFact, consumerCancellation } from '#data/standards/consumer-cancellation.ts';
import type { Quoting } from '#model/job.ts';
import type { Firm } from '#model/library.ts';
import type { CancellationNotice, QuotedParty, QuotedScheme } from './document.ts';
import { listed, pounds } from './said.ts';

const factOf = (fact: CancellationFact): number =>
  consumerCancellation.rows.find((row) => row.fact === fact)?.value ?? 0;

/** Days from an agreement in which a consumer may cancel it. */
export const CANCEL_DAYS = factOf('cancel-within-days');
const REFUND_DAYS = factOf('refund-within-days');
const LEAST_PENCE = factOf('least-pence');

/**
 * Whether the law may give a right to cancel. Where nobody has said who the customer is or where the agreement is made it
 * may, and the notice goes with the paper: to leave it out where it is due is an offence.
 *
 * @param grossPences of what is offered; none: nothing can be agreed yet.
 */
export function mayCancel(quoting: Quoting | undefined, grossPences: readonly number[]): boolean {
  if (grossPences.length === 0) return false;
  if (quoting?.customer === 'business' || quoting?.agreedAt === 'firms-premises') return false;
  const isSmall = grossPences.every((pence) => pence <= LEAST_PENCE);
  return !(isSmall && quoting?.agreedAt === 'customers-home');
}

/** Where the notice of a cancellation goes: what the firm has said, else its own address. */
const cancelTo = (firm: Firm): string =>
  firm.cancelTo ?? listedLines([firm.name, ...firm.address, firm.email ?? firm.contact]);

const listedLines = (lines: readonly string[]): string =>
  lines.filter((line) => line.trim() !== '').join(', ');

const depositSaid = (schemes: readonly QuotedScheme[]): string => {
  const deposits = [...new Set(schemes.flatMap(({ price }) => price.depositPence ?? []))];
  return deposits.length === 0 ? '' : ` A deposit (${listed(deposits.map(pounds))}) is among it.`;
};

/** Why the law gives the right, by what is known of the agreement. */
function because(quoting: Quoting | undefined): string {
  const consumer = quoting?.customer === 'consumer' ? '' : 'if you are a consumer ';
  const words =
    quoting?.agreedAt === undefined
      ? 'If you are a consumer and we agree at your home, by phone, by message or by post,'
      : quoting.agreedAt === 'customers-home'
        ? `Because we agree at your home, ${consumer}`
        : `Because we agree by phone, by message or by post, ${consumer}`;
  return words.trimEnd();
}

/** What a notice is made with. */
export interface ToNotify {
  readonly firm: Firm;
  readonly customer: QuotedParty;
  readonly reference: string;
  readonly quoting: Quoting | undefined;
  readonly schemes: readonly QuotedScheme[];
}

/**
 * The notice of the right to cancel, the form for it, and the request to begin sooner, for what is offered.
 * Source: SI 2013/3134: regulations 29, 30, 34 and 36, Schedule 2, and the items of the form in Schedule 3 part B, in our
 * own words and lay-out.
 */
export function cancellationOf({
  firm,
  customer,
  reference,
  quoting,
  schemes,
}: ToNotify): CancellationNotice {
  const to = cancelTo(firm);
  const blank = { value: '' };
  return {
    notice: {
      heading: 'Your right to cancel',
      paragraphs: [
        `${because(quoting)} you may cancel the agreement within ${CANCEL_DAYS} days without saying why. The ${CANCEL_DAYS} days begin on the day after we agree or, if that is later, on the day after the last of the materials has reached you.`,
        `To cancel, tell us clearly in writing before the ${CANCEL_DAYS} days are over: ${to}. You may use the form below, but need not. It is enough to send it in time.`,
        `If you cancel, we pay back all that you have paid, at the latest ${REFUND_DAYS} days after we hear of it, in the way that you paid and at no cost to you.${depositSaid(schemes)}`,
        `We begin within the ${CANCEL_DAYS} days only if you ask us to in writing. If you do and then cancel, you pay for what was done up to then, in proportion to the whole price. Once all of the work is done at your request, you can no longer cancel.`,
      ],
    },
    form: {
      heading: 'Form for cancelling',
      intro: ['Fill this in and send it back only if you want to cancel.'],
      lines: [
        { label: 'To', value: to },
        {
          label: 'I or we cancel this agreement for the supply of',
          value: `the electrical work and materials of ${reference}`,
        },
        { label: 'Agreed on', ...blank },
        { label: 'Name', value: customer.name },
        { label: 'Address', value: listedLines(customer.lines) },
        { label: 'Signature (only if this is on paper)', ...blank },
        { label: 'Date', ...blank },
      ],
    },
    earlyStart: {
      heading: `Request to begin within the ${CANCEL_DAYS} days`,
      intro: [
        `Fill this in only if you want the work to begin sooner. I ask for the work to begin before the ${CANCEL_DAYS} days are over. I know that if I cancel after that I pay for what has been done, and that when all of it is done I can no longer cancel.`,
      ],
      lines: [
        { label: 'Name', ...blank },
        { label: 'Signature', ...blank },
        { label: 'Date', ...blank },
      ],
    },
  };
}
