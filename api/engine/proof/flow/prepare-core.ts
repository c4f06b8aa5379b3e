import { addTo, type Envelope, factorInPlace, newEnvelope } from './envelope-cholesky.ts';
import type { FlowNetwork } from './flow-network.ts';

/** The meshed part of a network, its trees cut off, made ready to be solved by the potentials of its nodes. */
export interface FlowCore {
  /** Nodes that are reached, in order of their distance from the source, which is the first. */
  readonly nodes: Int32Array;
  /** By node of the network: its row of the matrix, one for all nodes that links join; −1 at the source's potential. */
  readonly rowOf: Int32Array;
  /** Legs above 0 Ω. */
  readonly legs: Int32Array;
  /** Legs of 0 Ω. */
  readonly links: Int32Array;
  /** Conductances between the rows, S, factored; the source is their earth. */
  readonly factor: Envelope;
  /**
   * The links alone, in the order of `links`, each of 1 Ω, so that current splits evenly where links run side by
   * side. One node of each group that links join stands at the source. Null where there are none.
   */
  readonly linkNetwork: FlowNetwork | null;
}

/** @param coreLegs what is left once trees are cut off, with what nothing reaches. */
export function prepareCore(network: FlowNetwork, coreLegs: readonly number[]): FlowCore {
  const { nodeCount, source, from, ohm } = network;
  const nodes = nodesByDistance(network, coreLegs);
  const isReached = new Uint8Array(nodeCount);
  for (const node of nodes) isReached[node] = 1;
  const reachedLegs = coreLegs.filter((leg) => isReached[from[leg] ?? 0] === 1);
  const legs = Int32Array.from(reachedLegs.filter((leg) => ohm[leg] !== 0));
  const links = Int32Array.from(reachedLegs.filter((leg) => ohm[leg] === 0));
  const groupOf = linkGroups(network, links);
  const rowOf = new Int32Array(nodeCount).fill(-1);
  let size = 0;
  for (const node of nodes) {
    const group = groupOf[node] ?? node;
    if (group !== source && rowOf[group] === -1) rowOf[group] = size++;
    rowOf[node] = rowOf[group] ?? -1;
  }
  return {
    nodes,
    rowOf,
    legs,
    links,
    factor: factoredConductances(network, { legs, rowOf, size }),
    linkNetwork:
      links.length === 0
        ? null
        : {
            nodeCount,
            source,
            from: links.map((leg) => standIn(network, groupOf, from[leg] ?? 0)),
            to: links.map((leg) => standIn(network, groupOf, network.to[leg] ?? 0)),
            ohm: new Float64Array(links.length).fill(1),
          },
  };
}

/** Rows in this order keep the envelope narrow. */
function nodesByDistance(
  { nodeCount, source, from, to }: FlowNetwork,
  coreLegs: readonly number[],
): Int32Array {
  const neighbours: number[][] = Array.from({ length: nodeCount }, () => []);
  for (const leg of coreLegs) {
    neighbours[from[leg] ?? 0]?.push(to[leg] ?? 0);
    neighbours[to[leg] ?? 0]?.push(from[leg] ?? 0);
  }
  const isSeen = new Uint8Array(nodeCount);
  isSeen[source] = 1;
  const order = [source];
  for (const node of order)
    for (const next of neighbours[node] ?? [])
      if (isSeen[next] === 0) {
        isSeen[next] = 1;
        order.push(next);
      }
  return Int32Array.from(order);
}

/** By node, the node that stands for all that links join it to: the source for its own group. */
function linkGroups({ nodeCount, source, from, to }: FlowNetwork, links: Int32Array): Int32Array {
  const above = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const top = (node: number): number => {
    let at = node;
    while (above[at] !== at) at = above[at] ?? at;
    return at;
  };
  for (const leg of links) {
    const [a, b] = [top(from[leg] ?? 0), top(to[leg] ?? 0)];
    if (a === source) above[b] = a;
    else above[a] = b;
  }
  return above.map((_, node) => top(node));
}

const standIn = ({ source }: FlowNetwork, groupOf: Int32Array, node: number): number =>
  groupOf[node] === node ? source : node;

function factoredConductances(
  { from, to, ohm }: FlowNetwork,
  { legs, rowOf, size }: { readonly legs: Int32Array; readonly rowOf: Int32Array; readonly size: number },
): Envelope {
  const first = Int32Array.from({ length: size }, (_, row) => row);
  const rowsOf = (leg: number): readonly [number, number] => {
    const [a, b] = [rowOf[from[leg] ?? 0] ?? -1, rowOf[to[leg] ?? 0] ?? -1];
    return a < b ? [a, b] : [b, a];
  };
  for (const leg of legs) {
    const [low, high] = rowsOf(leg);
    if (low >= 0) first[high] = Math.min(first[high] ?? 0, low);
  }
  const matrix = newEnvelope(first);
  for (const leg of legs) {
    const [low, high] = rowsOf(leg);
    if (low === high) continue;
    const siemens = 1 / (ohm[leg] ?? 1);
    addTo(matrix, high, high, siemens);
    if (low < 0) continue;
    addTo(matrix, low, low, siemens);
    addTo(matrix, high, low, -siemens);
  }
  factorInPlace(matrix);
  return matrix;
}
