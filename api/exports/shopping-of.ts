import { type ShoppingSheet, shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { packingOf } from './packing-of.ts';
import type { Papers } from './papers.ts';

/**
 * The shopping list of the scheme that papers show, the same in every format: by the price list that they were priced
 * with, with what is bought in case where the job says that something is, what was taken instead, and what is still open.
 */
export function shoppingOf(
  papers: Pick<Papers, 'result' | 'chosen' | 'drawn' | 'shown' | 'state' | 'demoNote'>,
  library: Library,
  job: Job,
): ShoppingSheet {
  const { drawn, state, demoNote } = papers;
  const { reference, title, date } = drawn;
  const all = packingOf(job, library, papers);
  return shoppingSheetOf({
    ...{ reference, title, date, state, demoNote },
    scheme: papers.shown,
    packing: job.packFor === undefined ? null : all,
    open: all?.plan ?? null,
    taken: job.actuals?.instead,
    prices: library.prices,
  });
}
