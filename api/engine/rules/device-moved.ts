import type { Facts } from './facts.ts';

/**
 * Which way the scheme moves the rating of a circuit's device: `up` or `down`; null where it leaves it, where
 * the circuit is new, and where either device is not known.
 */
export function deviceMoved(facts: Facts, circuitId: string): 'up' | 'down' | null {
  const rating = (circuits: Facts['proposed']['circuits']) =>
    circuits.find(({ id }) => id === circuitId)?.device?.ratingA;
  const before = rating(facts.found.circuits);
  const after = rating(facts.proposed.circuits);
  if (before === undefined || after === undefined || before === after) return null;
  return after > before ? 'up' : 'down';
}
