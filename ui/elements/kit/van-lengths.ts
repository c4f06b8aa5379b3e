import type { Stock } from '#model/job.ts';

/** What the van holds of something that is cut, as typed: its unbroken lengths, m, or why it cannot be read. */
export type TypedLengths =
  | { readonly ok: true; readonly lengthsM: readonly number[] }
  | { readonly ok: false; readonly error: string };

/** The longest that one piece can be, m: more than any drum. */
const MOST_M = 1000;
const MOST_PIECES = 100;
const PIECE = /^(\d+\.?\d*|\.\d+)\s*m?$/i;

/**
 * Reads unbroken lengths as people type them: "12", "5.5, 3 and 2", "6 m + 2.5 m", "3 x 2.5". Empty: none.
 *
 * @returns the reason with how it is written, where a piece is no length.
 */
export function readLengths(typed: string): TypedLengths {
  const words = typed
    .split(/,|;|\+|\band\b|\n/i)
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const lengthsM: number[] = [];
  for (const word of words) {
    const many = /^(\d+)\s*[x×]\s*(.+)$/i.exec(word);
    const [count, piece] = many === null ? [1, word] : [Number(many[1]), (many[2] ?? '').trim()];
    const lengthM = PIECE.test(piece) ? Number.parseFloat(piece) : Number.NaN;
    if (!(lengthM > 0 && lengthM <= MOST_M) || count > MOST_PIECES)
      return {
        ok: false,
        error: `“${word}” is no length, so it is not saved: write pieces in metres, like 5.5, 3, 2 x 2.5.`,
      };
    lengthsM.push(...Array.from({ length: count }, () => lengthM));
  }
  return lengthsM.length <= MOST_PIECES
    ? { ok: true, lengthsM }
    : { ok: false, error: `More than ${MOST_PIECES} pieces are not kept.` };
}

/** The lengths as they are typed, longest first as told: "5.5, 3"; empty where the van has none. */
export const lengthsWritten = (held: readonly Stock[]): string =>
  held.flatMap(({ quantity, lengthsM }) => lengthsM ?? [quantity]).join(', ');
