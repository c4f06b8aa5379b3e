import type { Prices } from '#model/library.ts';
import type { LabourTask } from '../labour/task.ts';
import type { PurchasePlan } from '../price/buying/purchase.ts';
import type { BillLine, OtherLine } from '../price/totals.ts';
import type { CheckResult } from '../rules/rule.ts';
import { rule } from '../rules/rule.ts';

/** What a priced scheme lacks in the library, and what the library has twice. */
export interface LibraryGaps {
  readonly prices: Prices;
  readonly purchase: PurchasePlan;
  readonly bill: readonly BillLine[];
  readonly labour: readonly LabourTask[];
  readonly other: readonly OtherLine[];
}

/** A rule about the price rather than the wiring: what the library has no figure for is said, never priced at nothing in silence. */
export const libraryGaps = (gaps: LibraryGaps) =>
  rule({
    id: 'PL1',
    title: 'Every line of the price has a figure',
    source: 'common practice',
    couldFail: false,
    messages: {
      noPrice: 'The price list has no "{item}": {description} stands in the bill at nothing.',
      noNorm: 'The labour norms have no "{item}": {description} stands in the price at no time.',
      tooShort:
        'Nothing on the price list, nor in the van, is long enough for {lengthM} m of {description} in one: nothing is bought for it.',
      twice: 'The price list has "{item}" {count} times: the first row counts.',
    },
    remedies: {
      noPrice: 'Add the item to the price list.',
      noNorm: 'Add the task to the norms.',
      tooShort: 'Add a longer length, or cut lengths, to the price list.',
      twice: 'Take the other rows off the price list.',
    },
    check: (): readonly CheckResult<'noPrice' | 'noNorm' | 'tooShort' | 'twice'>[] => [
      ...gaps.bill
        .filter((line) => !line.priced && line.quantity > 0)
        .map(
          (line) =>
            ({
              outcome: 'decide',
              messageId: 'noPrice',
              subjectId: line.causes[0] ?? line.item,
              origin: 'scheme',
              values: { item: line.item, description: line.description },
            }) as const,
        ),
      ...gaps.labour
        .filter((task) => task.typicalMin === null)
        .map(
          (task) =>
            ({
              outcome: 'decide',
              messageId: 'noNorm',
              subjectId: task.causes[0] ?? task.task,
              origin: 'scheme',
              values: { item: task.task, description: task.description },
            }) as const,
        ),
      ...gaps.purchase.lines.flatMap(({ description, unserved, priced }) =>
        (priced ? unserved : []).map(
          ({ cause, lengthMm }) =>
            ({
              outcome: 'decide',
              messageId: 'tooShort',
              subjectId: cause,
              origin: 'scheme',
              values: { description, lengthM: lengthMm / 1e3 },
            }) as const,
        ),
      ),
      ...gaps.bill.flatMap(({ item, causes }) => {
        const count = gaps.prices.items.filter((row) => row.item === item).length;
        if (count < 2) return [];
        const values = { item, count };
        const subjectId = causes[0] ?? item;
        return [{ outcome: 'advice', messageId: 'twice', subjectId, origin: 'scheme', values } as const];
      }),
    ],
  });
