import type { Remedy } from '#model/scheme.ts';
import type { Facts } from './facts.ts';

/**
 * The remedy of an RCBO for a circuit, as a result carries it; nothing for a circuit that the scheme itself
 * brings, whose device is named by its connection.
 */
export function rcboFor(facts: Facts, circuitId: string): { readonly fix?: Remedy } {
  const isFound = facts.job.circuits.some(({ id }) => id === circuitId);
  return isFound ? { fix: { kind: 'rcbo', at: circuitId } } : {};
}
