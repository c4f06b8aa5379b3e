import type { SameLengths } from './fill-coils.ts';
import { CUT_STEP_MM } from './pieces-of.ts';

/** Beyond so many sums no list of them is kept: a length is then taken to be filled whole. */
const MOST_SUMS = 500_000;

/** What can be told of pieces and lengths before anything is cut, mm. */
export interface CutBound {
  /** The most of a length that pieces can fill. */
  readonly filledMm: (lengthMm: number) => number;
  /** All pieces together that are no longer than a length. */
  readonly fittingMm: (lengthMm: number) => number;
}

/**
 * What pieces can come to in one length at most: their sums by the centimetre, each piece once. So three pieces of 8 m
 * count for 24 m of a coil of 25.
 *
 * @param pieces in whole steps of a centimetre.
 */
export function cutBound(pieces: readonly SameLengths[]): CutBound {
  const totalMm = sumMm(pieces);
  const fittingMm = (lengthMm: number) => sumMm(pieces.filter((piece) => piece.lengthMm <= lengthMm));
  const most = Math.floor(totalMm / CUT_STEP_MM);
  if (most > MOST_SUMS) return { filledMm: (lengthMm) => Math.min(lengthMm, totalMm), fittingMm };
  const sums = sumsOf(pieces, most);
  const filledMm = (lengthMm: number) =>
    highestBit(sums, Math.min(Math.floor(lengthMm / CUT_STEP_MM), most)) * CUT_STEP_MM;
  return { filledMm, fittingMm };
}

const sumMm = (pieces: readonly SameLengths[]): number =>
  pieces.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);

/** Which sums of pieces there are, in steps: a bit for each, up to `most`. */
function sumsOf(pieces: readonly SameLengths[], most: number): Uint32Array {
  const bits = new Uint32Array((most >>> 5) + 1);
  bits[0] = 1;
  for (const { lengthMm, count } of pieces)
    for (let piece = 0; piece < count; piece++) addShifted(bits, Math.round(lengthMm / CUT_STEP_MM));
  return bits;
}

/** Adds to a list of bits the same list so many places further up; from the top, so that what is read is not yet changed. */
function addShifted(bits: Uint32Array, places: number): void {
  const words = places >>> 5;
  const shift = places & 31;
  for (let word = bits.length - 1; word >= words; word--) {
    const from = word - words;
    // A shift by 32 would be one by 0.
    const carried = shift === 0 || from === 0 ? 0 : (bits[from - 1] as number) >>> (32 - shift);
    bits[word] = (bits[word] as number) | ((bits[from] as number) << shift) | carried;
  }
}

/** The highest place up to one that has its bit set; place 0 has. */
function highestBit(bits: Uint32Array, place: number): number {
  let word = place >>> 5;
  // Places above the one that is asked about are left out of its word.
  let held = (bits[word] as number) & (0xffff_ffff >>> (31 - (place & 31)));
  while (held === 0) {
    word -= 1;
    held = bits[word] as number;
  }
  return word * 32 + 31 - Math.clz32(held);
}
