import type { ImportPlan } from '#engine/price/list/import-plan.ts';
import type { ColumnMap, Price } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';
import { counted } from '../written.ts';

const sameHeaders = (a: ColumnMap, b: ColumnMap): boolean =>
  a.headers.length === b.headers.length && a.headers.every((heading, at) => heading === b.headers[at]);

/** The maps with one put in the place of the one of its headings; a list without headings is not known again. */
function withMap(maps: readonly ColumnMap[], map: ColumnMap | null): readonly ColumnMap[] {
  if (map === null || map.headers.length === 0) return maps;
  return [...maps.filter((one) => !sameHeaders(one, map)), map];
}

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
    prices.items = structuredClone(items) as Price[];
    const maps = withMap(prices.columnMaps ?? [], map);
    if (maps.length > 0) prices.columnMaps = structuredClone(maps) as ColumnMap[];
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
