import type { ShoppingEntry, ShoppingGroup } from './shopping-list.ts';

/** An entry with where the price list says that it is had. */
export interface PlacedEntry {
  readonly entry: ShoppingEntry;
  readonly supplier: string;
  readonly counter: string;
}

/** Entries by where they are had, in the order in which groups stand on a list; in a group as they came. */
export function shoppingGroups(entries: readonly PlacedEntry[]): readonly ShoppingGroup[] {
  const byKey = new Map<string, PlacedEntry[]>();
  for (const placed of entries) {
    const key = keyOf(placed);
    const there = byKey.get(key);
    if (there === undefined) byKey.set(key, [placed]);
    else there.push(placed);
  }
  return [...byKey].map(groupOf).toSorted(byPlace);
}

const keyOf = ({ entry: { place }, supplier, counter }: PlacedEntry): string =>
  place === 'counter' ? `counter/${supplier}/${counter}` : place;

function groupOf([key, placed]: readonly [string, readonly PlacedEntry[]]): ShoppingGroup {
  const [first] = placed;
  if (first === undefined) throw new Error(`A group "${key}" of nothing.`);
  const { place } = first.entry;
  const { supplier, counter } = place === 'counter' ? first : { supplier: '', counter: '' };
  const entries = placed.map(({ entry }) => entry);
  const pence = entries.reduce((sum, entry) => sum + (entry.pence ?? 0), 0);
  return { key, place, supplier, counter, title: titleOf(place, supplier, counter), entries, pence };
}

function titleOf(place: ShoppingGroup['place'], supplier: string, counter: string): string {
  if (place === 'van') return 'Take from the van';
  if (place === 'unlisted') return 'Not on the price list';
  if (counter === '') return supplier === '' ? 'No counter named' : supplier;
  return supplier === '' ? capital(counter) : `${supplier}: ${counter}`;
}

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

const placeOrder = { van: 0, counter: 1, unlisted: 2 } as const;

const byPlace = (a: ShoppingGroup, b: ShoppingGroup): number =>
  placeOrder[a.place] - placeOrder[b.place] || byName(a.supplier, b.supplier) || byName(a.counter, b.counter);

/** What has no name comes last. */
const byName = (a: string, b: string): number => {
  if (a === b) return 0;
  if (a === '' || b === '') return a === '' ? 1 : -1;
  return a < b ? -1 : 1;
};
