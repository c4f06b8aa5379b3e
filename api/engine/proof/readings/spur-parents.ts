import type { Point } from '#model/installation.ts';
import { normalDensity, type Placed } from './confidence.ts';
import type { FittedPoint } from './fit-circuit.ts';

/** One place from which a spur may come: a point of the ring, or a joint between two of them (null: the board's end). */
export type ParentPlace =
  | { readonly kind: 'point'; readonly point: string }
  | { readonly kind: 'joint'; readonly before: string | null; readonly after: string | null };

/** A possible parent with how likely it is, 0 to 1. */
export interface LikelyParent {
  readonly place: ParentPlace;
  readonly confidence: number;
}

/** One spur in twenty leaves the ring by a joint in a cable. Judgement, no source. */
const JOINT_PRIOR = 0.05;
/** Two cables at a plate are the ring's own; a third is most likely a spur. */
const BY_TWO_CABLES = 0.02;
const BY_THREE_CABLES = 5;
/** A second spur at one point is seldom: its terminals hardly hold four conductors. Judgement, no source. */
const SECOND_SPUR = 0.15;
/** What is less likely is not told. */
const WORTH_TELLING = 0.02;
const ROUNDS = 8;

/** A point that may be a spur: where it leaves the loop, and how likely it is one. */
export interface PossibleSpur {
  readonly point: string;
  readonly placed: Placed;
  readonly confidence: number;
}

/**
 * From where each spur may come, the likeliest first, ties in order of the ring.
 *
 * Each is judged by its place; then, in turn, points that another spur likely comes from count less.
 *
 * @param points all points of the circuit that may be on the ring, in order from end A.
 */
export function spurParents(
  spurs: readonly PossibleSpur[],
  points: readonly FittedPoint[],
): ReadonlyMap<string, readonly LikelyParent[]> {
  const placed = points.flatMap(({ point, placed: at, spurConfidence }) =>
    at === null || spurConfidence === null || spurConfidence === 1
      ? []
      : [{ point, at, onRing: 1 - spurConfidence }],
  );
  const count = placed.reduce((sum, { onRing }) => sum + onRing, 0);
  const near = spurs.map((spur) => placed.map((parent) => weightOf(spur, parent, count)));
  let shares = near.map((weights, i) => sharesOf(spurs[i], placed, weights));
  for (let round = 0; round < ROUNDS; round++) {
    const last = shares;
    shares = near.map((weights, i) => {
      const left = weights.map((weight, parent) =>
        spurs.reduce((product, { point, confidence }, other) => {
          const isOwn = other === i || point === placed[parent]?.point.id;
          return isOwn
            ? product
            : product * (1 - (1 - SECOND_SPUR) * confidence * (last[other]?.[parent] ?? 0));
        }, weight),
      );
      return sharesOf(spurs[i], placed, left);
    });
  }
  return new Map(spurs.map((spur, i) => [spur.point, toldParents(spur, placed, shares[i] ?? [])]));
}

interface PlacedParent {
  readonly point: Point;
  readonly at: Placed;
  /** How likely it is on the ring. */
  readonly onRing: number;
}

function weightOf({ placed }: PossibleSpur, { point, at, onRing }: PlacedParent, count: number): number {
  const cables = point.asFound?.cablesSeen ?? 0;
  const counted = cables === 2 ? BY_TWO_CABLES : cables > 2 ? BY_THREE_CABLES : 1;
  const near = normalDensity(placed.fraction, at.fraction, Math.hypot(placed.spread, at.spread));
  return (((1 - JOINT_PRIOR) * counted * onRing) / count) * near;
}

/** The parents' shares in order of the ring, without the joint's. A joint is as likely anywhere: its density is one to a loop. */
function sharesOf(
  spur: PossibleSpur | undefined,
  placed: readonly PlacedParent[],
  weights: readonly number[],
): readonly number[] {
  const own = weights.map((weight, i) => (placed[i]?.point.id === spur?.point ? 0 : weight));
  const all = own.reduce((sum, weight) => sum + weight, JOINT_PRIOR);
  return own.map((weight) => weight / all);
}

function toldParents(
  spur: PossibleSpur,
  placed: readonly PlacedParent[],
  shares: readonly number[],
): readonly LikelyParent[] {
  const others = placed.filter(({ point, onRing }) => point.id !== spur.point && onRing >= 0.5);
  const before = others.findLast(({ at }) => at.fraction <= spur.placed.fraction)?.point.id ?? null;
  const after = others.find(({ at }) => at.fraction > spur.placed.fraction)?.point.id ?? null;
  const byPoints = shares.reduce((sum, share) => sum + share, 0);
  return [
    ...placed.map(({ point }, i) => ({
      place: { kind: 'point', point: point.id } as const,
      confidence: shares[i] ?? 0,
    })),
    { place: { kind: 'joint', before, after } as const, confidence: 1 - byPoints },
  ]
    .filter(({ confidence }) => confidence >= WORTH_TELLING)
    .toSorted((a, b) => b.confidence - a.confidence);
}
