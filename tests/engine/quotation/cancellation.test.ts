import { describe, expect, it } from 'vitest';
import { mayCancel } from '#engine/quotation/cancellation.ts';
import { ownLibrary } from '../own-library.ts';
import { offering, quoted, textOf } from './quoted.ts';

describe('the right to cancel', () => {
  it.each([
    ['nobody has said anything', undefined, [92_204], true],
    ['a consumer agrees at home', { customer: 'consumer', agreedAt: 'customers-home' }, [92_204], true],
    ['a consumer agrees at a distance', { customer: 'consumer', agreedAt: 'at-a-distance' }, [92_204], true],
    [
      'a consumer agrees at the firm’s premises',
      { customer: 'consumer', agreedAt: 'firms-premises' },
      [92_204],
      false,
    ],
    ['a business agrees', { customer: 'business', agreedAt: 'customers-home' }, [92_204], false],
    ['nothing is offered', undefined, [], false],
    ['it is £42 at home', { customer: 'consumer', agreedAt: 'customers-home' }, [4200], false],
    ['it is a penny more', { customer: 'consumer', agreedAt: 'customers-home' }, [4201], true],
    ['one of two is more', { customer: 'consumer', agreedAt: 'customers-home' }, [4200, 4201], true],
    ['it is £42 at a distance', { customer: 'consumer', agreedAt: 'at-a-distance' }, [4200], true],
  ] as const)('where %s', (_, quoting, pence, may) => {
    expect(mayCancel(quoting, pence)).toBe(may);
  });

  it('comes with its notice, form and request, by what is known of the agreement', () => {
    const own = ownLibrary();
    const job = offering('saltglass-row', { customer: 'consumer', agreedAt: 'customers-home' });
    const { cancellation } = quoted({ ...job, terms: { ...job.terms, depositPercent: 10 } }, own).paper;
    const text = textOf(cancellation);
    expect(text).toContain('Because we agree at your home, you may cancel the agreement within 14 days');
    expect(text).toContain('A deposit (£97.80) is among it.');
    expect(text).toContain('Own, 1 Own Yard, own@example.org');
    const elsewhere = { ...own, firm: { ...own.firm, cancelTo: 'cancel@example.org' } };
    expect(cancellation?.form.lines[0]?.value).not.toBe('cancel@example.org');
    expect(quoted(job, elsewhere).paper.cancellation?.form.lines[0]?.value).toBe('cancel@example.org');
  });

  it('is not in the paper of a business, and the electrician is not asked any more', () => {
    const { paper } = quoted(
      offering('saltglass-row', { customer: 'business', agreedAt: 'customers-home' }),
      ownLibrary(),
    );
    expect(paper.cancellation).toBeNull();
    expect(textOf(paper)).not.toContain('14 days');
    expect(paper.beforeSending.some(({ where }) => where === 'papers')).toBe(true);
    expect(textOf(paper.beforeSending)).not.toContain('right to cancel');
  });
});
