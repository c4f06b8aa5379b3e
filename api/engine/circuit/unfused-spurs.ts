import type { Point } from '#model/installation.ts';
import type { Territory } from './circuit-territory.ts';
import { inIdOrder } from './id-order.ts';
import type { NetworkNode, NodeId } from './network.ts';
import type { NodePlace, UnfusedSpur } from './shape.ts';
import type { WalkedPlace } from './tree-walk.ts';

/**
 * The trees of cable that hang from a ring, one for every cable that leaves it, sorted by id.
 *
 * Nodes are listed as they lie, from the ring outwards. Blank plates are left out: nothing is plugged or
 * wired in there. Where a spur is taken from a point that the survey calls a spur itself (no legs), that
 * point is the first accessory on it.
 */
export function unfusedSpurs(
  territory: Territory,
  places: ReadonlyMap<NodeId, WalkedPlace>,
  pointById: ReadonlyMap<string, Point>,
): readonly UnfusedSpur[] {
  const hung = [...places.values()].filter(({ role }) => role === 'unfused-spur');
  const firstEdges = new Set(hung.flatMap(({ firstEdgeId }) => firstEdgeId ?? []));
  return [...firstEdges].toSorted(inIdOrder).map((firstEdgeId) =>
    spurAt(
      firstEdgeId,
      hung.filter((place) => place.firstEdgeId === firstEdgeId),
      {
        territory,
        places,
        pointById,
      },
    ),
  );
}

function spurAt(
  firstEdgeId: string,
  hung: readonly WalkedPlace[],
  circuit: {
    readonly territory: Territory;
    readonly places: ReadonlyMap<NodeId, NodePlace>;
    readonly pointById: ReadonlyMap<string, Point>;
  },
): UnfusedSpur {
  const { territory, places, pointById } = circuit;
  const ids = new Set(hung.map(({ nodeId }) => nodeId));
  const edges = territory.cables.filter(({ from, to }) => ids.has(from) || ids.has(to));
  const rootNode = hung[0]?.rootNode ?? territory.circuitId;
  const root = territory.nodes.find(({ id }) => id === rootNode);
  const nodes = territory.nodes.filter(({ id }) => ids.has(id)).toSorted(fromTheRing(places));
  const isClaimedSpur = places.get(rootNode)?.role === 'claimed-spur';
  const takesLoad = (node: NetworkNode): boolean =>
    node.kind === 'terminals' && pointById.get(node.pointId ?? '')?.kind !== 'blank';
  return {
    id: `spur@${firstEdgeId}`,
    circuitId: territory.circuitId,
    rootNode,
    edgeIds: edges.map(({ id }) => id).toSorted(inIdOrder),
    accessoryNodes: [...(root && isClaimedSpur ? [root] : []), ...nodes]
      .filter(takesLoad)
      .map(({ id }) => id),
    jointNodes: nodes.filter(({ kind }) => kind === 'joint').map(({ id }) => id),
    isNew: [...edges, ...nodes].some(({ state }) => state === 'new'),
  };
}

function fromTheRing(places: ReadonlyMap<NodeId, NodePlace>): (a: NetworkNode, b: NetworkNode) => number {
  const depth = ({ id }: NetworkNode): number => places.get(id)?.depth ?? 0;
  return (a, b) => depth(a) - depth(b) || inIdOrder(a.id, b.id);
}
