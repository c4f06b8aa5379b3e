import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { PriceBuildUp } from '../../price/totals.ts';
import { houseFor } from '../../schemes/house-for.ts';
import { priceAsCounted } from '../../schemes/price-scheme-with-range.ts';
import { schemeCable } from '../../schemes/scheme-cable.ts';
import { workScheme } from '../../schemes/work-scheme.ts';

/** What a price is worked out from: a job, and what the firm prices it by. */
export interface PricedState {
  readonly job: Job;
  readonly library: Library;
}

/** A state brought down to one of its schemes. */
export interface SchemeState extends PricedState {
  readonly scheme: Scheme;
}

/** What a scheme's price is made of: the first four add up to net, with the tax to gross. Pence, minutes, mm. */
export interface MovedFigures {
  readonly materialsPence: number;
  readonly labourPence: number;
  readonly otherPence: number;
  readonly contingencyPence: number;
  readonly vatPence: number;
  readonly grossPence: number;
  readonly labourMin: number;
  readonly cableMm: number;
}

/** A scheme priced, and the items, tasks and sums that its price names. */
export interface PricedFigures extends MovedFigures {
  readonly items: ReadonlySet<string>;
  readonly tasks: ReadonlySet<string>;
  readonly price: PriceBuildUp;
}

/** The job with one of its schemes alone, and without what no price hangs on; null where it has no such scheme. */
export function schemeState({ job, library }: PricedState, schemeId: string): SchemeState | null {
  const found = job.schemes.find(({ id }) => id === schemeId);
  if (found === undefined) return null;
  const scheme = { ...found, locks: [] };
  return { job: { ...job, schemes: [scheme] }, library, scheme };
}

/** The same state with another scheme in the place of its own. */
export const withScheme = (state: SchemeState, scheme: Scheme): SchemeState => ({
  ...state,
  scheme,
  job: { ...state.job, schemes: [scheme] },
});

/** The same state with other parts of the job. */
export const withJob = (state: SchemeState, parts: Partial<Job>): SchemeState => ({
  ...state,
  job: { ...state.job, ...parts },
});

/** Prices a state as the front door does, without checking it: the sums are those of its estimate, to the penny. */
export function figuresOf({ job, library: ofFirm, scheme }: SchemeState): PricedFigures {
  const { library, house } = houseFor(job, ofFirm);
  const worked = workScheme(house, scheme);
  const { price, labour } = priceAsCounted({ house, worked, library });
  const { totals, bill, labourMin } = price;
  return {
    materialsPence: totals.materialsPence,
    labourPence: totals.labourPence,
    otherPence: totals.otherPence,
    contingencyPence: totals.contingencyPence,
    vatPence: totals.vatPence,
    grossPence: totals.grossPence,
    labourMin,
    cableMm: schemeCable(worked.runs).cableMm,
    items: new Set(bill.map(({ item }) => item)),
    tasks: new Set(labour.map(({ task }) => task)),
    price,
  };
}
