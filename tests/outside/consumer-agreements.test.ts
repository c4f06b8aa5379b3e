import { describe, expect, it } from 'vitest';
import { CANCEL_DAYS } from '#engine/quotation/cancellation.ts';
import { ownLibrary } from '../engine/own-library.ts';
import { offering, quoted, textOf } from '../engine/quotation/quoted.ts';

const job = offering('saltglass-row', { customer: 'consumer', agreedAt: 'customers-home' });
const own = ownLibrary();
const { paper } = quoted(job, {
  ...own,
  firm: { ...own.firm, contact: '01632 960000', email: 'own@example.org' },
});

/**
 * What a consumer is told before an agreement in the home: the Consumer Contracts (Information, Cancellation and Additional
 * Charges) Regulations 2013 (SI 2013/3134). Government guidance as republished on uk-times.com ("Providing clear and
 * accessible consumer information") lists the items; Kent and Herefordshire trading standards give the 14 days.
 */
describe('the regulations of 2013 on agreements in the home', () => {
  it.each([
    ['the trader’s name', 'Own'],
    ['a geographical address', '1 Own Yard'],
    ['a telephone number', '01632 960000'],
    ['an e-mail address', 'own@example.org'],
    ['arrangements for payment', 'When the price is due'],
    ['arrangements for doing the work', 'When we can begin'],
    ['the right to cancel', 'you may cancel'],
    ['how to cancel', 'To cancel, tell us clearly in writing'],
    ['that early work is paid for', 'you pay for what was done'],
  ])('tell %s', (_, words) => {
    expect(textOf(paper)).toContain(words);
  });

  it('tell the total price with VAT', () => {
    expect(paper.schemes.map(({ price }) => [price.grossPence, price.vatPercent])).toEqual([[97_799, 20]]);
  });

  // Kent Trading Standards, "Cancellation of contracts"; Herefordshire, "Selling away from premises".
  it('give 14 days', () => {
    expect(CANCEL_DAYS).toBe(14);
  });

  // Herefordshire: 14 days from receipt of the last goods, where goods are supplied with the service.
  it('let the days begin no earlier than with the last of the goods', () => {
    expect(paper.cancellation?.notice.paragraphs[0]).toContain(
      'the day after the last of the materials has reached you',
    );
  });

  // Kent: work within the days wants a written, express request.
  it('ask for the early start in writing', () => {
    expect(paper.cancellation?.notice.paragraphs.at(-1)).toContain('only if you ask us to in writing');
    expect(paper.cancellation?.earlyStart.lines.map(({ label }) => label)).toContain('Signature');
  });

  // Schedule 3 part B: the items of the model form. From memory; check against legislation.gov.uk.
  it.each(['To', 'I or we cancel', 'Agreed on', 'Name', 'Address', 'Signature', 'Date'])(
    'have "%s" in the form',
    (item) => {
      expect(paper.cancellation?.form.lines.some(({ label }) => label.startsWith(item))).toBe(true);
    },
  );
});

/** rcsolicitors.co.uk, "Quote or estimate?": a quotation binds as a fixed price, an estimate is a best guess. */
describe('the two names', () => {
  it('mean what they are said to mean', () => {
    expect(paper.kindWords).toContain('fixed price');
    const open = quoted(offering('saltglass-row-quoting', {})).paper;
    expect(open.kindWords).toContain('not a fixed price');
  });
});
