import type { Ask, ShoppingEntry, ShoppingList } from '#engine/price/shopping/shopping-list.ts';

/** One size that was in the basket when its entry was ticked. */
type Had = Pick<Ask, 'kind' | 'count' | 'quantity' | 'words'>;

/** What somebody has put into the basket or the van: an entry as it was asked for at that moment. */
export interface Tick {
  /** The key of the entry. */
  readonly key: string;
  readonly description: string;
  readonly had: readonly Had[];
}

/** By key, in the order of ticking; no key twice. */
export type Ticks = readonly Tick[];

const hadOf = ({ asks }: Pick<ShoppingEntry, 'asks'>): readonly Had[] =>
  asks.map(({ kind, count, quantity, words }) => ({ kind, count, quantity, words }));

const sameHad = (a: readonly Had[], b: readonly Had[]): boolean =>
  a.length === b.length &&
  a.every((one, i) => one.kind === b[i]?.kind && one.count === b[i].count && one.quantity === b[i].quantity);

/** How an entry stands: to be had, had as it is asked for, or had before it was asked for otherwise. */
export type TickState =
  | { readonly is: 'open' }
  | { readonly is: 'had' }
  | { readonly is: 'changed'; readonly words: string };

/** How an entry stands by what was ticked. */
export function tickState(entry: ShoppingEntry, ticks: Ticks): TickState {
  const tick = ticks.find(({ key }) => key === entry.key);
  if (tick === undefined) return { is: 'open' };
  const now = hadOf(entry);
  return sameHad(tick.had, now) ? { is: 'had' } : { is: 'changed', words: changeWords(tick.had, now) };
}

/** "Was 4, now 6: 2 more"; what is asked for in other sizes only by before and now. */
function changeWords(before: readonly Had[], now: readonly Had[]): string {
  const change = `Was ${inRow(before)}, now ${inRow(now)}`;
  const [had, asked] = [only(before), only(now)];
  if (had === null || asked === null || had.kind !== asked.kind || had.quantity !== asked.quantity)
    return change;
  const more = asked.count - had.count;
  return more > 0 ? `${change}: ${more} more` : `${change}: ${-more} too many`;
}

const only = (had: readonly Had[]): Had | null => (had.length === 1 ? (had[0] ?? null) : null);

const inRow = (had: readonly Had[]): string => had.map(({ words }) => words).join(' and ');

/** Ticks an entry as it is asked for now, or takes its tick away. */
export function ticked(ticks: Ticks, entry: ShoppingEntry, is: boolean): Ticks {
  const others = ticks.filter(({ key }) => key !== entry.key);
  return is ? [...others, { key: entry.key, description: entry.description, had: hadOf(entry) }] : others;
}

/** Keys of the entries that are had as they are asked for. */
export const hadKeys = ({ groups }: ShoppingList, ticks: Ticks): ReadonlySet<string> =>
  new Set(
    groups
      .flatMap(({ entries }) => entries)
      .filter((entry) => tickState(entry, ticks).is === 'had')
      .map(({ key }) => key),
  );

/** What was ticked and is on the list no longer, in the order of ticking. */
export function strays({ groups }: ShoppingList, ticks: Ticks): Ticks {
  const keys = new Set(groups.flatMap(({ entries }) => entries.map(({ key }) => key)));
  return ticks.filter(({ key }) => !keys.has(key));
}

/** "1 pack of 10: Open grommet 20 mm". */
export const strayWords = ({ description, had }: Tick): string => `${inRow(had)}: ${description}`;

/** What a shopper has marked of a list. */
export interface Marked {
  readonly ticks: Ticks;
  /** Keys of what was not in stock where it was asked for, in the order of marking; no key twice. */
  readonly notInStock: readonly string[];
}

export const nothingMarked: Marked = { ticks: [], notInStock: [] };

/** Marks a thing as not in stock, or takes the mark away. */
export function notInStockAs(keys: readonly string[], key: string, is: boolean): readonly string[] {
  const others = keys.filter((one) => one !== key);
  return is ? [...others, key] : others;
}

/** What is marked as a text to be kept. */
export const markedText = ({ ticks, notInStock }: Marked): string => JSON.stringify({ ticks, notInStock });

/** What is marked, from a kept text; what is no such text is as good as none, and what is no mark in it is left out. */
export function markedFrom(text: string | null): Marked {
  try {
    const kept: unknown = JSON.parse(text ?? 'null');
    if (!isRecord(kept)) return nothingMarked;
    const known = new Map(
      listOf(kept.ticks)
        .filter(isTick)
        .map((tick) => [tick.key, tick]),
    );
    const keys = listOf(kept.notInStock).filter((key) => typeof key === 'string');
    return { ticks: [...known.values()], notInStock: [...new Set(keys)] };
  } catch {
    return nothingMarked;
  }
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isHad = (value: unknown): value is Had =>
  isRecord(value) &&
  typeof value.kind === 'string' &&
  typeof value.words === 'string' &&
  Number.isFinite(value.count) &&
  Number.isFinite(value.quantity);

const isTick = (value: unknown): value is Tick =>
  isRecord(value) &&
  typeof value.key === 'string' &&
  typeof value.description === 'string' &&
  Array.isArray(value.had) &&
  value.had.every(isHad);
