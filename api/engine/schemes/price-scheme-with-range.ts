import type { Library } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { endsOfWorked, type PricedScheme, priceWorked } from './price-worked.ts';
import { type PriceTurn, workedAs } from './turns/price-turn.ts';
import { turnedTogether } from './turns/turned-together.ts';
import { turnsOf } from './turns/turns-of.ts';
import type { House } from './work-scheme.ts';

/** A scheme worked in a house, and what it is priced by. */
export interface ToPrice {
  readonly house: House;
  readonly worked: Worked;
  readonly library: Library;
}

/**
 * The range with what an answer that nobody has yet would make of it: an enclosure where the board may take no RCBO, a bond
 * that is missing, a harder wall. All that may go one way goes that way at once, as all that is counted does.
 */
function widened<R extends PriceEnds>(
  range: R,
  { house, worked, library }: ToPrice,
  turns: readonly PriceTurn[] = turnsOf(house, worked, library),
): R {
  const others = turnedTogether(turns).map((changes) =>
    endsOfWorked(workedAs(house, worked, changes), library),
  );
  return {
    ...range,
    lowPence: Math.min(range.lowPence, ...others.map(({ lowPence }) => lowPence)),
    highPence: Math.max(range.highPence, ...others.map(({ highPence }) => highPence)),
  };
}

/** Counts and prices a scheme; what the survey leaves open and would cost or save money is in its range. */
export function priceSchemeWithRange(toPrice: ToPrice): PricedScheme {
  const priced = priceWorked(toPrice.worked, toPrice.library);
  return { ...priced, range: widened(priced.range, toPrice) };
}

/** The ends of that range alone. */
export const endsOfRange = (toPrice: ToPrice): PriceEnds => endsOnceTold(toPrice)([]);

/** The same once some questions are settled whose answers change nothing that is counted; what they share is worked out once. */
export function endsOnceTold(toPrice: ToPrice): (settled: readonly string[]) => PriceEnds {
  const { house, worked, library } = toPrice;
  const counted = endsOfWorked(worked, library);
  const turns = turnsOf(house, worked, library);
  return (settled) =>
    widened(
      counted,
      toPrice,
      turns.filter(({ question }) => !settled.includes(question)),
    );
}
