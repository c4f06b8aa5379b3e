import { SOLD_SIZES, type SoldSizes } from '#model/library.ts';

/** A family of things that merchants sell in sizes, of which the firm may buy some only. */
export interface SoldRow {
  readonly family: keyof SoldSizes;
  readonly label: string;
  readonly unit: string;
  readonly sizes: readonly number[];
}

const row = (family: keyof SoldSizes, label: string, unit: string): SoldRow => ({
  family,
  label,
  unit,
  sizes: SOLD_SIZES[family],
});

/** Every such family, in the order in which a firm reads them. */
export const soldRows: readonly SoldRow[] = [
  row('boardWays', 'Consumer units', 'ways'),
  row('bondsMm2', 'Bonding conductors', 'mm²'),
  row('leverWays', 'Lever connectors', 'ways'),
  row('plateScrewsMm', 'Spare plate screws', 'mm'),
];

/** The sizes of a family that the firm buys: its own, else all that are sold. */
export const boughtOf = ({ family, sizes }: SoldRow, sold: SoldSizes): readonly number[] =>
  sold[family] ?? sizes;

/** Whether a size is the only one of its family that the firm buys: then it stays, since something has to be counted. */
export function isOnlyOne(row: SoldRow, sold: SoldSizes, size: number): boolean {
  const bought = boughtOf(row, sold);
  return bought.length === 1 && bought.includes(size);
}

/**
 * The sizes of a family once one of them is bought or, unless it is the only one, no longer bought, rising. Null: all of them,
 * as where the firm says nothing.
 */
export function boughtWith(
  row: SoldRow,
  sold: SoldSizes,
  { size, isBought }: { readonly size: number; readonly isBought: boolean },
): readonly number[] | null {
  const before = boughtOf(row, sold);
  const stays = isBought || isOnlyOne(row, sold, size);
  const after = row.sizes.filter((each) => (each === size ? stays : before.includes(each)));
  return after.length === row.sizes.length ? null : after;
}
