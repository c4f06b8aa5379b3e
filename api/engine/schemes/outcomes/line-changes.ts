import { quantityWithWaste } from '../../takeoff/demand.ts';
import type { Piece, TakeoffLine } from '../../takeoff/line.ts';
import { twelveDigits } from '../../takeoff/twelve-digits.ts';

/** What an outcome makes of one item. */
export interface Change {
  readonly before: TakeoffLine;
  readonly after: TakeoffLine;
}

/** A line of an item that nothing is asked of. */
export const emptied = (line: TakeoffLine): TakeoffLine => ({
  ...line,
  measured: 0,
  quantity: 0,
  lowQuantity: 0,
  highQuantity: 0,
  pieces: [],
  causes: [],
});

/** By how much more a change asks for, before waste; none asks for no more. */
export const moreOf = (change: Change | null): number =>
  change === null ? 0 : change.after.measured - change.before.measured;

/** A line with what a change adds, and without what it takes away; never below nothing. */
export function withChange(line: TakeoffLine, change: Change | null): TakeoffLine {
  if (change === null) return line;
  const { before, after } = change;
  const pieces = [
    ...without(line.pieces, without(before.pieces, after.pieces)),
    ...without(after.pieces, before.pieces),
  ];
  const measured = Math.max(0, twelveDigits(line.measured + moreOf(change)));
  const wastePercent = Math.max(line.wastePercent, after.wastePercent);
  return {
    ...line,
    measured,
    wastePercent,
    quantity: quantityWithWaste({ measured, wastePercent, unit: line.unit }),
    pieces: pieces.toSorted(byLength),
    causes: [...new Set([...line.causes, ...after.causes])].toSorted(),
  };
}

const byLength = (a: Piece, b: Piece): number =>
  b.lengthMm - a.lengthMm || (a.cause < b.cause ? -1 : Number(a.cause > b.cause));

/** One line that holds the pieces of all of some, a piece that several of them have once. */
export function everything(lines: readonly [TakeoffLine, ...TakeoffLine[]]): TakeoffLine {
  const [first] = lines;
  const pieces: Piece[] = [];
  for (const line of lines) pieces.push(...without(line.pieces, pieces));
  const measured = twelveDigits(pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / 1e3);
  const wastePercent = Math.max(...lines.map((line) => line.wastePercent));
  return {
    ...first,
    measured,
    wastePercent,
    quantity: quantityWithWaste({ measured, wastePercent, unit: first.unit }),
    pieces: pieces.toSorted(byLength),
    causes: [...new Set(lines.flatMap(({ causes }) => causes))].toSorted(),
  };
}

/** Pieces of one list that the other does not have, by what they are for and how long they are, each as often. */
function without(pieces: readonly Piece[], others: readonly Piece[]): readonly Piece[] {
  if (others.length === 0 || pieces.length === 0) return pieces;
  const counts = new Map<string, number>();
  const keyOf = ({ cause, lengthMm }: Piece): string => `${cause} ${lengthMm}`;
  for (const one of others) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
  return pieces.filter((piece) => {
    const count = counts.get(keyOf(piece)) ?? 0;
    counts.set(keyOf(piece), count - 1);
    return count <= 0;
  });
}
