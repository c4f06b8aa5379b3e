import type { Firm } from '#model/library.ts';
import { counted } from '../rules/counted.ts';
import type { QuotedPassage, QuotedScheme } from './document.ts';
import { capital, pounds } from './said.ts';

const toBeAgreed = (what: string): string => `${what}: to be agreed.`;

function whenDue({ paymentDays }: Pick<Firm, 'paymentDays'>, what: string): string {
  if (paymentDays === undefined) return toBeAgreed(`When ${what} is due`);
  return paymentDays === 0
    ? `${capital(what)} is due when the work is finished.`
    : `${capital(what)} is due ${counted(paymentDays, 'day')} after the invoice, which comes when the work is finished.`;
}

function depositSaid(schemes: readonly QuotedScheme[]): readonly string[] {
  const asked = schemes.flatMap(({ heading, price }) =>
    price.depositPence === null ? [] : [{ heading, depositPence: price.depositPence }],
  );
  if (asked.length === 0) return ['No deposit is asked for.'];
  const sums =
    schemes.length === 1
      ? pounds(asked[0]?.depositPence ?? 0)
      : asked.map(({ heading, depositPence }) => `${pounds(depositPence)} for ${heading}`).join(', ');
  return [`A deposit is asked for before the work: ${sums}. It is part of the price, not on top of it.`];
}

/** When and how what is paid. What the firm has not said is to be agreed. */
export function paymentOf(
  firm: Pick<Firm, 'paymentDays' | 'paymentWays'>,
  schemes: readonly QuotedScheme[],
): QuotedPassage {
  const hasDeposit = schemes.some(({ price }) => price.depositPence !== null);
  return {
    heading: 'Payment',
    paragraphs: [
      ...depositSaid(schemes),
      whenDue(firm, hasDeposit ? 'the rest' : 'the price'),
      firm.paymentWays === undefined ? toBeAgreed('How you can pay') : `You can pay by: ${firm.paymentWays}`,
    ],
  };
}

/** What happens if something unexpected is found: nothing is done beyond the price until it is agreed in writing. */
export const unexpectedOf = (kind: 'quotation' | 'estimate'): QuotedPassage => ({
  heading: 'If something unexpected is found',
  paragraphs: [
    'Walls and floors hide things, and so does old wiring. If we find something that changes the work, we stop there, show it to you, and write down what it is, what we propose, and what it adds to or takes off the price.',
    `We go on with that part only when you have agreed in writing; a message will do. If you do not agree, we leave that part out, and you pay for what has been done up to then, never more than ${kind === 'quotation' ? 'this price' : 'the upper figure'}.`,
  ],
});
