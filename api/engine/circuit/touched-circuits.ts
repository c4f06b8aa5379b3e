import type { Job } from '#model/job.ts';
import type { Territory } from './circuit-territory.ts';
import type { Network } from './network.ts';
import type { CircuitShape } from './shape.ts';

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

/**
 * The circuits at whose places new cable or a new fuse ends. Narrower than where wiring changes: what is only
 * taken out, or joined on by old cable, does not count.
 */
export function circuitsWithNewEnds(
  network: Network,
  shapes: ReadonlyMap<string, CircuitShape>,
): ReadonlySet<string> {
  const ends = new Set(
    network.edges.filter(({ state }) => state === 'new').flatMap(({ from, to }) => [from, to]),
  );
  return new Set(
    [...shapes.values()]
      .filter(({ places }) => places.some(({ nodeId }) => ends.has(nodeId)))
      .map(({ circuitId }) => circuitId),
  );
}
