import type { NetworkEdge, NodeId } from './network.ts';
import type { Links } from './network-graph.ts';
import type { NodePlace, NodeRole } from './shape.ts';

/** A node's place, and the edge by which its tree leaves the ring (or the origin). */
export interface WalkedPlace extends NodePlace {
  readonly firstEdgeId: string | null;
}

/** Where the walk starts: nodes whose role is known, and the role of what hangs from each role. */
interface WalkStart {
  readonly circuitId: string;
  readonly seeds: ReadonlyMap<NodeId, NodeRole>;
  readonly hungRole: (seed: NodeRole) => NodeRole;
}

/**
 * Walks outwards from the seeds, the nearest first: by cable as far as cable goes, then through the fuses,
 * and so on behind them. Every node is reached once.
 *
 * @returns the places of the nodes reached, in the order of the walk.
 */
export function walkTrees(
  { circuitId, seeds, hungRole }: WalkStart,
  links: { readonly cables: Links; readonly fuses: Links },
): ReadonlyMap<NodeId, WalkedPlace> {
  const places = new Map<NodeId, WalkedPlace>();
  for (const [nodeId, role] of seeds) places.set(nodeId, seedPlace(circuitId, nodeId, role));
  let layer: readonly WalkedPlace[] = [...places.values()];
  while (layer.length > 0) {
    const reached = walkCables(layer, { places, cables: links.cables, hungRole });
    layer = crossFuses(reached, { places, fuses: links.fuses });
  }
  return places;
}

/** The place of a node that hangs from nothing: where a walk starts, or what none reaches. */
export function seedPlace(circuitId: string, nodeId: NodeId, role: NodeRole): WalkedPlace {
  return {
    nodeId,
    circuitId,
    role,
    upstreamNode: null,
    upstreamEdgeId: null,
    rootNode: null,
    fuseA: null,
    behindUnit: null,
    depth: 0,
    firstEdgeId: null,
  };
}

function walkCables(
  layer: readonly WalkedPlace[],
  walk: {
    readonly places: Map<NodeId, WalkedPlace>;
    readonly cables: Links;
    readonly hungRole: (seed: NodeRole) => NodeRole;
  },
): readonly WalkedPlace[] {
  const queue = [...layer];
  for (const place of queue)
    for (const { edge, other } of walk.cables.get(place.nodeId) ?? []) {
      if (walk.places.has(other)) continue;
      const isSeed = place.depth === 0 && place.behindUnit === null;
      const next: WalkedPlace = {
        ...place,
        nodeId: other,
        role: isSeed ? walk.hungRole(place.role) : place.role,
        upstreamNode: place.nodeId,
        upstreamEdgeId: edge.id,
        rootNode: place.rootNode ?? place.nodeId,
        depth: place.depth + 1,
        firstEdgeId: place.firstEdgeId ?? edge.id,
      };
      walk.places.set(other, next);
      queue.push(next);
    }
  return queue;
}

function crossFuses(
  reached: readonly WalkedPlace[],
  walk: { readonly places: Map<NodeId, WalkedPlace>; readonly fuses: Links },
): readonly WalkedPlace[] {
  const beyond: WalkedPlace[] = [];
  for (const place of reached)
    for (const { edge, other } of walk.fuses.get(place.nodeId) ?? []) {
      if (walk.places.has(other)) continue;
      const next: WalkedPlace = {
        ...place,
        ...smallestFuse(place, edge),
        nodeId: other,
        role: 'behind-fuse',
        upstreamNode: place.nodeId,
        upstreamEdgeId: edge.id,
        rootNode: place.rootNode ?? place.nodeId,
        firstEdgeId: place.firstEdgeId ?? edge.id,
      };
      walk.places.set(other, next);
      beyond.push(next);
    }
  return beyond;
}

/** The smaller of the fuse passed so far and this one; one of unknown rating counts only where there is no other. */
function smallestFuse(place: WalkedPlace, fuse: NetworkEdge): Pick<NodePlace, 'fuseA' | 'behindUnit'> {
  const { fuseA, behindUnit } = place;
  const isSmaller = fuse.fuseA !== null && (fuseA === null || fuse.fuseA < fuseA);
  return behindUnit === null || isSmaller
    ? { fuseA: fuse.fuseA, behindUnit: fuse.to }
    : { fuseA, behindUnit };
}
