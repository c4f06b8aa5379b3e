import type { Price } from '#model/library.ts';
import { type Item, knownItems } from '../../takeoff/items.ts';
import type { ListReading } from './list-reading.ts';
import { cellAt } from './row-offer.ts';
import { cellWords, type SheetRow } from './sheet.ts';

/** What a row says of itself, by which it is known again. */
export interface RowWords {
  /** The merchant's number, or their words where there is none; empty where the row has neither. */
  readonly key: string;
  readonly code: string;
  readonly words: string;
}

export function rowWords(row: SheetRow, reading: ListReading): RowWords {
  const code = cellWords(cellAt(row, 'code', reading));
  const words = cellWords(cellAt(row, 'description', reading));
  return { key: code === '' ? words : code, code, words };
}

const alike = (text: string): string => text.toLowerCase().replace(/\s+/g, ' ').trim();

/** Finds the item that a row is about: null where none is known. */
export type MatchRow = (row: SheetRow) => Item | null;

/** Items that a list may speak of: those of the catalogue, and what else the firm has a price for. */
function itemsById(prices: readonly Price[]): ReadonlyMap<string, Item> {
  const others = prices.map(
    ({ item, unit }): Item => ({ id: item, description: item, unit, group: 'sundries' }),
  );
  return new Map([...others, ...knownItems].map((item) => [item.id, item]));
}

/** Codes that the price list holds of one merchant, each leading to its item; a code of two items leads to none. */
function codesOf(prices: readonly Price[], supplier: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const doubtful = new Set<string>();
  for (const { item, supplier: whose, code, packs } of prices) {
    if ((whose ?? '') !== supplier) continue;
    for (const one of [code, ...(packs ?? []).map((pack) => pack.code)]) {
      if (one === undefined || one === '') continue;
      const key = alike(one);
      if (found.has(key) && found.get(key) !== item) doubtful.add(key);
      found.set(key, item);
    }
  }
  for (const key of doubtful) found.delete(key);
  return found;
}

const byDescription: ReadonlyMap<string, string> = new Map(
  knownItems.map(({ id, description }) => [alike(description), id]),
);

/**
 * Says what item each row is about: what its own column names, what a person has said of it, the merchant's code that the
 * price list holds, or the item's very description; in that order.
 */
export function rowMatcher(prices: readonly Price[], reading: ListReading): MatchRow {
  const items = itemsById(prices);
  const codes = codesOf(prices, reading.name);
  const said = new Map(reading.matches.map(({ row, item }) => [alike(row), item]));
  return (row) => {
    const named = cellWords(cellAt(row, 'item', reading));
    if (reading.isOwn) return items.get(named) ?? null;
    const { key, code, words } = rowWords(row, reading);
    const id = said.get(alike(key)) ?? codes.get(alike(code)) ?? byDescription.get(alike(words));
    return id === undefined ? null : (items.get(id) ?? null);
  };
}

/** Words and figures of a description, each once; and what is both, such as B16, besides its figure. */
function tokensOf(text: string): ReadonlySet<string> {
  const lower = text.toLowerCase();
  const parts = lower.match(/\d+(?:\.\d+)?|\p{L}{2,}/gu) ?? [];
  const both = lower.match(/\b\p{L}\d+(?:\.\d+)?/gu) ?? [];
  return new Set([...parts.map((word) => word.replace(/(?<=\p{L}{3})s$/u, '')), ...both]);
}

/** A figure counts for more than a word, since sizes tell things apart. */
const weightOf = (token: string): number => (/^\d/.test(token) ? 2 : 1);
const weightOfAll = (tokens: Iterable<string>): number =>
  [...tokens].reduce((all, token) => all + weightOf(token), 0);

interface Described {
  readonly item: Item;
  readonly weight: number;
}

/** The catalogue's items by each word of their descriptions. */
const describedBy: ReadonlyMap<string, readonly Described[]> = (() => {
  const found = new Map<string, Described[]>();
  for (const item of knownItems) {
    const tokens = tokensOf(item.description);
    const described = { item, weight: weightOfAll(tokens) };
    for (const token of tokens) found.set(token, [...(found.get(token) ?? []), described]);
  }
  return found;
})();

/** An item that a row may be about, and how much their words have in common, 0 to 1. */
export interface Likely {
  readonly item: Item;
  readonly likeness: number;
}

/** The items whose descriptions are most like some words, the likest first; none that have nothing in common. */
export function likelyItems(words: string, most: number): readonly Likely[] {
  const tokens = tokensOf(words);
  const own = weightOfAll(tokens);
  const shared = new Map<Described, number>();
  for (const token of tokens)
    for (const described of describedBy.get(token) ?? [])
      shared.set(described, (shared.get(described) ?? 0) + weightOf(token));
  return [...shared]
    .map(([{ item, weight }, common]) => ({ item, likeness: (2 * common) / (weight + own) }))
    .sort((a, b) => b.likeness - a.likeness || (a.item.id < b.item.id ? -1 : 1))
    .slice(0, most);
}
