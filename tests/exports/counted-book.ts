import { type ShoppingSheet, shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import { workbookOf } from '#exports/workbook.ts';
import type { Library } from '#model/library.ts';

const STATE = '7K3M-9QDX';

/** The shopping list of a scheme as it is counted: nothing in case, nothing taken instead. */
function countedShopping(of: Estimate, schemeId: string, library: Library): ShoppingSheet {
  const scheme = of.schemes.find(({ id }) => id === schemeId) ?? of.schemes[0];
  if (scheme === undefined) throw new Error('The job has no scheme.');
  const { reference, title, date } = of;
  const { prices } = library;
  return shoppingSheetOf({ reference, title, date, state: STATE, demoNote: null, scheme, prices });
}

/** The workbook of a scheme as it is counted. */
export function countedBook(of: Estimate, schemeId: string, library: Library): Promise<Uint8Array> {
  return workbookOf(of, schemeId, {
    library,
    state: STATE,
    shopping: countedShopping(of, schemeId, library),
  });
}
