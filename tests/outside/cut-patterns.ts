import type { CutList } from '../engine/price/buying/random-cut-list.ts';

/** Pieces of one length. */
export interface Kind {
  readonly lengthMm: number;
  readonly count: number;
}

/** The lengths of a list, each with how many pieces have it. */
export function kindsOf({ pieces }: Pick<CutList, 'pieces'>): readonly Kind[] {
  const lengths = [...new Set(pieces.map(({ lengthMm }) => lengthMm))];
  return lengths.map((lengthMm) => ({
    lengthMm,
    count: pieces.filter((piece) => piece.lengthMm === lengthMm).length,
  }));
}

/** Every way to fill a length to which no further piece can be added, as counts by kind. */
export function patternsOf(kinds: readonly Kind[], lengthMm: number): readonly (readonly number[])[] {
  const patterns: number[][] = [];
  const counts = kinds.map(() => 0);
  const fill = (kind: number, roomMm: number): void => {
    const one = kinds[kind];
    if (one === undefined) {
      const hasRoom = kinds.some((other, i) => other.lengthMm <= roomMm && (counts[i] ?? 0) < other.count);
      if (!hasRoom && counts.some((count) => count > 0)) patterns.push([...counts]);
      return;
    }
    for (let count = 0; count <= Math.min(one.count, Math.floor(roomMm / one.lengthMm)); count++) {
      counts[kind] = count;
      fill(kind + 1, roomMm - count * one.lengthMm);
    }
    counts[kind] = 0;
  };
  fill(0, lengthMm);
  return patterns;
}
