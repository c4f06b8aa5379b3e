import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import type { ShoppingSheet } from './shopping-sheet.ts';

/** What stands under an entry before its notes: that it was not in stock or what was taken instead, why it is there in case, and what of it goes back. */
export function entryMarks(
  { key }: Pick<ShoppingEntry, 'key'>,
  { inCase, instead, notInStock }: Pick<ShoppingSheet, 'inCase' | 'instead' | 'notInStock'>,
): readonly string[] {
  const took = instead.byKey.get(key)?.words;
  const [why, goesBack] = [inCase.words.get(key), inCase.back.get(key)];
  return [
    ...(took === undefined ? (notInStock.has(key) ? ['Not in stock when asked for'] : []) : [took]),
    ...(why === undefined ? [] : [`In case: ${why}`]),
    ...(goesBack === undefined ? [] : [`Goes back unopened if all is as counted: ${goesBack}`]),
  ];
}
