import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import { shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import { shoppingText } from '#drawing/shopping/shopping-text.ts';
import { csvText } from '#engine/price/list/csv-text.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { packingOf } from './packing-of.ts';
import type { Papers } from './papers.ts';

/** The shopping list of the shown scheme as files. */
export interface ShoppingFiles {
  /** Plain text for people, cut list with it. */
  readonly text: string;
  /** A row a size that is asked for; no spreadsheet takes any cell for a formula. */
  readonly csv: string;
}

/**
 * The shopping list of the scheme that papers show, by the price list that they were priced with; with what is bought in
 * case, where the job says that something is, and what is still open.
 */
export function shoppingFiles(
  papers: Pick<Papers, 'result' | 'chosen' | 'drawn' | 'shown' | 'state' | 'demoNote'>,
  library: Library,
  job: Job,
): ShoppingFiles {
  const { drawn, state, demoNote } = papers;
  const { reference, title, date } = drawn;
  const { prices } = library;
  const all = packingOf(job, library, papers);
  const packing = job.packFor === undefined ? null : all;
  const scheme = papers.shown;
  const taken = job.actuals?.instead;
  const head = { reference, title, date, state, demoNote };
  const sheet = shoppingSheetOf({ ...head, scheme, packing, open: all?.plan ?? null, taken, prices });
  return { text: shoppingText(sheet), csv: csvText(shoppingRows(sheet)) };
}
