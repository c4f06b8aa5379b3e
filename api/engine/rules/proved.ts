import type { CircuitProof, PointProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import type { Origin } from './finding.ts';

/** The proofs of the circuits that a scheme touches (as found: of all), by circuit, sorted. */
export const proofsOf = (facts: Facts): readonly CircuitProof[] =>
  facts.circuitIds.flatMap((id) => facts.proofs.get(id) ?? []);

/** Of several points the one for which a figure is largest; null where it is told for none. */
export function worstPoint(
  { points }: CircuitProof,
  figure: (point: PointProof) => number | null,
): { readonly point: PointProof; readonly figure: number } | null {
  let worst: { readonly point: PointProof; readonly figure: number } | null = null;
  for (const point of points) {
    const value = figure(point);
    if (value !== null && (worst === null || value > worst.figure)) worst = { point, figure: value };
  }
  return worst;
}

/** By how much a figure has to grow before it counts as grown, so that rounding is nobody's doing. */
const GROWN_RATIO = 1.001;

/**
 * Where something that is over its limit comes from: what was found where it was over it before, and the scheme makes it
 * no worse; else the scheme.
 *
 * @param before the same figure as found; null where it is not known.
 */
export function originOfExcess(now: number, limit: number, before: number | null): Origin {
  return before !== null && before > limit && now <= before * GROWN_RATIO ? 'found' : 'scheme';
}

/** What the proof of a house as found says of itself; of a scheme, that its new points rest on it. */
export const originOfUnproved = ({ scheme }: Facts): Origin => (scheme === null ? 'found' : 'scheme');
