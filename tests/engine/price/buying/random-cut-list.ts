import type { CutPiece } from '#engine/price/buying/pieces-of.ts';
import type { Offer } from '#engine/price/buying/purchase.ts';
import { randomFrom } from '#tests/engine/proof/flow/random-network.ts';

/** Pieces and what they may be cut from. */
export interface CutList {
  readonly pieces: readonly CutPiece[];
  readonly offers: readonly Offer[];
  readonly vanMm: readonly number[];
}

/** A coil, a drum or a length of so many metres for so many pence. */
export const lengthOffer = (lengthM: number, pence: number, kind: Offer['kind'] = 'coil'): Offer => ({
  key: `${kind}-${lengthM}`,
  kind,
  quantity: lengthM * 1e3,
  millipence: pence * 1e3,
  least: null,
});

/** A cut length in steps of so many mm for so many pence a step. */
export const cutOffer = (stepMm: number, pence: number, leastMm = stepMm): Offer => ({
  key: `cut-${stepMm / 1e3}`,
  kind: 'cut',
  quantity: stepMm,
  millipence: pence * 1e3,
  least: leastMm,
});

/** Pieces of so many metres, named p1, p2 … */
export const piecesOf = (...lengthsM: readonly number[]): readonly CutPiece[] =>
  lengthsM
    .map((lengthM, i) => ({ cause: `p${i + 1}`, lengthMm: Math.round(lengthM * 1e3) }))
    .toSorted((a, b) => b.lengthMm - a.lengthMm || (a.cause < b.cause ? -1 : 1));

/** What random lists are like. */
export interface ListShape {
  readonly pieces: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** How many lengths differ at most; absent: all may. */
  readonly kinds?: number;
  /** Whole lengths that may be on the list, m; each is on it three times in four. */
  readonly wholesM: readonly number[];
  /** Steps that cut lengths come in, mm; none: never cut. */
  readonly stepsMm: readonly number[];
  /** At most so many off-cuts in the van. */
  readonly van: number;
}

/** A list at random, prices a metre falling with the length; the same seed gives the same list. */
export function randomCutList(seed: number, shape: ListShape): CutList {
  const random = randomFrom(seed);
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const lengthMm = () => Math.ceil(whole(shape.fromMm, shape.toMm) / 10) * 10;
  const kinds = Array.from({ length: shape.kinds ?? shape.pieces }, lengthMm);
  const pieces = Array.from(
    { length: shape.pieces },
    (_, i) => (shape.kinds === undefined ? kinds[i] : kinds[whole(0, kinds.length - 1)]) ?? 0,
  );
  const perM = whole(40, 260);
  const some = shape.wholesM.filter(() => random() < 0.75);
  const longest = Math.max(...shape.wholesM);
  const wholesM = some.length === 0 ? [longest] : some;
  const offers = wholesM.map((lengthM) =>
    lengthOffer(lengthM, Math.round(perM * lengthM * (0.5 + 0.45 * random()))),
  );
  const cuts = shape.stepsMm.map((stepMm, i) =>
    cutOffer(
      stepMm,
      Math.max(1, Math.round(((perM * stepMm) / 1e3) * 0.85 ** i)),
      random() < 0.2 ? stepMm * 3 : stepMm,
    ),
  );
  const vanMm = Array.from({ length: whole(0, shape.van) }, () => whole(50, 1200) * 10);
  return { pieces: piecesOf(...pieces.map((mm) => mm / 1e3)), offers: [...offers, ...cuts], vanMm };
}
