import type { NodeId } from './network.ts';
import type { Links } from './network-graph.ts';

interface Visit {
  readonly node: NodeId;
  readonly byEdge: string | null;
  next: number;
}

/**
 * The ids of the edges that are on no cycle: cutting one parts what it joins. Two cables between the same
 * two nodes make a cycle.
 * Source: R. E. Tarjan, "A note on finding the bridges of a graph", Information Processing Letters 2 (1974).
 */
export function bridgeIds(links: Links): ReadonlySet<string> {
  const bridges = new Set<string>();
  const order = new Map<NodeId, number>();
  const low = new Map<NodeId, number>();
  for (const start of links.keys()) if (!order.has(start)) visitFrom(start, { links, order, low, bridges });
  return bridges;
}

interface Search {
  readonly links: Links;
  readonly order: Map<NodeId, number>;
  readonly low: Map<NodeId, number>;
  readonly bridges: Set<string>;
}

function visitFrom(start: NodeId, { links, order, low, bridges }: Search): void {
  const stack: Visit[] = [];
  const enter = (node: NodeId, byEdge: string | null): void => {
    low.set(node, order.size);
    order.set(node, order.size);
    stack.push({ node, byEdge, next: 0 });
  };
  const lower = (node: NodeId, to: number | undefined): void => {
    low.set(node, Math.min(low.get(node) ?? 0, to ?? Number.POSITIVE_INFINITY));
  };
  enter(start, null);
  // A stack of our own: a long chain of points would go as deep as the chain is long.
  for (let visit = stack.at(-1); visit; visit = stack.at(-1)) {
    const link = links.get(visit.node)?.[visit.next++];
    if (link) {
      if (link.edge.id === visit.byEdge) continue;
      if (order.has(link.other)) lower(visit.node, order.get(link.other));
      else enter(link.other, link.edge.id);
      continue;
    }
    stack.pop();
    const parent = stack.at(-1);
    if (!parent || visit.byEdge === null) continue;
    lower(parent.node, low.get(visit.node));
    if ((low.get(visit.node) ?? 0) > (order.get(parent.node) ?? 0)) bridges.add(visit.byEdge);
  }
}
