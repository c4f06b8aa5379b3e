import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { boardsWithUnknownRcbo } from '#engine/rules/unknown-rcbo.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Library } from '#model/library.ts';
import { demoEstimate, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { rangeParts } from '../../../ui/elements/price/range-parts.ts';

const library = demoLibrary();
const schemes = demoNames.flatMap((name) => demoEstimate(name).schemes);
const sum = (parts: readonly { readonly pence: number }[]): number =>
  parts.reduce((all, { pence }) => all + pence, 0);

/** The travel of one day as the customer pays it, pence: reckoned from the sum of all days by the percentages of the price. */
function travelOfADay({ price }: SchemeEstimate): number {
  const travel = price.other.find(({ sum }) => sum === 'travel')?.pence ?? 0;
  return (travel / price.visits.count) * (1 + price.contingencyPercent / 100) * (1 + price.vatPercent / 100);
}

describe('what a range is made of', () => {
  it('adds up to the range, for every demo scheme', () => {
    for (const scheme of schemes)
      expect([scheme.id, sum(rangeParts(scheme, library))]).toEqual([
        scheme.id,
        scheme.range.highPence - scheme.range.lowPence,
      ]);
  });

  it('has each open question at its worth, and lights what it is about', () => {
    for (const scheme of schemes) {
      const asked = rangeParts(scheme, library).slice(1, 1 + scheme.openQuestions.length);
      expect(asked.map(({ pence, subjects }) => ({ pence, subjects }))).toEqual(
        scheme.openQuestions.map(({ worthPence, subjects }) => ({ pence: worthPence, subjects })),
      );
    }
  });

  it('gives the pace of work what pricing the job without any pace takes off the range', () => {
    // Independent of the parts: the same job priced with norms whose low and high are the typical minutes.
    const even: Library = {
      ...library,
      norms: {
        ...library.norms,
        tasks: library.norms.tasks.map((norm) => ({
          ...norm,
          lowMin: norm.typicalMin,
          highMin: norm.typicalMin,
        })),
      },
    };
    let looked = 0;
    for (const name of demoNames) {
      const whole = demoEstimate(name);
      const unmoved = estimate(demoJob(name), even, whole);
      whole.schemes.forEach((scheme, at) => {
        // Where the board may not take the RCBO, an end of the range is another scheme's, with a pace of its own.
        if (boardsWithUnknownRcbo(scheme.worked).length > 0) return;
        looked++;
        const other = unmoved.schemes[at]?.range;
        if (other === undefined) throw new Error('no such scheme');
        const taken = scheme.range.highPence - scheme.range.lowPence - (other.highPence - other.lowPence);
        const [pace] = rangeParts(scheme, library);
        // Days are whole: where pace and what is open fill another day together, its travel is neither's alone.
        const off = Math.abs((pace?.pence ?? 0) - taken);
        const daysOff = Math.round(off / travelOfADay(scheme));
        expect(daysOff, scheme.id).toBeLessThanOrEqual(1);
        // A penny of rounding at labour, contingency and tax, at either end, and of the day.
        expect(Math.abs(off - daysOff * travelOfADay(scheme)), scheme.id).toBeLessThanOrEqual(6);
      });
    }
    expect(looked).toBeGreaterThan(3);
  });

  it('is nothing where the price cannot move', () => {
    const [scheme] = schemes;
    if (scheme === undefined) throw new Error('no scheme');
    const flat = { ...scheme, range: { lowPence: 5, typicalPence: 5, highPence: 5 } };
    expect(rangeParts(flat, library)).toEqual([]);
  });
});
