import { inIdOrder } from './id-order.ts';
import type { NetworkEdge, NodeId } from './network.ts';

/** One way out of a node. */
interface Link {
  readonly edge: NetworkEdge;
  readonly other: NodeId;
}

/** Every node's ways out, in order of edge ids; an edge from a node to itself is listed once. */
export type Links = ReadonlyMap<NodeId, readonly Link[]>;

/** The ways out of these nodes by these edges; edges with an end elsewhere are left out. */
export function linksOf(nodes: Iterable<NodeId>, edges: Iterable<NetworkEdge>): Links {
  const links = new Map<NodeId, Link[]>();
  for (const node of nodes) links.set(node, []);
  for (const edge of [...edges].toSorted((a, b) => inIdOrder(a.id, b.id))) {
    const from = links.get(edge.from);
    const to = links.get(edge.to);
    if (!from || !to) continue;
    from.push({ edge, other: edge.to });
    if (edge.from !== edge.to) to.push({ edge, other: edge.from });
  }
  return links;
}

/** The nodes that can be reached from the starts (they among them), the nearest first, by edges that `passes` lets through. */
export function reachedFrom(
  starts: Iterable<NodeId>,
  links: Links,
  passes: (link: Link) => boolean = () => true,
): ReadonlySet<NodeId> {
  const reached = new Set<NodeId>(starts);
  // A set is walked in order of insertion, also over what is added meanwhile: it is its own queue.
  for (const node of reached)
    for (const link of links.get(node) ?? []) if (passes(link)) reached.add(link.other);
  return reached;
}

/** What is left when trees that hang from the rest are taken off, leaf by leaf; nodes in `keep` always stay. */
export function withoutHangingTrees(links: Links, keep: ReadonlySet<NodeId>): ReadonlySet<NodeId> {
  const left = new Set(links.keys());
  const queue = [...left];
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    if (keep.has(node) || !left.has(node)) continue;
    const ways = (links.get(node) ?? []).filter(({ other }) => left.has(other));
    if (ways.length > 1 || ways.some(({ other }) => other === node)) continue;
    left.delete(node);
    for (const { other } of ways) queue.push(other);
  }
  return left;
}
