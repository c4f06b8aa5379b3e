import type { Price, Prices } from '#model/library.ts';
import { daysBetween } from './day-count.ts';

/** Days after which a price counts as old, where the firm has not said otherwise: common practice, no source. */
export const STALE_DAYS = 90;

/** The firm's own limit in days, or the usual one. */
export const staleDaysOf = ({ staleDays }: Pick<Prices, 'staleDays'>): number => staleDays ?? STALE_DAYS;

/** The day that a price is of: its own, else the list's. */
export const dayOfPrice = (price: Pick<Price, 'date'>, prices: Pick<Prices, 'date'>): string =>
  price.date ?? prices.date;

type Listed = Pick<Prices, 'date' | 'staleDays'>;

/**
 * How many days old a price is where that is more than the firm's limit; null where it is not, and for what the demo has
 * invented, which is said to be so elsewhere.
 */
export function staleAge(
  price: Pick<Price, 'date' | 'origin'>,
  prices: Listed,
  today: string,
): number | null {
  if (price.origin === 'demo') return null;
  const age = daysBetween(dayOfPrice(price, prices), today);
  return age !== null && age > staleDaysOf(prices) ? age : null;
}

/** The items whose price is too old, each with its age in days; an item's first row is the one that prices jobs. */
export function staleItems(prices: Prices, today: string): ReadonlyMap<string, number> {
  const ages = new Map<string, number>();
  const seen = new Set<string>();
  for (const price of prices.items) {
    if (seen.has(price.item)) continue;
    seen.add(price.item);
    const age = staleAge(price, prices, today);
    if (age !== null) ages.set(price.item, age);
  }
  return ages;
}
