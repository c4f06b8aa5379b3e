import { inIdOrder } from './id-order.ts';
import type { NetworkEdge, NodeId } from './network.ts';
import type { Links } from './network-graph.ts';

/** The way from a node back to where a tree starts. */
export interface Upstream {
  readonly node: NodeId;
  readonly edge: NetworkEdge;
  /** Cables between here and the start. */
  readonly depth: number;
}

/** The next node towards the start, for every node that is reached from it. */
export function upstreamFrom(start: NodeId, links: Links): ReadonlyMap<NodeId, Upstream> {
  const upstream = new Map<NodeId, Upstream>();
  const queue: NodeId[] = [start];
  for (const node of queue)
    for (const { edge, other } of links.get(node) ?? []) {
      if (other === start || upstream.has(other)) continue;
      upstream.set(other, { node, edge, depth: (upstream.get(node)?.depth ?? 0) + 1 });
      queue.push(other);
    }
  return upstream;
}

/**
 * The nodes that count as wired in the ring where the ring does not close.
 *
 * From either end at the origin, the longest way to a node that was there and that the survey does not call
 * a spur: legs alone cannot say which branch was the ring. Told ends A and B come before other cables at
 * the origin; at most two are followed. What new cable adds at their ends hangs from them.
 *
 * @param isCandidate whether a node may be the last one on its side.
 */
export function brokenRingTrunk(
  origin: NodeId,
  links: Links,
  isCandidate: (node: NodeId) => boolean,
): ReadonlySet<NodeId> {
  const upstream = upstreamFrom(origin, links);
  const ways = [...upstream.keys()].filter(isCandidate).map((node) => wayTo(node, upstream));
  const atOrigin = (links.get(origin) ?? []).map(({ edge }) => edge);
  const longest = atOrigin
    .flatMap((edge) => {
      const own = ways.filter((way) => way.edges.at(-1)?.id === edge.id);
      return (
        own.toSorted(
          (a, b) => b.edges.length - a.edges.length || inIdOrder(a.nodes[0] ?? '', b.nodes[0] ?? ''),
        )[0] ?? []
      );
    })
    .toSorted((a, b) => toldRank(a) - toldRank(b) || b.edges.length - a.edges.length);
  return new Set(longest.slice(0, 2).flatMap(({ nodes }) => nodes));
}

interface Way {
  /** From the far node towards the origin, which is left out. */
  readonly nodes: readonly NodeId[];
  readonly edges: readonly NetworkEdge[];
}

function wayTo(node: NodeId, upstream: ReadonlyMap<NodeId, Upstream>): Way {
  const nodes: NodeId[] = [];
  const edges: NetworkEdge[] = [];
  let at = node;
  for (let step = upstream.get(at); step; step = upstream.get(at)) {
    nodes.push(at);
    edges.push(step.edge);
    at = step.node;
  }
  return { nodes, edges };
}

function toldRank({ edges }: Way): number {
  return edges.at(-1)?.originEnd === null ? 1 : 0;
}
