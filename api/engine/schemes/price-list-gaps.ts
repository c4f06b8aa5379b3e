import type { LabourTask } from '../labour/task.ts';
import type { BillLine, OtherLine } from '../price/totals.ts';
import type { CheckResult } from '../rules/rule.ts';
import { rule } from '../rules/rule.ts';

/** What a priced scheme lacks in the library. */
export interface LibraryGaps {
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
    },
    remedies: { noPrice: 'Add the item to the price list.', noNorm: 'Add the task to the norms.' },
    check: (): readonly CheckResult<'noPrice' | 'noNorm'>[] => [
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
    ],
  });
