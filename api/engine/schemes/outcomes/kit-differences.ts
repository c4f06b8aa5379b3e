import { remembered } from '../../plan/remembered.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { twelveDigits } from '../../takeoff/twelve-digits.ts';

/** By how much one outcome takes more (or less, below nought) of an item than another, in its unit. */
export interface KitDifference extends Pick<TakeoffLine, 'item' | 'description' | 'group' | 'unit'> {
  readonly byQuantity: number;
}

/** What the second take-off has more or less of than the first, in the order of a bill, the first's items first. */
export function kitDifferences(
  before: readonly TakeoffLine[],
  after: readonly TakeoffLine[],
): readonly KitDifference[] {
  const had = new Map(before.map((line) => [line.item, line]));
  const has = new Map(after.map((line) => [line.item, line]));
  const lines = [...before, ...after.filter(({ item }) => !had.has(item))];
  return lines.flatMap(({ item, description, group, unit }): readonly KitDifference[] => {
    const byQuantity = twelveDigits((has.get(item)?.quantity ?? 0) - (had.get(item)?.quantity ?? 0));
    return byQuantity === 0 ? [] : [{ item, description, group, unit, byQuantity }];
  });
}

/** Whether two take-offs ask for the same kit, cut the same way. */
export function isSameKit(one: readonly TakeoffLine[], other: readonly TakeoffLine[]): boolean {
  return signatureOf(one) === signatureOf(other);
}

const signatureOf = (lines: readonly TakeoffLine[]): string =>
  lines
    .filter(({ quantity }) => quantity > 0)
    .map(lineSignature)
    .join('\n');

/** What a line is bought by, as one text. */
export const lineSignature = remembered(
  ({ item, unit, quantity, wastePercent, pieces }: TakeoffLine): string =>
    `${item} ${unit} ${quantity} ${wastePercent} ${pieces.map(({ lengthMm }) => lengthMm).join(',')}`,
);
