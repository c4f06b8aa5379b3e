import { NodeHeap } from './heap.ts';
import { intoEnd } from './into-end.ts';
import { stepsTo, type WayStep } from './reached-nodes.ts';
import type { Row } from './row.ts';
import type { TwoEnds } from './two-ends.ts';
import type { NetEdge } from './way-net.ts';

/** A way, in order from the row's end. */
export interface FoundWay {
  readonly weight: number;
  readonly steps: readonly WayStep[];
}

/**
 * The least way from a row's end to the other end on the house: the row goes on into what that end brings, and back into
 * the house wherever that makes something nearer, so that the answer is that of the whole net.
 *
 * @returns null when nothing leads there.
 */
export function wayInto(row: Row, ends: TwoEnds): FoundWay | null {
  if (ends.target === null) return null;
  for (;;) {
    const way = ends.areApart ? wayApart(row, ends, ends.target) : wayAsGrown(row, ends, ends.target);
    if (way !== null && row.frontier > way.weight) return way;
    if (row.frontier === Number.POSITIVE_INFINITY) return way;
    if (way === null) row.growOn();
    else row.growBeyond(way.weight);
  }
}

/** The same of two ends that have nothing with one another but the house, which is most of them: most such ways end by the other end's own. */
function wayApart(row: Row, ends: TwoEnds, target: number): FoundWay | null {
  const into = intoEnd(row, ends.secondWays, ends.secondNode(target));
  if (into === undefined) return wayAsGrown(row, ends, target);
  if (into === null) return null;
  const own = into.steps.map(({ from, edge }) => ({ from: ends.node(from), edge }));
  return { weight: into.weight, steps: [...stepsTo(row, into.entry), ...own] };
}

/** The least way by what a row knows so far: none is less where the row has grown beyond it. */
function wayAsGrown(row: Row, ends: TwoEnds, target: number): FoundWay | null {
  const { flat, weighing } = row.house;
  const known = new Map<number, { readonly weight: number; readonly by: WayStep }>();
  const heap = new NodeHeap();
  let least = Number.POSITIVE_INFINITY;
  const weightAt = (node: number): number =>
    known.get(node)?.weight ?? (node < row.nodeCount ? row.weightOf(node) : Number.POSITIVE_INFINITY);
  const relax = (from: number, to: number, edge: NetEdge, weight: number): void => {
    if (weight >= least || weight >= weightAt(to)) return;
    known.set(to, { weight, by: { from, edge } });
    if (to === target) least = weight;
    heap.push(to, weight);
  };
  for (const node of ends.entries()) {
    const weight = row.weightOf(node);
    if (weight < Number.POSITIVE_INFINITY)
      ends.eachNewEdge(node, (to, edge) => relax(node, to, edge, weight + edge.weightBy(weighing)));
  }
  for (;;) {
    const weight = heap.nextWeight;
    const node = heap.pop();
    if (node < 0 || node === target) break;
    if (weight > weightAt(node)) continue;
    if (node < flat.nodeCount)
      for (let at = flat.first[node] as number; at < (flat.first[node + 1] as number); at += 1)
        relax(node, flat.to[at] as number, flat.edges[at] as NetEdge, weight + row.house.weightAt(at));
    ends.eachEdge(node, (to, edge) => relax(node, to, edge, weight + edge.weightBy(weighing)));
  }
  if (least === Number.POSITIVE_INFINITY) return null;
  const stepTo = (node: number): WayStep | null => known.get(node)?.by ?? row.stepTo(node);
  return { weight: least, steps: stepsTo({ stepTo }, target) };
}
