import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { endsOfWorked, type PricedScheme, priceWorked } from './price-worked.ts';
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

/** The range with what an enclosure would make of it, where nobody knows whether the board takes an RCBO. */
function widened<R extends PriceEnds>(range: R, { house, worked, library }: ToPrice): R {
  if (worked.scheme === null || boardsWithUnknownRcbo(worked).length === 0) return range;
  const other = endsOfWorked(workScheme(house, withEnclosure(worked.scheme), worked.runs), library);
  return {
    ...range,
    lowPence: Math.min(range.lowPence, other.lowPence),
    highPence: Math.max(range.highPence, other.highPence),
  };
}

/** A scheme worked in a house, and what it is priced by. */
export interface ToPrice {
  readonly house: House;
  readonly worked: Worked;
  readonly library: Library;
}

/**
 * Counts and prices a scheme; where the board may not take the RCBO that it counts on, the range reaches to
 * the price of an enclosure beside the board instead.
 */
export function priceSchemeWithRange(toPrice: ToPrice): PricedScheme {
  const priced = priceWorked(toPrice.worked, toPrice.library);
  return { ...priced, range: widened(priced.range, toPrice) };
}

/** The ends of that range alone. */
export function endsOfRange(toPrice: ToPrice): PriceEnds {
  return widened(endsOfWorked(toPrice.worked, toPrice.library), toPrice);
}
