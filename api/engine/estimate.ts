import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { allRules } from './all-rules.ts';
import { cautions, editionNote } from './cautions.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { runRules } from './rules/run-rules.ts';
import { cheapestThatDoesNotFail, schemeDifferences } from './schemes/differences.ts';
import type { Estimate } from './schemes/estimate-result.ts';
import { estimateScheme } from './schemes/estimate-scheme.ts';
import { factsOf } from './schemes/facts-of.ts';
import { houseFor } from './schemes/house-for.ts';
import { surveyOfHouse } from './schemes/survey-list.ts';
import { workScheme } from './schemes/work-scheme.ts';

/** How much of the answer is wanted. */
export interface EstimateScope {
  /** Only these schemes, in the job's order; absent: all. Unknown ids are left out. */
  readonly schemeIds?: readonly string[];
  /**
   * `live`: without the worth of open questions and the pence of remedies, and with the first purchase plan that serves
   * and its bound, for a screen while something moves; absent: `whole`.
   */
  readonly depth?: 'whole' | 'live';
}

/**
 * The front door: works out, checks, counts and prices every scheme of a job.
 *
 * @param job as read by the model; odd or unfinished jobs give findings, never errors.
 * @param ofFirm the firm's library: its prices, norms and own limits.
 * @param when the date (ISO) and the job's revision that outputs carry; the engine has no clock.
 * @param scope which schemes, and how deep; the differences and the cheapest are of those schemes alone.
 * @returns schemes in the job's order; equal arguments give equal results.
 */
export function estimate(
  job: Job,
  ofFirm: Library,
  when: { readonly date: string; readonly revision: number },
  scope: EstimateScope = {},
): Estimate {
  const { library, house } = houseFor(job, ofFirm);
  const asFound = workScheme(house, null);
  const { schemeIds, depth } = scope;
  const factsFound = factsOf(asFound, library, null);
  const { proofs: proofsFound } = factsFound;
  const toEstimate = {
    house,
    library,
    proofsFound,
    rules: allRules,
    isLive: depth === 'live',
    date: when.date,
  };
  const schemes = job.schemes
    .filter(({ id }) => schemeIds === undefined || schemeIds.includes(id))
    .map((scheme) => estimateScheme(scheme, toEstimate));
  return {
    engine: ENGINE_VERSION,
    reference: job.reference,
    title: job.title,
    date: when.date,
    revision: when.revision,
    edition: job.edition,
    editionNote,
    cautions,
    asFound: {
      proof: [...proofsFound.values()],
      findings: runRules(factsFound, allRules),
      survey: surveyOfHouse(asFound),
      worked: asFound,
    },
    schemes,
    differences: schemeDifferences(schemes),
    cheapestId: cheapestThatDoesNotFail(schemes)?.id ?? null,
  };
}
