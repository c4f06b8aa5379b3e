import { describe, expect, it } from 'vitest';
import type { Terms } from '#model/job.ts';
import { demoJob, estimateOf, findingsOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const [scheme] = job.schemes;

function found(terms: Partial<Terms>) {
  const schemes = scheme === undefined ? [] : [scheme];
  const [estimated] = estimateOf({ ...job, schemes, terms: { ...job.terms, ...terms } }).schemes;
  if (estimated === undefined) throw new Error('The job has no scheme.');
  return { findings: findingsOf(estimated, 'VA1'), estimated };
}

describe('[VA1] the rate of VAT', () => {
  it('has nothing to say of the standard rate, nor of a firm that is not registered', () => {
    expect(found({ vat: 'standard' }).findings).toEqual([]);
    expect(found({ vat: 'not-registered' }).findings).toEqual([]);
  });

  it('asks for a condition of a lower rate', () => {
    const { findings, estimated } = found({ vat: 'reduced' });
    expect(findings).toMatchObject([{ outcome: 'decide', messageId: 'missing', gates: false }]);
    expect(estimated.price).toMatchObject({ vatPercent: 5, vatClaim: { verdict: 'missing' } });
  });

  it('keeps what is claimed beside the price, and says what to have in the file', () => {
    const { findings, estimated } = found({ vat: 'reduced', vatCondition: 'empty-two-years' });
    expect(findings).toMatchObject([{ outcome: 'advice', messageId: 'claimed' }]);
    expect(findings[0]?.message).toContain('Keep a letter');
    expect(estimated.price.vatClaim.condition?.condition).toBe('empty-two-years');
  });

  it('refuses a listed building at nothing, and a condition of another rate', () => {
    expect(found({ vat: 'zero', vatCondition: 'listed-building' }).findings).toMatchObject([
      { outcome: 'decide', messageId: 'refused' },
    ]);
    expect(found({ vat: 'zero', vatCondition: 'empty-two-years' }).findings).toMatchObject([
      { outcome: 'decide', messageId: 'otherRate' },
    ]);
  });

  it('changes no price by its condition', () => {
    const plain = found({ vat: 'zero' }).estimated.totals;
    expect(found({ vat: 'zero', vatCondition: 'new-dwelling' }).estimated.totals).toEqual(plain);
  });
});
