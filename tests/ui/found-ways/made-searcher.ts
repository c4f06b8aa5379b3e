import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';

/** A search's answer made of a job's own schemes, so that the screen can be tested without searching. */
export function foundAmong({ schemes }: Estimate, changed: Partial<SearchResult> = {}): SearchResult {
  const found = schemes
    .toSorted((a, b) => a.totals.grossPence - b.totals.grossPence)
    .flatMap((estimate: SchemeEstimate, i) => {
      const { scheme } = estimate.worked;
      if (scheme === null) return [];
      return [
        {
          scheme: { ...scheme, id: `found/${i + 1}` },
          kind: 'mixed' as const,
          worksPence: 50_000 + 1000 * i,
          worksPoints: estimate.messPoints,
          restsOn: [],
          estimate,
        },
      ];
    });
  return {
    optimal: true,
    boundPence: 50_000,
    gap: 0,
    examined: 12,
    fallback: null,
    disturbance: null,
    schemes: found,
    bestOfKind: [],
    leftOut: [],
    ...changed,
  };
}
