import { quantityWords } from '#engine/price/shopping/asks.ts';
import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';

/** How many of an entry are asked for: "3 ×", "1 pack of 100 and 2 packs of 20", "12 m in one length". */
export function askWords({ asks, unit }: Pick<ShoppingEntry, 'asks' | 'unit'>): string {
  const [only] = asks;
  if (only !== undefined && asks.length === 1 && isSingle(only.kind, unit)) return `${only.words} ×`;
  const words = asks.map((ask) => ask.words);
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

const isSingle = (kind: string, unit: ShoppingEntry['unit']): boolean => kind === 'each' && unit === 'each';

/** An entry as it is asked for: "3 × 13 A twin socket-outlet", "1 pack of 10: Open grommet 20 mm". */
export function entryWords(entry: ShoppingEntry): string {
  const asked = askWords(entry);
  return `${asked}${asked.endsWith('×') ? '' : ':'} ${entry.description}`;
}

/** What the merchant calls it, and the numbers of the sizes that are asked for: "no. 40123, 40125, GROM 20 PK10"; empty where the list tells neither. */
export function merchantWords({ asks, supplierWords }: ShoppingEntry): string {
  const codes = [...new Set(asks.map(({ code }) => code).filter((code) => code !== ''))].join(', ');
  const parts = [codes === '' ? '' : `no. ${codes}`, supplierWords];
  return parts.filter((part) => part !== '').join(', ');
}

/** What becomes of more than is needed: "2 needed, 8 left over"; empty where all of it is used. */
function leftOverWords({ used, leftOver, unit }: ShoppingEntry): string {
  if (leftOver <= 0) return '';
  return `${quantityWords(tidy(used), unit)} needed, ${quantityWords(tidy(leftOver), unit)} left over`;
}

/** What stands under an entry, each a few words: the merchant's name for it, what it is for, what is left over. */
export const entryNotes = (entry: ShoppingEntry, forWords: string): readonly string[] =>
  [
    merchantWords(entry),
    forWords === '' ? '' : `for ${forWords}`,
    entry.place === 'counter' ? leftOverWords(entry) : '',
  ].filter((words) => words !== '');

/** To a hundredth: nobody reads more of a length or a weight. */
const tidy = (quantity: number): number => Math.round(quantity * 100) / 100;
