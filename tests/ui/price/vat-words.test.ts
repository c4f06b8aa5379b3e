import { describe, expect, it } from 'vitest';
import { vatWords, worthWords } from '../../../ui/elements/price/vat-words.ts';

const firm = { labour: 'typical', vat: 'standard' } as const;

describe('what Price says of VAT', () => {
  it('names the rate of a registered firm', () => {
    expect(vatWords({ vat: 'standard', vatPercent: 20 }, firm)).toBe('20 %: the firm is registered');
    expect(vatWords({ vat: 'zero', vatPercent: 0 }, firm)).toMatch(/^0 %/);
  });

  it('says on whose word none is charged', () => {
    const none = { vat: 'not-registered', vatPercent: 0 } as const;
    expect(vatWords(none, { ...firm, vat: 'not-registered' })).toMatch(/^none: the firm is not registered/);
    expect(vatWords(none, firm)).toMatch(/^none, by this job’s terms/);
  });
});

describe('the sums beside open questions', () => {
  it('have VAT in them only where it is charged', () => {
    expect(worthWords({ vat: 'standard' })).toMatch(/, VAT included\.$/);
    expect(worthWords({ vat: 'not-registered' })).toMatch(/, no VAT charged\.$/);
  });
});
