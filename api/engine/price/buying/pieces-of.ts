import type { Piece, TakeoffLine } from '../../takeoff/line.ts';

/** Pieces are cut to so many mm: nobody cuts cable closer. */
export const CUT_STEP_MM = 10;

/** A piece as it is cut: whole mm, waste in it. */
export interface CutPiece {
  readonly cause: string;
  readonly lengthMm: number;
}

/**
 * The pieces of a line as they are cut, up to whole centimetres; the longest first, then by cause. Cable takes its waste
 * on each piece. Tube and channel take none: their waste is what is left of the lengths. They are put together from
 * whole lengths and a rest where they are longer than `longestMm`.
 */
export function piecesToCut({ pieces, wastePercent }: TakeoffLine, longestMm: number): readonly CutPiece[] {
  return pieces.flatMap((piece) => cutPieces(piece, wastePercent, longestMm)).toSorted(byLength);
}

const byLength = (a: CutPiece, b: CutPiece): number =>
  b.lengthMm - a.lengthMm || (a.cause < b.cause ? -1 : Number(a.cause > b.cause));

function cutPieces(piece: Piece, wastePercent: number, longestMm: number): readonly CutPiece[] {
  const { cause, unbroken, lengthMm } = piece;
  if (lengthMm <= 0) return [];
  if (unbroken) return [{ cause, lengthMm: upToStep((lengthMm * (100 + wastePercent)) / 100) }];
  const wholes = lengthMm > longestMm ? Math.floor(lengthMm / longestMm) : 0;
  const restMm = wholes === 0 ? lengthMm : lengthMm - wholes * longestMm;
  const parts = Array.from({ length: wholes }, () => ({ cause, lengthMm: longestMm }));
  return restMm > 0 ? [...parts, { cause, lengthMm: Math.min(upToStep(restMm), longestMm) }] : parts;
}

/** A hair over a step, from adding fractions, is not over. */
const upToStep = (lengthMm: number): number => Math.ceil(lengthMm / CUT_STEP_MM - 1e-6) * CUT_STEP_MM;
