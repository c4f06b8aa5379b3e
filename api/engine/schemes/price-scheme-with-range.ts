import type { Library } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { PriceEnds } from '../price/price-range.ts';
import { openGaps } from './open-gaps.ts';
import { endsByGaps, endsOfWorked, type PricedScheme, priceWorked } from './price-worked.ts';
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
 * that is missing, a harder wall. All that may go one way goes that way at once, as all that is counted does. What has turned
 * out so is open no longer: nothing is set aside for it at that end.
 */
function widened<R extends PriceEnds>(
  range: R,
  { house, worked, library }: ToPrice,
  turns: readonly PriceTurn[],
): R {
  const others = turnedTogether(turns).map(({ changes, stillOpen }) => {
    const turned = workedAs(house, worked, changes);
    return endsOfWorked(turned, library, openGaps(turned, stillOpen));
  });
  return {
    ...range,
    lowPence: Math.min(range.lowPence, ...others.map(({ lowPence }) => lowPence)),
    highPence: Math.max(range.highPence, ...others.map(({ highPence }) => highPence)),
  };
}

/** Counts and prices a scheme as it is counted, with what is set aside for all that is open; its range without turns. */
export const priceAsCounted = ({ house, worked, library }: ToPrice): PricedScheme =>
  priceWorked(worked, library, openGaps(worked, turnsOf(house, worked, library)));

/** Counts and prices a scheme; what the survey leaves open and would cost or save money is in its range. */
export function priceSchemeWithRange(toPrice: ToPrice): PricedScheme {
  const { house, worked, library } = toPrice;
  const turns = turnsOf(house, worked, library);
  const priced = priceWorked(worked, library, openGaps(worked, turns));
  return { ...priced, range: widened(priced.range, toPrice, turns) };
}

/** The ends of that range alone. */
export const endsOfRange = (toPrice: ToPrice): PriceEnds => endsOnceTold(toPrice)([]);

/** The same once some questions are settled whose answers change nothing that is counted; what they share is worked out once. */
export function endsOnceTold(toPrice: ToPrice): (settled: readonly string[]) => PriceEnds {
  const { house, worked, library } = toPrice;
  const turns = turnsOf(house, worked, library);
  const countedWith = endsByGaps(worked, library);
  return (settled) => {
    const left = turns.filter(({ question }) => !settled.includes(question));
    return widened(countedWith(openGaps(worked, left)), toPrice, left);
  };
}
