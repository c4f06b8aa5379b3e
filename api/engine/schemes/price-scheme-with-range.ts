import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { rcbosIfAssumed } from '../rules/assumed-without-rcd.ts';
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

/** A worked scheme with the RCBOs that it needs, should circuits have no RCD, as is only assumed. */
function withAssumedRcbos({ house, worked }: ToPrice): readonly Worked[] {
  const rcbos = rcbosIfAssumed(worked);
  const { scheme } = worked;
  if (scheme === null || rcbos.length === 0) return [];
  return [workScheme(house, { ...scheme, remedies: [...scheme.remedies, ...rcbos] }, worked.runs)];
}

/**
 * The range with what an enclosure would make of it, where nobody knows whether the board takes an RCBO, and with
 * the RCBO itself, where the scheme has none and only assumptions say that it needs one.
 */
function widened<R extends PriceEnds>(range: R, toPrice: ToPrice): R {
  const { house, worked, library } = toPrice;
  const withRcbos = withAssumedRcbos(toPrice);
  const withEnclosures = [worked, ...withRcbos].flatMap((one) =>
    one.scheme === null || boardsWithUnknownRcbo(one).length === 0
      ? []
      : [workScheme(house, withEnclosure(one.scheme), worked.runs)],
  );
  const others = [...withRcbos, ...withEnclosures].map((one) => endsOfWorked(one, library));
  return {
    ...range,
    lowPence: Math.min(range.lowPence, ...others.map(({ lowPence }) => lowPence)),
    highPence: Math.max(range.highPence, ...others.map(({ highPence }) => highPence)),
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
 * the price of an enclosure beside the board instead; where only an assumption says that it needs an RCBO, to that.
 */
export function priceSchemeWithRange(toPrice: ToPrice): PricedScheme {
  const priced = priceWorked(toPrice.worked, toPrice.library);
  return { ...priced, range: widened(priced.range, toPrice) };
}

/** The ends of that range alone. */
export function endsOfRange(toPrice: ToPrice): PriceEnds {
  return widened(endsOfWorked(toPrice.worked, toPrice.library), toPrice);
}
