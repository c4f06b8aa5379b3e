import { castDraft } from 'immer';
import type { ImportPlan } from '#engine/price/list/import-plan.ts';
import type { ColumnMap } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';
import { counted } from '../written.ts';

const sameHeaders = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((heading, at) => heading === b[at]);

/**
 * Takes a merchant's list into the price list, all of the plan in one step, and remembers how the list is read.
 *
 * @param map null for a list of our own, which is always known.
 */
export const importPrices = (
  { changes, items }: Pick<ImportPlan, 'changes' | 'items'>,
  map: ColumnMap | null,
  fileName: string,
): LibraryEdit => ({
  label: `Take in ${counted(changes.length, 'price')} from ${fileName}`,
  change: ({ prices }) => {
    prices.items = castDraft([...items]);
    // A list without headings is not known again.
    if (map === null || map.headers.length === 0) return;
    const others = (prices.columnMaps ?? []).filter(({ headers }) => !sameHeaders(headers, map.headers));
    prices.columnMaps = [...others, castDraft(map)];
  },
});

/** Sets after how many days a price counts as old; null: as is usual. */
export const setStaleDays = (days: number | null): LibraryEdit => ({
  label: 'When a price counts as old',
  change: ({ prices }) => {
    if (days === null) delete prices.staleDays;
    else prices.staleDays = days;
  },
});
