import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';

const SHOWN = 3;

const pounds = (pence: number): string => `£${(pence / 100).toFixed(2)}`;

/** What a search found, for people: the cheapest few, and whether that is proved. */
export function foundLines({ schemes, optimal, gap, examined, bestOfKind }: SearchResult): string {
  const head =
    schemes.length === 0
      ? 'Searched for: no way was found that passes.'
      : optimal
        ? 'Searched for: no way that passes costs less to do than the best of these.'
        : `Searched for: the best found may cost up to ${Math.ceil((gap ?? 0) * 100)} % more to do than the least.`;
  const lines = schemes
    .slice(0, SHOWN)
    .map(({ scheme, estimate }) => `  ${pounds(estimate.totals.grossPence)}  ${scheme.name}`);
  const without = bestOfKind.flatMap(({ kind, reason }) =>
    reason === null ? [] : [`  No ${kind}: ${reason}`],
  );
  return `\n\n${[`${head} (${examined} looked at)`, ...lines, ...without].join('\n')}`;
}
