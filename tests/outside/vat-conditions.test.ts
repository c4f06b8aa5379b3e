import { describe, expect, it } from 'vitest';
import { vatConditions } from '#data/standards/vat-conditions.ts';
import { conditionsOf, vatClaim } from '#engine/price/vat-claim.ts';
import { terms } from '#model/job.ts';

/**
 * Cases of work on houses as public pages decide them. Read as stored copies of the pages named in
 * `data/standards/vat-conditions.ts`.
 */
const cases = [
  // gov.uk/vat-builders: "you'll have to charge the standard rate (20 %) for most work on houses and flats".
  { of: 'a house that is lived in', vat: 'standard', vatCondition: null, verdict: 'not-needed' },
  // HMRC manual VCONST07100: renovation of a dwelling that was not lived in for two years before the work.
  { of: 'a house empty for two years', vat: 'reduced', vatCondition: 'empty-two-years', verdict: 'claimed' },
  // cronertaxwise.com: the second of two routes, empty for two years before it was bought.
  { of: 'an empty house bought', vat: 'reduced', vatCondition: 'empty-when-bought', verdict: 'claimed' },
  // charitytaxgroup.org.uk: a conversion that changes the number of dwellings, or to multiple occupancy.
  { of: 'a house made into flats', vat: 'reduced', vatCondition: 'number-of-dwellings', verdict: 'claimed' },
  { of: 'a house let by the room', vat: 'reduced', vatCondition: 'multiple-occupancy', verdict: 'claimed' },
  // phdassociates.co.uk: mobility aids for the elderly, and grant-funded heating or security, at 5 %.
  { of: 'a stair lift', vat: 'reduced', vatCondition: 'mobility-aid', verdict: 'claimed' },
  { of: 'a boiler out of a grant', vat: 'reduced', vatCondition: 'grant-funded', verdict: 'claimed' },
  // gov.uk/vat-builders: building a new house; phdassociates.co.uk: some disability adaptations.
  { of: 'a new house', vat: 'zero', vatCondition: 'new-dwelling', verdict: 'claimed' },
  { of: 'an adaptation', vat: 'zero', vatCondition: 'disability', verdict: 'claimed' },
  // cronertaxwise.com: the zero rate for approved alterations of listed buildings ended in October 2012. Older lists
  // still print it: refused.
  { of: 'a listed building', vat: 'zero', vatCondition: 'listed-building', verdict: 'refused' },
  // phdassociates.co.uk prints 5 % for energy-saving materials; that an outlet is none is from memory. Refused.
  { of: 'an outlet as energy-saving', vat: 'reduced', vatCondition: 'energy-saving', verdict: 'refused' },
  // A condition of the other rate carries nothing.
  { of: 'a new house at 5 %', vat: 'reduced', vatCondition: 'new-dwelling', verdict: 'other-rate' },
  { of: 'nothing said', vat: 'zero', vatCondition: null, verdict: 'missing' },
] as const;

describe('the condition of a rate of VAT', () => {
  it.each(cases)('of $of at the $vat rate: $verdict', ({ vat, vatCondition, verdict }) => {
    expect(vatClaim({ vat, vatCondition }).verdict).toBe(verdict);
  });

  it('is not asked for where no tax is charged', () => {
    expect(vatClaim({ vat: 'not-registered', vatCondition: 'new-dwelling' })).toEqual({
      verdict: 'not-needed',
      condition: null,
    });
    expect(conditionsOf('not-registered')).toEqual([]);
  });

  it('says why what is refused is refused', () => {
    const refusedBecause = (vat: 'zero' | 'reduced', vatCondition: 'listed-building' | 'energy-saving') =>
      vatClaim({ vat, vatCondition }).condition?.refused;
    expect(refusedBecause('zero', 'listed-building')).toMatch(/ended in October 2012.*20 %/);
    expect(refusedBecause('reduced', 'energy-saving')).toMatch(/outlet is no energy-saving material/);
  });
});

describe('the table of conditions', () => {
  it('has every condition that a job may claim, once, and the usual case', () => {
    const claimable = terms.shape.vatCondition.unwrap().options;
    const rows = vatConditions.rows.map(({ condition }) => condition);
    expect(rows.toSorted()).toEqual(['usual', ...claimable].toSorted());
  });

  it('names a page for each row, and what to keep wherever one may be claimed', () => {
    for (const { where, rate, refused, keep, condition } of vatConditions.rows) {
      expect(where, condition).not.toBe('');
      expect(keep === null, condition).toBe(rate === 'standard' || refused !== null);
    }
  });
});
