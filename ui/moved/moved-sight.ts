import { type ScreenPlan, screenPlan } from '#drawing/plan/screen-plan.ts';
import { type Verdict, verdictOf } from '#drawing/verdict.ts';
import { estimate } from '#engine/estimate.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';

/** How the plan stands on which a point is moved. */
export interface PlanStand {
  readonly storeyId: string;
  /** Millimetres of the house to a unit of the scene. */
  readonly scale: number;
  /** Wanted points are drawn even where no scheme is. */
  readonly withWanted: boolean;
  /** Lettering of lengths and sizes, units of the scene. */
  readonly figuresMm: number;
}

/** A job with a point under the hand, and what is shown of it. */
export interface MovedAsk {
  readonly job: Job;
  readonly library: Library;
  /** ISO. */
  readonly date: string;
  /** The scheme that is priced; null where the job has none. */
  readonly schemeId: string | null;
  /** Whether plan and checks are those of the house as found; they are where the job has no scheme. */
  readonly isAsFound: boolean;
  readonly stand: PlanStand;
}

/** What is told of a scheme's price. */
export interface PriceSight extends Pick<SchemeEstimate, 'name' | 'totals' | 'range'> {
  readonly price: Pick<PriceBuildUp, 'vat' | 'vatPercent' | 'vatClaim'>;
  readonly verdict: Verdict;
}

/** What is seen of a job while a point of it moves, as plain data: the plan as it is drawn, the price, the checks. */
export interface MovedSight {
  readonly stand: PlanStand;
  readonly plan: Pick<ScreenPlan, 'scene' | 'frame'> & {
    /** As the plan has them, in its order. */
    readonly spots: readonly (readonly [id: string, spot: SheetPoint])[];
  };
  /** Null where the job has no scheme. */
  readonly priced: PriceSight | null;
  readonly findings: readonly Finding[];
}

/** What is told of the price of a scheme that was worked out. */
export const priceSightOf = (scheme: SchemeEstimate): PriceSight => {
  const { name, totals, range } = scheme;
  const { vat, vatPercent, vatClaim } = scheme.price;
  return { name, totals, range, price: { vat, vatPercent, vatClaim }, verdict: verdictOf(scheme) };
};

/** Works a job out as far as it is seen while something moves: by the same engine as at rest, its open questions left out. */
export function movedSightOf({ job, library, date, schemeId, isAsFound, stand }: MovedAsk): MovedSight {
  // Nothing that is seen here carries the revision.
  const when = { date, revision: 1 };
  const schemeIds = schemeId === null ? [] : [schemeId];
  const whole = estimate(job, library, when, { schemeIds, depth: 'live' });
  const scheme = whole.schemes[0] ?? null;
  const { worked, findings } = (isAsFound ? null : scheme) ?? whole.asFound;
  const { scene, frame, spots } = screenPlan({ worked, findings, ...stand });
  return {
    stand,
    plan: { scene, frame, spots: [...spots] },
    priced: scheme === null ? null : priceSightOf(scheme),
    findings,
  };
}
