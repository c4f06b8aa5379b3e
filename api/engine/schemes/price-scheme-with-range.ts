import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { type PricedScheme, priceWorked } from './price-worked.ts';
import { type House, workScheme } from './work-scheme.ts';

/**
 * The boards on which a scheme counts for an RCBO, and of which nobody has said whether their maker sells
 * one: those of the circuits that its `rcbo` remedies name (of all it touches, where one names none), and
 * of its new radials with an RCBO. Sorted.
 */
export function boardsWithUnknownRcbo({ job, scheme, circuitIds }: Worked): readonly string[] {
  const fitted = (scheme?.remedies ?? [])
    .filter((remedy) => remedy.kind === 'rcbo')
    .flatMap(({ at }) => (at === undefined ? circuitIds : [at]));
  const circuits = job.circuits.filter(({ id }) => fitted.includes(id));
  const radials = (scheme?.connections ?? []).flatMap((connection) =>
    connection.kind === 'radial' && connection.device.rcd !== undefined ? [connection.board] : [],
  );
  const counted = new Set([...circuits.map(({ board }) => board), ...fitted, ...radials]);
  const isUnknown = (board: (typeof job.boards)[number]): boolean =>
    board.rcboAvailable === undefined ||
    board.certainty?.rcboAvailable === 'unknown' ||
    board.certainty?.rcboAvailable === 'assumed';
  return job.boards
    .filter((board) => counted.has(board.id) && isUnknown(board))
    .map(({ id }) => id)
    .sort();
}

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
  if (worked.scheme === null || boardsWithUnknownRcbo(worked).length === 0) return priced;
  const other = priceWorked(workScheme(house, withEnclosure(worked.scheme), worked.runs), library);
  return {
    ...priced,
    range: {
      ...priced.range,
      lowPence: Math.min(priced.range.lowPence, other.range.lowPence),
      highPence: Math.max(priced.range.highPence, other.range.highPence),
    },
  };
}
