import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';
import type { LoadedNetwork } from './random-network.ts';

/** A flow as the reference works it out. */
interface DenseFlow {
  readonly legA: readonly number[];
  /** NaN where a node is not reached. */
  readonly dropV: readonly number[];
}

/** The nodes that the source reaches. */
export function reachedNodes({ source, from, to }: FlowNetwork): ReadonlySet<number> {
  const reached = new Set([source]);
  let before = 0;
  while (reached.size > before) {
    before = reached.size;
    from.forEach((a, leg) => {
      const b = to[leg] ?? a;
      if (reached.has(a) || reached.has(b)) reached.add(a).add(b);
    });
  }
  return reached;
}

/** Solves a full system of equations by elimination, the largest entry of each column first. */
export function eliminated(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const at = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    let best = column;
    for (let row = column; row < size; row += 1)
      if (Math.abs(at(row, column)) > Math.abs(at(best, column))) best = row;
    const [pivotRow, movedRow] = [rows[best] ?? [], rows[column] ?? []];
    rows[best] = movedRow;
    rows[column] = pivotRow;
    if (Math.abs(at(column, column)) < 1e-12) throw new Error(`No single answer: column ${column}`);
    for (let row = 0; row < size; row += 1) {
      const times = row === column ? 0 : at(row, column) / at(column, column);
      if (times !== 0) rows[row] = (rows[row] ?? []).map((entry, k) => entry - times * at(column, k));
    }
  }
  return rows.map((_, row) => at(row, size) / at(row, row));
}

/**
 * The same flow worked out by modified nodal analysis: potentials of all nodes that are reached, and the current of
 * every leg beside them, in one full system; a link is an equation like any other. Loops of links have no single
 * answer in it. Source: C. Ho, A. Ruehli, P. Brennan, IEEE Transactions on Circuits and Systems, 1975 (from memory).
 */
export function denseFlow({ network, loadA }: LoadedNetwork, openLeg = -1): DenseFlow {
  const { nodeCount, source, from, to, ohm } = withoutLeg(network, openLeg);
  const reached = reachedNodes(withoutLeg(network, openLeg));
  const nodes = [...reached].filter((node) => node !== source);
  const legs = Array.from(from.keys()).filter(
    (leg) => leg !== openLeg && from[leg] !== to[leg] && reached.has(from[leg] ?? -1),
  );
  const columnOf = new Map(nodes.map((node, i) => [node, i]));
  const size = nodes.length + legs.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = [...nodes.map((node) => loadA[node] ?? 0), ...legs.map(() => 0)];
  const put = (row: number | undefined, column: number | undefined, value: number): void => {
    const entries = row === undefined ? undefined : matrix[row];
    if (entries !== undefined && column !== undefined) entries[column] = (entries[column] ?? 0) + value;
  };
  legs.forEach((leg, i) => {
    const column = nodes.length + i;
    const [a, b] = [columnOf.get(from[leg] ?? -1), columnOf.get(to[leg] ?? -1)];
    // What arrives at a node less what leaves it is its load; drop at the far end less the near one is I · R.
    put(a, column, -1);
    put(b, column, 1);
    put(column, b, 1);
    put(column, a, -1);
    put(column, column, -(ohm[leg] ?? 0));
  });
  const solved = eliminated(matrix, right);
  const legA = new Array<number>(from.length).fill(0);
  legs.forEach((leg, i) => {
    legA[leg] = solved[nodes.length + i] ?? 0;
  });
  const dropV = Array.from({ length: nodeCount }, (_, node) =>
    node === source ? 0 : (solved[columnOf.get(node) ?? -1] ?? Number.NaN),
  );
  return { legA, dropV };
}

/** A network with one leg taken off both its ends; all others keep their numbers. */
export function withoutLeg(network: FlowNetwork, leg: number): FlowNetwork {
  if (leg < 0) return network;
  const at = network.from[leg] ?? 0;
  return { ...network, to: network.to.map((node, i) => (i === leg ? at : node)) };
}
