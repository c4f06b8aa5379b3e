import type { PurchaseLine } from '#engine/price/buying/purchase.ts';
import { FIRST_ROW } from './table-sheet.ts';

/** Where the cuts of one item stand on the cut sheet, rows as spreadsheets count them; `last` before `first`: none. */
export interface CutRows {
  readonly first: number;
  readonly last: number;
  /** The last row that is cut from the van's lengths: those come first. */
  readonly vanLast: number;
  /** The first row of what nothing is long enough for: those come last. */
  readonly unservedFirst: number;
}

const cutsIn = (cuts: PurchaseLine['cuts']): number =>
  cuts.reduce((sum, { cuts: pieces }) => sum + pieces.length, 0);

/** The rows of the cut sheet, a cut each, item after item in the plan's order; items of which nothing is cut are left out. */
export function cutLayout(lines: readonly PurchaseLine[]): ReadonlyMap<PurchaseLine, CutRows> {
  const layout = new Map<PurchaseLine, CutRows>();
  let first = FIRST_ROW;
  for (const line of lines) {
    const ofVan = line.cuts.filter(({ from }) => from.startsWith('van/'));
    const unservedFirst = first + cutsIn(line.cuts);
    const last = unservedFirst + line.unserved.length - 1;
    if (last < first) continue;
    layout.set(line, { first, last, vanLast: first + cutsIn(ofVan) - 1, unservedFirst });
    first = last + 1;
  }
  return layout;
}

/** A sum of a column of the cut sheet between two rows, for a formula; nought where there are none. */
export function cutSum(column: string, first: number, last: number, sheet: string | null): string {
  if (last < first) return '0';
  const place = sheet === null ? '' : `'${sheet}'!`;
  return `ROUND(SUM(${place}${column}${first}:${column}${last}),3)`;
}
