import ExcelJS from 'exceljs';
import { labelsOf } from '#drawing/label-of.ts';
import type { ShoppingSheet } from '#drawing/shopping/shopping-sheet.ts';
import { demoMarksOf, demoNotice } from '#engine/demo-marks.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Library } from '#model/library.ts';
import { addBillSheet } from './workbook/bill-sheet.ts';
import { addCableSheet } from './workbook/cable-sheet.ts';
import { cellText } from './workbook/cell-text.ts';
import { addChecksSheet } from './workbook/checks-sheet.ts';
import { addComparisonSheet } from './workbook/comparison-sheet.ts';
import { addCutSheet } from './workbook/cut-sheet.ts';
import { addLabourSheet } from './workbook/labour-sheet.ts';
import { addPointsSheet } from './workbook/points-sheet.ts';
import { addProofSheet } from './workbook/proof-sheet.ts';
import { addShoppingSheet } from './workbook/shopping-sheet.ts';
import { addSummarySheet } from './workbook/summary-sheet.ts';
import type { WorkbookContext } from './workbook/workbook-context.ts';

/**
 * The workbook of one scheme: summary, bill of materials, shopping list, cut list, labour, cable schedule, points, proof, checks and
 * comparison. Quantities, prices, mark-up and VAT are live formulas that come to the engine's own figures;
 * every formula carries its result, for viewers that do not calculate. `TotalNet`, `TotalVat`, `TotalGross`
 * and the rates are named cells.
 *
 * @param options.library the library that the estimate was priced with.
 * @param options.state the name of the job's state.
 * @param options.shopping the scheme's shopping list as all its other formats have it; shopping and cut sheet show that one.
 * @returns the bytes of an XLSX file; the same estimate gives the same cells.
 */
export async function workbookOf(
  estimate: Estimate,
  schemeId: string,
  options: { readonly library: Library; readonly state: string; readonly shopping: ShoppingSheet },
): Promise<Uint8Array> {
  const scheme = estimate.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) throw new Error(`The estimate has no scheme "${schemeId}".`);
  const book = new ExcelJS.Workbook();
  const written = new Date(`${estimate.date}T00:00:00Z`);
  book.created = written;
  book.modified = written;
  book.creator = cellText(options.library.firm.name);
  book.title = cellText(estimate.title);
  const context: WorkbookContext = {
    book,
    estimate,
    scheme,
    library: options.library,
    state: options.state,
    shopping: options.shopping,
    labelOf: labelsOf(scheme.worked),
    demoNote: demoNotice(demoMarksOf(estimate.schemes, options.library)),
  };
  addSummarySheet(context);
  addBillSheet(context);
  addShoppingSheet(context);
  addCutSheet(context);
  addLabourSheet(context);
  addCableSheet(context);
  addPointsSheet(context);
  addProofSheet(context);
  addChecksSheet(context);
  addComparisonSheet(context);
  return new Uint8Array(await book.xlsx.writeBuffer());
}
