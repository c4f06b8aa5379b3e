import type { Prices } from '#model/library.ts';
import { dayOfPrice, staleDaysOf, staleItems } from '../price/list/stale.ts';
import type { BillLine } from '../price/totals.ts';
import type { CheckResult } from '../rules/rule.ts';
import { rule } from '../rules/rule.ts';

type Line = Pick<BillLine, 'item' | 'description' | 'causes' | 'priced' | 'costPence'>;

/** Lines of a bill whose prices are older than the firm lets them be, with their age in days, the oldest first. */
function staleLines(bill: readonly Line[], prices: Prices, today: string) {
  const ages = staleItems(prices, today);
  return bill
    .filter(({ priced, costPence }) => priced && costPence > 0)
    .flatMap((line) => {
      const days = ages.get(line.item);
      return days === undefined ? [] : [{ line, days }];
    })
    .sort((a, b) => b.days - a.days || (a.line.item < b.line.item ? -1 : 1));
}

/**
 * A rule about the price rather than the wiring: prices go up, and a bill made with old ones says so.
 *
 * @param today the day that the estimate carries, ISO.
 */
export const stalePrices = (bill: readonly Line[], prices: Prices, today: string) =>
  rule({
    id: 'PL2',
    title: 'Age of the prices',
    source: 'common practice',
    couldFail: false,
    messages: {
      old: '{count} of the {lines} lines of this bill carry a price that is more than {limit} days old; the oldest is that of {description}, of {day}.',
    },
    remedies: { old: 'Ask the merchant, or take in a new price list.' },
    check: (): readonly CheckResult<'old'>[] => {
      const old = staleLines(bill, prices, today);
      const [oldest] = old;
      if (oldest === undefined) return [];
      const { item, description, causes } = oldest.line;
      const price = prices.items.find((row) => row.item === item);
      return [
        {
          outcome: 'advice',
          messageId: 'old',
          subjectId: causes[0] ?? item,
          origin: 'scheme',
          values: {
            count: old.length,
            lines: bill.length,
            limit: staleDaysOf(prices),
            description,
            day: dayOfPrice(price ?? {}, prices),
          },
          actual: oldest.days,
          limit: staleDaysOf(prices),
          unit: 'days',
        },
      ];
    },
  });
