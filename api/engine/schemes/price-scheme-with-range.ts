import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { type PricedScheme, priceWorked } from './price-worked.ts';
import { type House, workScheme } from './work-scheme.ts';

/** True when the scheme counts on an RCBO and nobody has said that the board takes one. */
export const countsOnUnknownRcbo = ({ job, scheme }: Worked): boolean =>
  scheme?.remedies.some((remedy) => remedy.kind === 'rcbo') === true &&
  job.boards.some(
    (board) => board.rcboAvailable === undefined || board.certainty?.rcboAvailable === 'unknown',
  );

const withEnclosure = (scheme: Scheme): Scheme => ({
  ...scheme,
  remedies: scheme.remedies.map((remedy) =>
    remedy.kind === 'rcbo' ? { ...remedy, kind: 'rcd-enclosure' } : remedy,
  ),
});

/**
 * Counts and prices a scheme; where the board may not take the RCBO that it counts on, the range reaches to
 * the price of an enclosure beside the board instead.
 */
export function priceSchemeWithRange(house: House, worked: Worked, library: Library): PricedScheme {
  const priced = priceWorked(worked, library);
  if (worked.scheme === null || !countsOnUnknownRcbo(worked)) return priced;
  const other = priceWorked(workScheme(house, withEnclosure(worked.scheme)), library);
  return {
    ...priced,
    range: {
      ...priced.range,
      lowPence: Math.min(priced.range.lowPence, other.range.lowPence),
      highPence: Math.max(priced.range.highPence, other.range.highPence),
    },
  };
}
