/** One line of a material list counted by hand from a drawing, with how far another honest count may lie from it. */
export interface CountedLine {
  /** The thing in a buyer's words. */
  readonly item: string;
  /** The catalogue's item; null for what is no thing to buy, or what the catalogue does not hold. */
  readonly id: string | null;
  /** What the job uses, in `unit`, before waste and before packs. */
  readonly quantity: number;
  readonly unit: 'each' | 'm' | 'kg';
  /** How far another count may lie off, in `unit`; 0 where both can only count the same pieces. */
  readonly within: number;
  /** Why it may lie off; null where it may not. */
  readonly why: string | null;
  /** What is bought, where that is more than what is used; null when the two are one. */
  readonly bought: string | null;
}

/** A line of whole pieces that every count must agree on. */
export const pieces = (item: string, id: string | null, quantity: number, bought?: string): CountedLine => ({
  item,
  id,
  quantity,
  unit: 'each',
  within: 0,
  why: null,
  bought: bought ?? null,
});

/** A line that another count may see a little differently, and why. */
export function about(
  item: string,
  id: string | null,
  [quantity, unit]: readonly [number, CountedLine['unit']],
  [within, why]: readonly [number, string],
  bought?: string,
): CountedLine {
  return { item, id, quantity, unit, within, why, bought: bought ?? null };
}
