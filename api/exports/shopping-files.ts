import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import { shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import { shoppingText } from '#drawing/shopping/shopping-text.ts';
import { csvText } from '#engine/price/list/csv-text.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from './papers.ts';

/** The shopping list of the shown scheme as files. */
export interface ShoppingFiles {
  /** Plain text for people, cut list with it. */
  readonly text: string;
  /** A row a size that is asked for; no spreadsheet takes any cell for a formula. */
  readonly csv: string;
}

/** The shopping list of the scheme that papers show, by the price list that they were priced with. */
export function shoppingFiles(
  { drawn, shown, state, demoNote }: Pick<Papers, 'drawn' | 'shown' | 'state' | 'demoNote'>,
  { prices }: Library,
): ShoppingFiles {
  const { reference, title, date } = drawn;
  const sheet = shoppingSheetOf({ reference, title, scheme: shown, prices, date, state, demoNote });
  return { text: shoppingText(sheet), csv: csvText(shoppingRows(sheet)) };
}
