import type { Library } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import { labourTasks } from '../labour/labour-tasks.ts';
import type { LabourTask } from '../labour/task.ts';
import { agreedTerms } from '../price/agreed-terms.ts';
import { type PriceEnds, priceEnds } from '../price/price-range.ts';
import { type PriceRequest, priceScheme } from '../price/price-scheme.ts';
import type { OpenGap } from '../price/survey-gaps-of.ts';
import type { PriceBuildUp, PriceRange } from '../price/totals.ts';
import { ASBESTOS_SUM, asbestosIsSuspected } from '../rules/asbestos.ts';
import { isNotified } from '../rules/notification.ts';
import { unprovedFacts } from '../rules/unproved-facts.ts';
import { kitCountsOf } from '../takeoff/kit-counts.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { takeOff } from '../takeoff/take-off.ts';

/** A worked scheme counted and priced. */
export interface PricedScheme {
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: readonly LabourTask[];
  readonly price: PriceBuildUp;
  readonly range: PriceRange;
}

/** Sums beside materials and labour that a scheme bears: notifying the work, where the rule on it says so; sampling what is suspected. */
function sumsOf(worked: Worked, library: Library): readonly string[] {
  // Whether work is notified hangs on where it is, not on what its cables carry.
  return [
    ...(isNotified(unprovedFacts(worked, library.limits)) ? ['notification'] : []),
    ...(asbestosIsSuspected(worked.job) ? [ASBESTOS_SUM] : []),
  ];
}

function requestOf(worked: Worked, library: Library, gaps: readonly OpenGap[]): PriceRequest {
  const takeoff = takeOff(worked, library.norms.waste, kitCountsOf(library));
  return {
    takeoff,
    labour: labourTasks(worked, takeoff, library.norms),
    library,
    terms: worked.job.terms,
    stock: worked.job.stock,
    extras: worked.job.extras,
    sums: sumsOf(worked, library),
    gaps,
  };
}

/**
 * Counts and prices a worked scheme, with the range that its assumptions leave.
 *
 * @param gaps what is open of it, which sets the contingency where the terms do not.
 */
export function priceWorked(worked: Worked, library: Library, gaps: readonly OpenGap[]): PricedScheme {
  const request = requestOf(worked, library, gaps);
  const price = priceScheme(request);
  const { lowPence, highPence } = priceEnds(request);
  return {
    takeoff: request.takeoff,
    labour: request.labour,
    price,
    range: { lowPence, typicalPence: price.totals.grossPence, highPence },
  };
}

/** The ends of the range of a worked scheme, without the price between them. */
export function endsOfWorked(worked: Worked, library: Library, gaps: readonly OpenGap[]): PriceEnds {
  return priceEnds(requestOf(worked, library, gaps));
}

/**
 * The same by what is open, worked out once each: what is counted does not hang on it, and nothing does where the terms set the
 * contingency.
 */
export function endsByGaps(worked: Worked, library: Library): (gaps: readonly OpenGap[]) => PriceEnds {
  const request = requestOf(worked, library, []);
  const isSet = agreedTerms(request.terms, library.terms).contingencyPercent !== null;
  const known = new Map<string, PriceEnds>();
  return (gaps) => {
    const key = isSet ? '' : gaps.join(' ');
    const ends = known.get(key) ?? priceEnds({ ...request, gaps });
    known.set(key, ends);
    return ends;
  };
}

/**
 * What a worked scheme costs at the typical quantities, VAT included, at a contingency that is given: so two
 * schemes compare by their work, not by how open their surveys are.
 */
export function grossPenceAt(worked: Worked, library: Library, contingencyPercent: number): number {
  const request = requestOf(worked, library, []);
  return priceScheme({ ...request, terms: { ...request.terms, contingencyPercent } }).totals.grossPence;
}
