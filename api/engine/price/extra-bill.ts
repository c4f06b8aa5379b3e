import type { Extra } from '#model/extra.ts';
import { extraCauses } from '../labour/extra-work.ts';
import { type Exact, exactOf, times } from './exact.ts';
import { roundHalfUpPence } from './money.ts';
import type { BillLine } from './totals.ts';

/** The group of the bill that holds what extra work takes. */
export const EXTRA_GROUP = 'extras' as const;

function lineOf(extra: Extra, pence: number, vatFactor: Exact): BillLine {
  return {
    item: `${extra.id}/materials`,
    description: extra.words,
    group: EXTRA_GROUP,
    unit: 'set',
    quantity: 1,
    fromStock: 0,
    causes: extraCauses(extra),
    pricePence: pence,
    perQuantity: 1,
    packQuantity: null,
    charge: 'used',
    chargedQuantity: 1,
    costPence: roundHalfUpPence(times(exactOf(pence), vatFactor)),
    priced: true,
  };
}

/**
 * What the materials of extra work cost, a line each, in the order of the job file; none for what takes no materials. They are
 * sums that somebody typed, not things that were counted: nothing of them is bought, stocked or cut by the other lists.
 *
 * @param vatFactor what a listed price costs the firm, as for every line of the bill.
 */
export const extraBill = (extras: readonly Extra[] | undefined, vatFactor: Exact): readonly BillLine[] =>
  (extras ?? []).flatMap((extra) =>
    extra.materialsPence === undefined || extra.materialsPence === 0
      ? []
      : [lineOf(extra, extra.materialsPence, vatFactor)],
  );
