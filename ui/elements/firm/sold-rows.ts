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

/**
 * The sizes of a family once one of them is bought or no longer bought, rising. Null: all, which is what a firm has that says
 * nothing; `last`: it was the only one, so it stays.
 */
export function boughtWith(
  row: SoldRow,
  sold: SoldSizes,
  { size, isBought }: { readonly size: number; readonly isBought: boolean },
): readonly number[] | null | 'last' {
  const before = boughtOf(row, sold);
  const after = row.sizes.filter((each) => (each === size ? isBought : before.includes(each)));
  if (after.length === 0) return 'last';
  return after.length === row.sizes.length ? null : after;
}
