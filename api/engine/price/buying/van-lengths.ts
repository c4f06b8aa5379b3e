import type { CutPiece } from './pieces-of.ts';

/** A length in the van, with what is held back of it. */
export interface VanLength {
  readonly lengthMm: number;
  readonly cuts: readonly CutPiece[];
  readonly roomMm: number;
}

/** What of the van is held back for pieces that nothing on the list is long enough for. */
export interface HeldBack {
  /** In the van's order. */
  readonly van: readonly VanLength[];
  readonly unserved: readonly CutPiece[];
}

/** Beyond so many ways to hold back, only the first is looked at. */
export const MOST_WAYS = 100;

/**
 * Every way to give those pieces a length of the van that leaves the fewest mm of them without; the longest piece first,
 * and to each first the length that it leaves the least of.
 *
 * @returns at least one way; `areAll` is false where there are too many to look at.
 */
export function waysHeldBack(
  pieces: readonly CutPiece[],
  vanMm: readonly number[],
): { readonly ways: readonly HeldBack[]; readonly areAll: boolean } {
  const longest = pieces.toSorted((a, b) => b.lengthMm - a.lengthMm);
  let ways: readonly HeldBack[] = [
    { van: vanMm.map((lengthMm) => ({ lengthMm, roomMm: lengthMm, cuts: [] })), unserved: [] },
  ];
  let areAll = true;
  for (const piece of longest) {
    ways = ways.flatMap((way) => withPiece(way, piece));
    areAll &&= ways.length <= MOST_WAYS;
    if (!areAll) ways = ways.slice(0, 1);
  }
  const least = Math.min(...ways.map(unservedMm));
  return { ways: ways.filter((way) => unservedMm(way) === least), areAll };
}

const unservedMm = ({ unserved }: HeldBack): number =>
  unserved.reduce((sum, { lengthMm }) => sum + lengthMm, 0);

/** One piece more: from each length that has room for it, or from none. */
function withPiece({ van, unserved }: HeldBack, piece: CutPiece): readonly HeldBack[] {
  const roomy = van
    .map((length, place) => ({ ...length, place }))
    .filter(({ roomMm }) => roomMm >= piece.lengthMm)
    .toSorted((a, b) => a.roomMm - b.roomMm);
  const served = roomy.map(({ place, lengthMm, cuts, roomMm }) => ({
    van: van.with(place, { lengthMm, cuts: [...cuts, piece], roomMm: roomMm - piece.lengthMm }),
    unserved,
  }));
  return [...served, { van, unserved: [...unserved, piece] }];
}
