import { pounds } from '#engine/quotation/said.ts';
import type { FoundScheme, SearchResult, WhyNone } from '#engine/schemes/search/found-schemes.ts';

const SHOWN = 3;

/** The one that disturbs least by its estimate, of several the cheapest. */
const calmestOf = (schemes: readonly FoundScheme[]): FoundScheme | null =>
  schemes.toSorted((a, b) => a.estimate.messPoints - b.estimate.messPoints)[0] ?? null;

/** That there is none of a kind, as far as that is known. */
function noneOf(kind: string, why: WhyNone, boundPence: number | null): string {
  if (why === 'impossible') return `No ${kind}`;
  if (why === 'not-searched') return `No ${kind} found, not all were searched`;
  return `No ${kind} found, given up${boundPence === null ? '' : ` (costs ${pounds(boundPence)} to do at least)`}; the first failed by`;
}

/** What a search found, for people: the cheapest few and the least disturbing, and whether that is proved. */
export function foundLines({
  schemes,
  optimal,
  gap,
  examined,
  bestOfKind,
  disturbance,
}: SearchResult): string {
  const head =
    schemes.length === 0
      ? 'Searched for: no way was found that passes.'
      : optimal
        ? 'Searched for: no way that passes costs less to do than the best of these.'
        : `Searched for: the best found may cost up to ${Math.ceil((gap ?? 0) * 100)} % more to do than the least.`;
  const calmest = calmestOf(schemes);
  const line = ({ scheme, restsOn, estimate }: FoundScheme): string =>
    `  ${pounds(estimate.totals.grossPence)}  ${Math.round(estimate.messPoints)} points  ${scheme.name}${
      restsOn.length === 0 ? '' : ` (rests on locating ${restsOn.join(', ')})`
    }`;
  const lines = schemes.slice(0, SHOWN).map(line);
  const calm =
    calmest === null
      ? []
      : [
          disturbance?.optimal === true
            ? `Least disturbing of all found; none that passes disturbs less than ${disturbance.boundPoints} points, counted cable by cable (${disturbance.examined} looked at for that):`
            : 'Least disturbing of all found:',
          line(calmest),
        ];
  const without = bestOfKind.flatMap(({ kind, why, reason, boundPence }) =>
    why === null ? [] : [`  ${noneOf(kind, why, boundPence)}: ${reason}`],
  );
  return `\n\n${[`${head} (${examined} looked at)`, ...lines, ...calm, ...without].join('\n')}`;
}
