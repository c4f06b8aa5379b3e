import type { Job } from '#model/job.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { inIdOrder } from './id-order.ts';
import type { Network, NetworkEdge, NetworkNode, NodeId } from './network.ts';
import { type Links, linksOf, reachedFrom } from './network-graph.ts';

/** What part of the network is one circuit's. */
export interface Territory {
  readonly circuitId: string;
  /** Its nodes, those that no cable joins to its origin among them. */
  readonly nodes: readonly NetworkNode[];
  /** Cables with both ends in it. */
  readonly cables: readonly NetworkEdge[];
  readonly fuses: readonly NetworkEdge[];
  /** Other circuits whose origins can be reached from this one's, sorted. */
  readonly joinedTo: readonly string[];
}

/**
 * Shares the network out among its circuits, every node to one at most.
 *
 * A node belongs to the origin that reaches it by legs of that circuit (and fuses), unless its point is said
 * to be another's; then, for what is left, to the nearest one by any cable. What no origin reaches goes by
 * its legs' circuit, else by its points'.
 * Where circuits are joined, the lower circuit id comes first.
 */
export const territories = rememberedOfTwo(sharedOut);

function sharedOut(job: Job, network: Network): readonly Territory[] {
  const links = linksOf(
    network.nodes.map(({ id }) => id),
    network.edges,
  );
  const circuitOfLeg = new Map(job.legs.map(({ id, circuit }) => [id, circuit]));
  const owner = new Map<NodeId, string>();
  const circuitOfPoint = pointCircuits(job, network);
  claimByOwnLegs(network, { links, circuitOfLeg, circuitOfPoint, owner });
  claimNearest(links, owner);
  claimFragments(network, { links, circuitOfLeg, circuitOfPoint, owner });
  return network.circuits.map(({ id }) => {
    const isOwn = (node: NodeId): boolean => owner.get(node) === id;
    const edges = network.edges.filter(({ from, to }) => isOwn(from) && isOwn(to));
    const reached = reachedFrom([id], links);
    return {
      circuitId: id,
      nodes: network.nodes.filter((node) => isOwn(node.id)),
      cables: edges.filter(({ kind }) => kind === 'cable'),
      fuses: edges.filter(({ kind }) => kind === 'fuse'),
      joinedTo: network.circuits
        .map((other) => other.id)
        .filter((other) => other !== id && reached.has(other)),
    };
  });
}

interface Claims {
  readonly links: Links;
  readonly circuitOfLeg: ReadonlyMap<string, string>;
  readonly circuitOfPoint: ReadonlyMap<NodeId, string>;
  readonly owner: Map<NodeId, string>;
}

/** The circuit that a node's point, or the one that it replaces, is said to be on. */
function pointCircuits(job: Job, network: Network): ReadonlyMap<NodeId, string> {
  const points = new Map(job.points.map((point) => [point.id, point]));
  return new Map(
    network.nodes.flatMap(({ id, pointId }) => {
      const point = points.get(pointId ?? '');
      const circuitId = point?.circuit ?? points.get(point?.replaces ?? '')?.circuit;
      return circuitId === undefined ? [] : [[id, circuitId] as const];
    }),
  );
}

function claimByOwnLegs({ circuits }: Network, { links, circuitOfLeg, circuitOfPoint, owner }: Claims): void {
  const origins = new Set(circuits.map(({ id }) => id));
  for (const { id } of circuits) {
    const own = reachedFrom([id], links, ({ edge, other }) => {
      if (owner.has(other) || (origins.has(other) && other !== id)) return false;
      if ((circuitOfPoint.get(other) ?? id) !== id) return false;
      return edge.kind === 'fuse' || (edge.legId !== null && circuitOfLeg.get(edge.legId) === id);
    });
    for (const node of own) owner.set(node, id);
  }
}

function claimNearest(links: Links, owner: Map<NodeId, string>): void {
  // A map is walked in order of insertion, also over what is added meanwhile: the nearest come first.
  for (const [node, circuitId] of owner)
    for (const { other } of links.get(node) ?? []) if (!owner.has(other)) owner.set(other, circuitId);
}

function claimFragments({ nodes }: Network, { links, circuitOfLeg, circuitOfPoint, owner }: Claims): void {
  for (const { id } of nodes) {
    if (owner.has(id)) continue;
    const fragment = [...reachedFrom([id], links)];
    const byLegs = fragment.flatMap((node) =>
      (links.get(node) ?? []).flatMap(({ edge }) => circuitOfLeg.get(edge.legId ?? '') ?? []),
    );
    const byPoints = fragment.flatMap((node) => circuitOfPoint.get(node) ?? []);
    const circuitId = byLegs.toSorted(inIdOrder)[0] ?? byPoints.toSorted(inIdOrder)[0];
    if (circuitId !== undefined) for (const node of fragment) owner.set(node, circuitId);
  }
}
