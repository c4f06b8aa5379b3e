import type { Style, Workbook } from 'exceljs';

/** Gives each object a number of its own. */
function numbering(): (part: object | undefined) => number {
  const numbers = new Map<object, number>();
  return (part) => {
    if (part === undefined) return 0;
    const known = numbers.get(part) ?? numbers.size + 1;
    numbers.set(part, known);
    return known;
  };
}

/**
 * Makes cells that look alike share one style: the package turns each style object into text to tell which it is, which takes longer
 * than all else of a cell. To be called last, since a change of one such cell would change all of them.
 */
export function shareStyles(book: Workbook): void {
  const [fontOf, fillOf, borderOf] = [numbering(), numbering(), numbering()];
  const known = new Map<string, Partial<Style>>();
  for (const sheet of book.worksheets)
    sheet.eachRow((row) =>
      row.eachCell({ includeEmpty: true }, (cell) => {
        const { font, fill, border, numFmt, alignment, protection } = cell.style;
        const parts = [fontOf(font), fillOf(fill), borderOf(border), numFmt, alignment, protection];
        const key = JSON.stringify(parts);
        const style = known.get(key) ?? cell.style;
        known.set(key, style);
        cell.style = style;
      }),
    );
}
