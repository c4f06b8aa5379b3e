import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import { allRules } from './all-rules.ts';
import { cautions, editionNote } from './cautions.ts';
import type { Worked } from './connections/worked.ts';
import { messPoints } from './labour/mess.ts';
import { capacities } from './proof/capacity-of-run.ts';
import { proveCircuits } from './proof/prove.ts';
import { complies } from './rules/complies.ts';
import type { Facts } from './rules/facts.ts';
import { runRules } from './rules/run-rules.ts';
import { withConsequences } from './schemes/consequences.ts';
import { cheapestThatDoesNotFail, schemeDifferences } from './schemes/differences.ts';
import type { Estimate, SchemeEstimate } from './schemes/estimate-result.ts';
import { openQuestions } from './schemes/open-questions.ts';
import { libraryGaps } from './schemes/price-list-gaps.ts';
import { priceSchemeWithRange } from './schemes/price-scheme-with-range.ts';
import { tariffOf } from './schemes/tariff.ts';
import { type House, workHouse, workScheme } from './schemes/work-scheme.ts';
import { defaultLengthAllowances } from './ways/length-allowances.ts';

/** The engine's version, printed on what it makes and frozen in quotations. */
const ENGINE_VERSION = '0.1.0';

type Proofs = Facts['proofs'];

/** @param proofsFound of the house as found; null where `worked` is that house itself. */
function factsOf(worked: Worked, library: Library, proofsFound: Proofs | null): Facts {
  const { limits } = library;
  const known = capacities(worked, limits);
  const proofs = new Map(
    proveCircuits({ worked, capacities: known, limits }).map((proof) => [proof.circuit, proof]),
  );
  return {
    ...worked,
    capacities: known,
    proofs,
    proofsFound: proofsFound ?? proofs,
    limits,
    edition: worked.job.edition,
  };
}

/** How much of the answer is wanted. */
export interface EstimateScope {
  /** Only these schemes, in the job's order; absent: all. Unknown ids are left out. */
  readonly schemeIds?: readonly string[];
  /**
   * `live`: without the worth of open questions and the pence of remedies, for a screen while something moves;
   * absent: `whole`.
   */
  readonly depth?: 'whole' | 'live';
}

interface ToEstimate {
  readonly house: House;
  readonly proofsFound: Proofs;
  readonly library: Library;
  readonly isLive: boolean;
}

function estimateScheme(scheme: Scheme, { house, library, isLive, proofsFound }: ToEstimate): SchemeEstimate {
  const worked = workScheme(house, scheme);
  const priced = priceSchemeWithRange({ house, worked, library });
  const gaps = libraryGaps({ bill: priced.price.bill, labour: priced.labour, other: priced.price.other });
  const facts = factsOf(worked, library, proofsFound);
  const findings = runRules(facts, [...allRules, gaps]);
  return {
    id: scheme.id,
    name: scheme.name,
    complies: complies(findings),
    totals: priced.price.totals,
    range: priced.range,
    messPoints: messPoints(priced.labour, library.norms),
    openQuestions: isLive ? [] : openQuestions(house, worked, priced.range, library),
    runs: worked.runs,
    joints: worked.things.joints,
    boxes: worked.things.boxes,
    fusedUnits: worked.things.fusedUnits,
    takeoff: priced.takeoff,
    labour: priced.labour,
    price: priced.price,
    proof: [...facts.proofs.values()],
    findings: isLive
      ? findings
      : withConsequences(findings, {
          house,
          scheme,
          runs: worked.runs,
          grossPence: priced.price.totals.grossPence,
          contingencyPercent: priced.price.contingencyPercent,
          library,
        }),
    worked,
  };
}

/**
 * The front door: works out, checks, counts and prices every scheme of a job.
 *
 * @param job as read by the model; odd or unfinished jobs give findings, never errors.
 * @param library the firm, its prices, norms and own limits.
 * @param when the date (ISO) and the job's revision that outputs carry; the engine has no clock.
 * @param scope which schemes, and how deep; the differences and the cheapest are of those schemes alone.
 * @returns schemes in the job's order; equal arguments give equal results.
 */
export function estimate(
  job: Job,
  library: Library,
  when: { readonly date: string; readonly revision: number },
  scope: EstimateScope = {},
): Estimate {
  const house = workHouse(job, tariffOf(library), defaultLengthAllowances);
  const asFound = workScheme(house, null);
  const { schemeIds, depth } = scope;
  const factsFound = factsOf(asFound, library, null);
  const { proofs: proofsFound } = factsFound;
  const toEstimate = { house, library, proofsFound, isLive: depth === 'live' };
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
      worked: asFound,
    },
    schemes,
    differences: schemeDifferences(schemes),
    cheapestId: cheapestThatDoesNotFail(schemes)?.id ?? null,
  };
}
