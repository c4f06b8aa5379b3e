import type { PointSeen } from './read-channels.ts';

/** What is known of a channel while its points are judged. */
export interface ChannelState {
  /** Ω of the whole loop: what a spur of a loop's length would read. */
  readonly totalOhm: number;
  /** Ω that all readings of it share. */
  readonly nullOhm: number;
  /** Square of how far its null may usually be off, Ω². */
  readonly nullUsualSquare: number;
  /** Square of the spread of contact at the link, Ω². */
  readonly contactSquare: number;
}

/** One link in a hundred makes poor contact, of 20 mΩ more or less. Judgement, no source. */
const POOR_SHARE = 0.01;
const POOR_OHM = 0.02;
const POOR_SPREAD_OHM = 0.025;

/** A length that a spur may have, as a share of the loop, and how likely before anything is read. */
export interface SpurLength {
  readonly fraction: number;
  readonly weight: number;
}

/** The usual length of a spur by its most frequent value, m; short ones and long ones are rarer. Judgement, no source. */
const USUAL_SPUR_M = 5;
const SHORTEST_M = 0.3;
const LENGTH_STEP = 1.1;
const LENGTHS = 48;

/** Less likely is as good as impossible; keeps logarithms finite. */
const LEAST = 1e-280;

/**
 * Lengths to try for a spur, 0.3 to 30 m, likely ones weighted up: density s·exp(−s ÷ 2.5 m).
 *
 * @param loopM length of the loop, m, above nought.
 */
export function spurLengths(loopM: number): readonly SpurLength[] {
  const lengths = Array.from({ length: LENGTHS }, (_, i) => SHORTEST_M * LENGTH_STEP ** i);
  // The steps widen with the length, so each stands for a stretch as wide as itself.
  const weights = lengths.map((m) => m * Math.exp(-m / USUAL_SPUR_M));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return lengths.map((m, i) => ({ fraction: m / loopM, weight: (weights[i] ?? 0) / sum }));
}

/** How well a point's readings fit a spur of this share of the loop (nought: on the ring); a logarithm, to compare only. */
export const fitOf = (seen: PointSeen, spurFraction: number, channels: readonly ChannelState[]): number =>
  Math.log(Math.max(LEAST, likelihood(seen, spurFraction, channels)));

function likelihood(
  { places, excesses, halves }: PointSeen,
  spurFraction: number,
  channels: readonly ChannelState[],
): number {
  let product = 1;
  for (const { channel, ohm, square } of excesses) {
    const state = channels[channel];
    if (state === undefined) continue;
    const off = ohm - spurFraction * state.totalOhm - state.nullOhm;
    const usual = square + state.contactSquare;
    const poor = usual + POOR_SPREAD_OHM * POOR_SPREAD_OHM;
    const overPoor = off - POOR_OHM;
    // Normal densities but for the factor that all have in common; in mΩ, to stay far from the least number.
    product *=
      ((1 - POOR_SHARE) * Math.exp((-0.5 * off * off) / usual)) / (1e3 * Math.sqrt(usual)) +
      (POOR_SHARE * Math.exp((-0.5 * overPoor * overPoor) / poor)) / (1e3 * Math.sqrt(poor));
  }
  if (halves.length === 0) return product;
  // Where along the ring it is, is free: what counts is how far the places by each reading lie apart.
  const byHalf = halves.flatMap(({ channel, end, ohm, square }) => {
    const state = channels[channel];
    if (state === undefined) return [];
    const reach = (ohm - state.nullOhm) / state.totalOhm - spurFraction;
    return [
      {
        fraction: end === 'A' ? reach : 1 - reach,
        square: (square + state.contactSquare) / state.totalOhm ** 2,
      },
    ];
  });
  return product * Math.exp(-0.5 * disagreement([...places, ...byHalf]));
}

function disagreement(places: readonly { readonly fraction: number; readonly square: number }[]): number {
  const weight = places.reduce((sum, { square }) => sum + 1 / square, 0);
  const mean = places.reduce((sum, { fraction, square }) => sum + fraction / square, 0) / weight;
  return places.reduce((sum, { fraction, square }) => sum + (fraction - mean) ** 2 / square, 0);
}

/** How well a point's readings fit a spur of whatever length; to compare with `fitOf` a length of nought. */
export function fitOfSpur(
  seen: PointSeen,
  lengths: readonly SpurLength[],
  channels: readonly ChannelState[],
): number {
  let sum = 0;
  for (const { fraction, weight } of lengths) sum += weight * likelihood(seen, fraction, channels);
  return Math.log(Math.max(LEAST, sum));
}
