import type { Job } from '#model/job.ts';
import type { Territory } from './circuit-territory.ts';
import type { Network } from './network.ts';

/**
 * The circuits on which a scheme changes wiring, by id: new cable ends there, a point or joint there is new,
 * or a stretch of one of their legs is taken out. Remedies do not count.
 *
 * @param network as proposed, with its territories.
 */
export function circuitsWithNewWiring(
  job: Job,
  network: Network,
  shares: readonly Territory[],
): ReadonlySet<string> {
  const changed = new Set([
    ...network.nodes.filter(({ state }) => state === 'new').map(({ id }) => id),
    ...network.edges.filter(({ state }) => state === 'new').flatMap(({ from, to }) => [from, to]),
  ]);
  const removed = new Set(network.removed.map(({ legId }) => legId));
  return new Set([
    ...shares
      .filter(({ nodes }) => nodes.some(({ id }) => changed.has(id)))
      .map(({ circuitId }) => circuitId),
    ...job.legs.filter(({ id }) => removed.has(id)).map(({ circuit }) => circuit),
  ]);
}
