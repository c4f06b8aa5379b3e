import { bestFit, type Fitted } from '../buying/best-fit.ts';
import { fillLengths, type SameLengths } from '../buying/fill-coils.ts';
import type { CutPiece } from '../buying/pieces-of.ts';
import type { CutFrom } from '../buying/purchase.ts';

/** An unbroken length that is at hand: `van/1`, `coil-25/1`. */
export interface HeldLength {
  readonly from: string;
  readonly lengthMm: number;
  /** What the merchant gives for it again, thousandths of a penny; null for what cannot go back: cut or held before. */
  readonly millipence: number | null;
}

/** What pieces are cut from, what need not be opened, and pieces that nothing was left for. */
export interface OpenedLengths {
  readonly cuts: readonly CutFrom[];
  readonly unopened: readonly HeldLength[];
  readonly lacking: readonly CutPiece[];
}

/** Steps that one choice of lengths may take. */
const MOST_STEPS = 500_000;

/**
 * Cuts pieces from lengths that are at hand so that what is left whole is worth most: what cannot go back is free, and of
 * the rest the choices are tried by their worth, the least first.
 *
 * @param pieces as `piecesToCut` gives them.
 * @param held in the order in which equal lengths are taken.
 */
export function openedLengths(pieces: readonly CutPiece[], held: readonly HeldLength[]): OpenedLengths {
  const longestMm = Math.max(0, ...held.map(({ lengthMm }) => lengthMm));
  const tooLong = pieces.filter(({ lengthMm }) => lengthMm > longestMm);
  const fitting = pieces.filter(({ lengthMm }) => lengthMm <= longestMm);
  const free = held.filter(({ millipence }) => millipence === null);
  const whole = held.filter(({ millipence }) => millipence !== null);
  for (const opened of choicesByWorth(whole)) {
    const cuts = cutAll(fitting, [...free, ...opened]);
    if (cuts !== null)
      return { cuts, unopened: whole.filter((one) => !opened.includes(one)), lacking: tooLong };
  }
  const { filled, left } = bestFit(kindsOf(fitting), sameLengths(held));
  const lacking = kindsOf(fitting).flatMap(({ lengthMm }, i) => {
    const alike = fitting.filter((piece) => piece.lengthMm === lengthMm);
    return alike.slice(alike.length - (left[i] ?? 0));
  });
  const cut = fitting.filter((piece) => !lacking.includes(piece));
  const cuts = namedCuts(cut, held, { pieces: fitting, filled });
  return { cuts, unopened: [], lacking: [...tooLong, ...lacking] };
}

/** Every choice of whole lengths, of equal ones the first, by worth, then by number. */
function choicesByWorth(whole: readonly HeldLength[]): readonly (readonly HeldLength[])[] {
  const kinds = new Map<string, HeldLength[]>();
  for (const one of whole) {
    const key = `${one.lengthMm} ${one.millipence}`;
    kinds.set(key, [...(kinds.get(key) ?? []), one]);
  }
  const choices = [...kinds.values()].reduce<readonly (readonly HeldLength[])[]>(
    (before, alike) =>
      before.flatMap((some) =>
        Array.from({ length: alike.length + 1 }, (_, count) => [...some, ...alike.slice(0, count)]),
      ),
    [[]],
  );
  return choices.toSorted((a, b) => worth(a) - worth(b) || a.length - b.length);
}

const worth = (lengths: readonly HeldLength[]): number =>
  lengths.reduce((sum, { millipence }) => sum + (millipence ?? 0), 0);

/** All pieces from these lengths; null where that cannot be, or was not found in the steps there are. */
function cutAll(pieces: readonly CutPiece[], held: readonly HeldLength[]): readonly CutFrom[] | null {
  const kinds = kindsOf(pieces);
  const lengths = sameLengths(held);
  const { filled, left } = bestFit(kinds, lengths);
  if (left.every((count) => count === 0)) return namedCuts(pieces, held, { pieces, filled });
  const searched = fillLengths(kinds, lengths, { left: MOST_STEPS });
  if (searched === null || searched === 'spent') return null;
  return namedCuts(pieces, held, { pieces, filled: searched });
}

/** Lengths counted, the shortest first. */
function sameLengths(lengths: readonly { readonly lengthMm: number }[]): readonly SameLengths[] {
  const counts = new Map<number, number>();
  for (const { lengthMm } of lengths) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + 1);
  return [...counts]
    .map(([lengthMm, count]) => ({ lengthMm, count }))
    .toSorted((a, b) => a.lengthMm - b.lengthMm);
}

/** Pieces counted by length, the longest first. */
const kindsOf = (pieces: readonly CutPiece[]): readonly SameLengths[] => sameLengths(pieces).toReversed();

/** The cuts by name: of lengths that are equal the first held, of pieces that are equal the first. */
function namedCuts(
  cut: readonly CutPiece[],
  held: readonly HeldLength[],
  { pieces, filled }: { readonly pieces: readonly CutPiece[]; readonly filled: Fitted['filled'] },
): readonly CutFrom[] {
  const kinds = kindsOf(pieces);
  const waiting = kinds.map(({ lengthMm }) => cut.filter((piece) => piece.lengthMm === lengthMm));
  const lengths = sameLengths(held);
  const at = lengths.map(({ lengthMm }) => held.filter((one) => one.lengthMm === lengthMm));
  const named = filled.map(({ length, takes }): CutFrom => {
    const { from = '', lengthMm = 0 } = at[length]?.shift() ?? {};
    const cuts = takes.flatMap((count, i) => waiting[i]?.splice(0, count) ?? []);
    return { from, lengthMm, cuts, leftMm: cuts.reduce((restMm, one) => restMm - one.lengthMm, lengthMm) };
  });
  const order = new Map(held.map(({ from }, i) => [from, i]));
  return named.toSorted((a, b) => (order.get(a.from) ?? 0) - (order.get(b.from) ?? 0));
}
