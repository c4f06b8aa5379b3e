import type { Filled, SameLengths } from './fill-coils.ts';

/** Pieces by the order of `pieces`, cut from lengths at hand, and what found no place. */
export interface Fitted {
  readonly filled: readonly Filled[];
  /** How many of each piece are left. */
  readonly left: readonly number[];
}

/**
 * A quick way to cut pieces from lengths: the longest first, each from the length that it leaves the least of. Often the
 * best there is, and never more than is at hand.
 *
 * @param pieces the longest first.
 */
export function bestFit(pieces: readonly SameLengths[], lengths: readonly SameLengths[]): Fitted {
  const open = lengths.flatMap(({ lengthMm, count }, length) =>
    Array.from({ length: Math.min(count, totalCount(pieces)) }, () => ({
      length,
      roomMm: lengthMm,
      takes: pieces.map(() => 0),
    })),
  );
  const left = pieces.map(({ lengthMm, count }, piece) => {
    for (let cut = 0; cut < count; cut++) {
      let best: (typeof open)[number] | undefined;
      for (const one of open)
        if (one.roomMm >= lengthMm && (best === undefined || one.roomMm < best.roomMm)) best = one;
      if (best === undefined) return count - cut;
      best.roomMm -= lengthMm;
      best.takes[piece] = (best.takes[piece] ?? 0) + 1;
    }
    return 0;
  });
  const filled = open.filter(({ takes }) => takes.some((count) => count > 0));
  return { filled: filled.map(({ length, takes }) => ({ length, takes })), left };
}

const totalCount = (pieces: readonly SameLengths[]): number =>
  pieces.reduce((sum, { count }) => sum + count, 0);
