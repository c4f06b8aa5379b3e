import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import type { ShoppingSheet } from '#drawing/shopping/shopping-sheet.ts';
import { shoppingText } from '#drawing/shopping/shopping-text.ts';
import { MAKER } from '#engine/engine-version.ts';
import { csvText } from '#engine/price/list/csv-text.ts';

/** The shopping list of the shown scheme as files. */
export interface ShoppingFiles {
  /** Plain text for people, cut list with it. */
  readonly text: string;
  /** A row a size that is asked for; no spreadsheet takes any cell for a formula. */
  readonly csv: string;
}

/** A shopping list as files. */
export const shoppingFiles = (shopping: ShoppingSheet): ShoppingFiles => ({
  text: `${shoppingText(shopping)}\n${MAKER}\n`,
  csv: csvText(shoppingRows(shopping)),
});
