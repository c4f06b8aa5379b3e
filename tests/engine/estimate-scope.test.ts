import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type EstimateScope, estimate } from '#engine/estimate.ts';
import { cheapestThatDoesNotFail, schemeDifferences } from '#engine/schemes/differences.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { demoJob, demoNames } from './demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };

/** What an estimate without the worth of questions and the pence of remedies says of a scheme. */
const lively = (scheme: SchemeEstimate): SchemeEstimate => ({
  ...scheme,
  survey: [],
  openQuestions: [],
  findings: scheme.findings.map((finding) => ({ ...finding, consequencePence: null })),
});

/** The part of a whole estimate that these schemes are, told by what is said of each. */
function partOf(whole: Estimate, ids: readonly string[], told: (scheme: SchemeEstimate) => SchemeEstimate) {
  const schemes = whole.schemes.filter(({ id }) => ids.includes(id)).map(told);
  return {
    ...whole,
    schemes,
    differences: schemeDifferences(schemes),
    cheapestId: cheapestThatDoesNotFail(schemes)?.id ?? null,
  };
}

describe('demo jobs', () => {
  const schemes = demoNames.flatMap((name) => estimate(demoJob(name), library, when).schemes);

  it('have open questions and priced remedies to leave out', () => {
    expect(schemes.filter(({ openQuestions }) => openQuestions.length > 0).length).toBeGreaterThan(5);
    const pence = schemes.flatMap(({ findings }) => findings.map((each) => each.consequencePence));
    expect(pence.filter((each) => each !== null).length).toBeGreaterThan(5);
  });
});

describe.each(demoNames)('the scope of an estimate of %s', (name) => {
  const job = demoJob(name);
  const whole = estimate(job, library, when);
  const ids = whole.schemes.map(({ id }) => id);
  const within = (scope: EstimateScope) => estimate(job, library, when, scope);

  it('is everything when nothing is said', () => {
    expect(within({})).toEqual(whole);
    expect(within({ depth: 'whole', schemeIds: ids })).toEqual(whole);
  });

  it.each(ids)('live, is the whole of scheme %s but for its questions and remedies', (id) => {
    expect(within({ schemeIds: [id], depth: 'live' })).toEqual(partOf(whole, [id], lively));
  });

  it.each(ids)('whole, is the whole of scheme %s whatever other schemes there are', (id) => {
    expect(within({ schemeIds: [id] })).toEqual(partOf(whole, [id], (scheme) => scheme));
  });

  it('takes schemes in the order of the job, and leaves out ids that it does not have', () => {
    const asked = fc.shuffledSubarray([...ids, 'no-such-scheme', '']);
    fc.assert(
      fc.property(asked, (schemeIds) => {
        expect(within({ schemeIds, depth: 'live' })).toEqual(partOf(whole, schemeIds, lively));
      }),
      { numRuns: 8 },
    );
  });

  it('gives the same again from the same job', () => {
    expect(within({ depth: 'live' })).toEqual(within({ depth: 'live' }));
    expect(estimate(structuredClone(job), library, when)).toEqual(whole);
  });
});
