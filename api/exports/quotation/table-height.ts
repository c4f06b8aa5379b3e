/** The words of a table: its cells are texts, or lists, as the PDF writer has them. */
export interface TableWords {
  readonly title?: { readonly under?: string };
  readonly heads: readonly string[];
  readonly rows: readonly (readonly unknown[])[];
}

/** Half of what is printed on an A4 page: what is no longer leaves no more than half of a page empty when it goes on the next. */
export const HALF_PAGE_PT = 370;

/** Of a line of text, its leading in it, and of what is above and below a row. */
const LINE_PT = 13.8;
const ROW_PADDING_PT = 8;
const TITLE_PT = 44;
/** Of a letter of the text on average, rather more than less; measured, half an em. */
const LETTER_PT = 5.2;
/** What a mark before a line of a list takes of its width. */
const MARK_PT = 12;

/** The paragraphs of a cell: texts one over the other, and lists as the paper has them. */
function paragraphsOf(cell: unknown): readonly string[] {
  if (typeof cell === 'string') return [cell];
  if (Array.isArray(cell)) return [cell.flatMap(paragraphsOf).join('')];
  if (typeof cell !== 'object' || cell === null) return [];
  if ('ul' in cell && Array.isArray(cell.ul)) return cell.ul.flatMap(paragraphsOf);
  if ('stack' in cell && Array.isArray(cell.stack)) return cell.stack.flatMap(paragraphsOf);
  return 'text' in cell ? paragraphsOf(cell.text) : [];
}

/** What a cell has above and below its words besides: room to write in. */
function marginPt(cell: unknown): number {
  if (typeof cell !== 'object' || cell === null || !('margin' in cell) || !Array.isArray(cell.margin))
    return 0;
  return cell.margin.reduce((sum: number, side: unknown, i) => sum + (i % 2 === 1 ? Number(side) : 0), 0);
}

function cellLines(cell: unknown, widthPt: number): number {
  const isList = typeof cell === 'object' && cell !== null && 'ul' in cell;
  const letters = Math.max(1, (widthPt - (isList ? MARK_PT : 0)) / LETTER_PT);
  return paragraphsOf(cell).reduce((sum, words) => sum + Math.max(1, Math.ceil(words.length / letters)), 0);
}

/**
 * How high a table comes to, rather too much than too little, points of the page.
 *
 * @param widthsPt of its columns, without their padding.
 */
export function tableHeightPt({ title, rows, heads }: TableWords, widthsPt: readonly number[]): number {
  const rowPt = (cells: readonly unknown[]): number =>
    ROW_PADDING_PT +
    Math.max(
      LINE_PT,
      ...cells.map((cell, i) => cellLines(cell, widthsPt[i] ?? 1) * LINE_PT + marginPt(cell)),
    );
  const titlePt = title === undefined ? 0 : TITLE_PT + (title.under === undefined ? 0 : LINE_PT);
  return rows.reduce((sum, cells) => sum + rowPt(cells), rowPt(heads) + titlePt);
}
