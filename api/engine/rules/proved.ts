import type { CircuitProof, PointProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import type { Origin } from './finding.ts';

/** The proofs of the circuits that a scheme touches (as found: of all), by circuit, sorted. */
export const proofsOf = (facts: Facts): readonly CircuitProof[] =>
  facts.circuitIds.flatMap((id) => facts.proofs.get(id) ?? []);

/** What is compared of a point; null where it is not known. */
type FigureOf = (point: PointProof) => number | null;

/** Of several points the one for which a figure is largest; null where it is told for none. */
export function worstPoint(
  { points }: CircuitProof,
  figure: FigureOf,
): { readonly point: PointProof; readonly figure: number } | null {
  let worst: { readonly point: PointProof; readonly figure: number } | null = null;
  for (const point of points) {
    const value = figure(point);
    if (value !== null && (worst === null || value > worst.figure)) worst = { point, figure: value };
  }
  return worst;
}

/** By how much a figure has to grow before it counts as grown, so that rounding is nobody's doing. */
export const GROWN_RATIO = 1.001;

/**
 * Where a worst figure that is over its limit comes from: the house as found where it was over it before, and the scheme
 * makes it no worse; else the scheme.
 *
 * @param figure tells a point's figure, of the proof at hand as of the one as found.
 */
export function originOfExcess(
  facts: Facts,
  circuitId: string,
  { now, limit, figure }: { readonly now: number; readonly limit: number; readonly figure: FigureOf },
): Origin {
  if (facts.scheme === null) return 'found';
  const found = facts.proofsFound.get(circuitId);
  const before = found === undefined ? null : (worstPoint(found, figure)?.figure ?? null);
  return before !== null && before > limit && now <= before * GROWN_RATIO ? 'found' : 'scheme';
}

/** What the proof of a house as found says of itself; of a scheme, that its new points rest on it. */
export const originOfUnproved = ({ scheme }: Facts): Origin => (scheme === null ? 'found' : 'scheme');
