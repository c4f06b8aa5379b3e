import { type Verdict, verdictOf } from '#drawing/verdict.ts';
import { type OpenedUp, openedUp } from '#engine/labour/opened-up.ts';
import type { PriceBuildUp, PriceRange, Totals } from '#engine/price/totals.ts';
import type { Outcome } from '#engine/rules/finding.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import { type SchemeCable, schemeCable } from '#engine/schemes/scheme-cable.ts';
import type { FoundScheme, SchemeKind } from '#engine/schemes/search/found-schemes.ts';
import type { Scheme } from '#model/scheme.ts';

/** A found scheme as its card tells it: plain data, for it comes from another thread. */
export interface Candidate extends OpenedUp {
  /** As the job file would have it. */
  readonly scheme: Scheme;
  readonly kind: SchemeKind;
  /** What the search ranks by: before packs, shared openings, minimum charge, mark-up and VAT. */
  readonly worksPence: number;
  /** Legs that it is jointed into though their way is only assumed, by id. */
  readonly restsOn: readonly string[];
  /** Disturbance of the house, in the norms' points. */
  readonly messPoints: number;
  readonly totals: Totals;
  readonly range: PriceRange;
  readonly vat: PriceBuildUp['vat'];
  readonly cable: SchemeCable;
  readonly checks: Readonly<Record<Outcome, number>>;
  readonly verdict: Verdict;
  /** What a fuse before new outlets will do with their loads, where that is to be decided: the cheapest is not to win in silence. */
  readonly cautions: readonly string[];
  /** True where nothing found is cheaper without more disturbance, nor less disturbing without a higher price. */
  readonly efficient: boolean;
  /** True of the one that disturbs least of several that were found; of some alike the cheapest. */
  readonly calmest: boolean;
}

/** The rule on what is drawn through a fuse before several outlets. */
const LOADS_BEHIND_FUSE = 'FU2';

/** Whether one of two is at least as good in both respects, and better in one. */
const beats = (one: FoundScheme, other: FoundScheme): boolean => {
  const [costs, otherCosts] = [one.estimate.totals.grossPence, other.estimate.totals.grossPence];
  const [mess, otherMess] = [one.estimate.messPoints, other.estimate.messPoints];
  if (costs > otherCosts || mess > otherMess) return false;
  return costs < otherCosts || mess < otherMess;
};

/** Found schemes as plain data, in their order. */
export function candidatesOf(found: readonly FoundScheme[]): readonly Candidate[] {
  const calmest = calmestOf(found);
  return found.map((one) =>
    candidateOf(one, { efficient: !found.some((other) => beats(other, one)), calmest: one === calmest }),
  );
}

/** The one that disturbs least, of some alike the cheapest, of those the first; none where there is nothing beside it. */
function calmestOf(found: readonly FoundScheme[]): FoundScheme | undefined {
  if (found.length < 2) return undefined;
  const [calmest] = found.toSorted(
    ({ estimate: a }, { estimate: b }) =>
      a.messPoints - b.messPoints || a.totals.grossPence - b.totals.grossPence,
  );
  return calmest;
}

function candidateOf(found: FoundScheme, standing: Pick<Candidate, 'efficient' | 'calmest'>): Candidate {
  const { scheme, kind, worksPence, restsOn, estimate } = found;
  const count = (outcome: Outcome): number => outcomeCount(estimate.findings, outcome);
  return {
    scheme,
    kind,
    worksPence,
    restsOn,
    // As all schemes have it, openings that are shared counted once; the search's own adds up connection by connection.
    messPoints: estimate.messPoints,
    totals: estimate.totals,
    range: estimate.range,
    vat: estimate.price.vat,
    cable: schemeCable(estimate.runs),
    ...openedUp(estimate.labour),
    checks: {
      fails: count('fails'),
      decide: count('decide'),
      'not-proven': count('not-proven'),
      advice: count('advice'),
      passes: count('passes'),
    },
    verdict: verdictOf(estimate),
    cautions: estimate.findings
      .filter(({ rule, outcome }) => rule === LOADS_BEHIND_FUSE && outcome === 'decide')
      .map(({ message }) => message),
    ...standing,
  };
}
