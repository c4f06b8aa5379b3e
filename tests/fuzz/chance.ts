/** Chance that can be had again: the same seed gives the same draws. */
export interface Chance {
  /** From 0 up to 1. */
  readonly next: () => number;
  /** A whole number from 0 up to a bound. */
  readonly below: (bound: number) => number;
  readonly one: <T>(of: readonly T[]) => T;
  /** True so often, of 1. */
  readonly isSo: (share: number) => boolean;
}

/** Source of the generator: mulberry32, common practice; it need only spread well. */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (bound: number): number => Math.floor(next() * bound);
  return {
    next,
    below,
    one: (of) => {
      const drawn = of[below(of.length)];
      if (drawn === undefined && of.length === 0) throw new Error('nothing to draw from');
      return drawn as (typeof of)[number];
    },
    isSo: (share) => next() < share,
  };
}
