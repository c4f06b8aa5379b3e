import type { ProofCircuit } from './proof-circuit.ts';

/** A ring, and what hangs from it. */
export interface Ring {
  readonly walk: RingWalk;
  readonly hanging: Hanging;
}

/** A ring in the order in which a cable goes round it. */
export interface RingWalk {
  /** Node indexes in order from end A. */
  readonly nodes: readonly number[];
  /** Leg indexes in order from end A, one more. */
  readonly legs: readonly number[];
}

/** The circuit as a ring; null where it is none. */
export function ringOf(circuit: ProofCircuit): Ring | null {
  const walk = ringWalk(circuit);
  return walk === null ? null : { walk, hanging: hangingFrom(circuit, walk) };
}

/** The ring in indexes, or null where the circuit is no ring. */
function ringWalk({ shape, nodes, legs }: ProofCircuit): RingWalk | null {
  if (shape.shape !== 'ring' || shape.ringEdges.length === 0) return null;
  const nodeAt = new Map(nodes.map(({ id }, i) => [id, i]));
  const legAt = new Map(legs.map(({ id }, i) => [id, i]));
  const ringNodes = shape.ringNodes.map((id) => nodeAt.get(id) ?? -1);
  const ringLegs = shape.ringEdges.map(({ id }) => legAt.get(id) ?? -1);
  return [...ringNodes, ...ringLegs].includes(-1) ? null : { nodes: ringNodes, legs: ringLegs };
}

/** What hangs from a ring, from it outwards: each node with the leg that leads to it. */
export interface Hanging {
  /** Nodes in order, those of the ring first. */
  readonly order: readonly number[];
  /** By node: the ring's node that it hangs from, the node before it and the leg between; −1 where there is none. */
  readonly root: Int32Array;
  readonly before: Int32Array;
  readonly leg: Int32Array;
}

/** What hangs from each node of a ring; spurs from the origin are left out. */
function hangingFrom({ nodes, legs }: ProofCircuit, walk: RingWalk): Hanging {
  const none = (): Int32Array => new Int32Array(nodes.length).fill(-1);
  const [root, before, leg] = [none(), none(), none()];
  const onRing = new Set(walk.legs);
  const links: number[][] = nodes.map(() => []);
  legs.forEach(({ from, to }, i) => {
    if (onRing.has(i)) return;
    links[from]?.push(i);
    links[to]?.push(i);
  });
  const order = [...walk.nodes];
  for (const node of order) root[node] = node;
  for (const node of order)
    for (const i of links[node] ?? []) {
      const next = legs[i]?.from === node ? legs[i]?.to : legs[i]?.from;
      if (next === undefined || next === 0 || root[next] !== -1) continue;
      root[next] = root[node] ?? -1;
      before[next] = node;
      leg[next] = i;
      order.push(next);
    }
  return { order, root, before, leg };
}
