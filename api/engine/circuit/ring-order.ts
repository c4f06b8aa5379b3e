import type { NetworkEdge, NodeId } from './network.ts';
import type { Links } from './network-graph.ts';

/** A ring in order from its end A; one edge more than nodes, the origin left out. */
interface RingOrder {
  readonly nodes: readonly NodeId[];
  readonly edges: readonly NetworkEdge[];
}

/**
 * Walks a single cycle from the origin and back.
 *
 * It starts with the edge that is told to be end A; where only the other is told, to be end B, with the one
 * that is not; else with the lower edge id.
 *
 * @param links the ways out by edges of the cycle alone: two at every node, or one from the origin to itself.
 */
export function ringOrder(origin: NodeId, links: Links): RingOrder {
  const atOrigin = links.get(origin) ?? [];
  const first =
    atOrigin.find(({ edge }) => edge.originEnd === 'A') ??
    atOrigin.find(({ edge }) => edge.originEnd !== 'B') ??
    atOrigin[0];
  const nodes: NodeId[] = [];
  const edges: NetworkEdge[] = [];
  let link = first;
  while (link && !edges.includes(link.edge)) {
    edges.push(link.edge);
    if (link.other === origin) break;
    nodes.push(link.other);
    const by = link.edge;
    link = links.get(link.other)?.find(({ edge }) => edge.id !== by.id);
  }
  return { nodes, edges };
}
