import { labelsOf } from '#drawing/label-of.ts';
import { type CsvCell, csvText } from '#engine/price/list/csv-text.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Library } from '#model/library.ts';
import type { LineContext } from '../line-context.ts';

/** What a CSV of one scheme is made from. */
export interface CsvRequest {
  readonly estimate: Estimate;
  readonly schemeId: string;
  /** The library that the estimate was priced with. */
  readonly library: Library;
  /** The name of the job's state. */
  readonly state: string;
}

/** The scheme asked for, with what its lines are told by. */
export function csvContext({ estimate, schemeId, library }: CsvRequest): LineContext {
  const scheme = estimate.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) throw new Error(`The estimate has no scheme "${schemeId}".`);
  return { scheme, library, labelOf: labelsOf(scheme.worked) };
}

/** A column of a CSV file: its heading and what a line has in it. */
export interface CsvColumn<Line> {
  readonly header: string;
  readonly of: (line: Line) => CsvCell;
}

/**
 * Headings, then a row a line and no sums, so that a column adds up. Every row ends with the job's reference, the scheme,
 * the state and the date: rows of several jobs can stand in one sheet. No spreadsheet takes a cell for a formula.
 */
export function csvOf<Line>(
  { estimate, state }: CsvRequest,
  { scheme }: LineContext,
  { columns, lines }: { readonly columns: readonly CsvColumn<Line>[]; readonly lines: readonly Line[] },
): string {
  const always = [estimate.reference, scheme.name, state, estimate.date];
  return csvText([
    [...columns.map(({ header }) => header), 'Job', 'Scheme', 'State', 'Date'],
    ...lines.map((line) => [...columns.map(({ of }) => of(line)), ...always]),
  ]);
}
