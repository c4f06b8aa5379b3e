import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NodeHeap } from '#engine/ways/graph/heap.ts';
import { EntryTable, LaidLayer } from '#engine/ways/graph/laid-layer.ts';
import { measureOf } from '#engine/ways/graph/line.ts';
import { type NetEdge, OverJoin } from '#engine/ways/graph/net-edge.ts';
import { OwnWays } from '#engine/ways/graph/own-ways.ts';
import { PairSearch } from '#engine/ways/graph/pair-search.ts';
import { ReachedFrom } from '#engine/ways/graph/reached-from.ts';
import { Row } from '#engine/ways/graph/row.ts';
import { WeighedWays } from '#engine/ways/graph/weighed-ways.ts';

/** Millipence to the thousand are what is left of money by mess: weights are small whole numbers, nought among them. */
const weighing = { aim: 'mess', surface: false } as const;

/** Ways between nodes, each of a weight. */
type Ways = readonly (readonly [from: number, to: number, weight: number])[];

interface Layers {
  readonly houseNodes: number;
  /** The first end's nodes, after the house's. */
  readonly firstNodes: number;
  /** The second's, after the first's; the last is its end. */
  readonly secondNodes: number;
  readonly house: Ways;
  readonly first: Ways;
  readonly second: Ways;
  readonly between: Ways;
}

/** Few nodes and fewer weights, so that much weighs the same. */
const layersOf: fc.Arbitrary<Layers> = fc
  .record({
    houseNodes: fc.integer({ min: 2, max: 12 }),
    firstNodes: fc.integer({ min: 1, max: 3 }),
    secondNodes: fc.integer({ min: 1, max: 8 }),
  })
  .chain((counts) => {
    const { houseNodes, firstNodes, secondNodes } = counts;
    const [before, all] = [houseNodes + firstNodes, houseNodes + firstNodes + secondNodes];
    const nodes = (min: number, max: number) => fc.integer({ min, max: max - 1 });
    const some = (from: fc.Arbitrary<number>, to: fc.Arbitrary<number>) =>
      fc.array(fc.tuple(from, to, fc.integer({ min: 0, max: 3 })), { maxLength: 30 });
    const ofSecond = nodes(before, all);
    return fc.record({
      ...{ houseNodes: fc.constant(houseNodes), firstNodes: fc.constant(firstNodes) },
      secondNodes: fc.constant(secondNodes),
      house: some(nodes(0, houseNodes), nodes(0, houseNodes)),
      first: some(nodes(0, before), nodes(houseNodes, before)),
      second: some(fc.oneof(nodes(0, houseNodes), ofSecond), ofSecond),
      between: some(nodes(0, before), fc.oneof(nodes(0, houseNodes), ofSecond)),
    });
  });

interface Step {
  readonly from: number;
  readonly edge: NetEdge;
}

const edgeOf = (weight: number): NetEdge =>
  new OverJoin({
    ...{ a: { line: 0, tMm: 0 }, b: { line: 0, tMm: 0 } },
    measure: measureOf({ millipence: weight * 1000, minutes: 0, mess: 0 }),
  });

/** A layer's ways with their edges: as they are laid out, and as a list of what leads from where to where. */
function laidOut(ways: Ways, nodesBelow: number, nodeCount: number, numbered = (node: number) => node) {
  const edges = ways.map(([, , weight]) => edgeOf(weight));
  const ends = ways.flatMap(([from, to]) => [numbered(from), numbered(to)]);
  const list = ways.flatMap(([from, to, weight], at) => {
    const edge = edges[at] as NetEdge;
    return [
      { from, to, weight, edge },
      { from: to, to: from, weight, edge },
    ];
  });
  return { list, laid: new OwnWays({ ends, edges }, { nodesBelow, nodeCount }) };
}

function groundOf(layers: Layers) {
  const { houseNodes, firstNodes, secondNodes } = layers;
  const [before, all] = [houseNodes + firstNodes, houseNodes + firstNodes + secondNodes];
  // The second end numbers its nodes as if there were no first.
  const ofSecond = (node: number): number => (node < houseNodes ? node : node - firstNodes);
  return {
    house: laidOut(layers.house, 0, houseNodes),
    first: laidOut(layers.first, houseNodes, before),
    second: laidOut(layers.second, houseNodes, houseNodes + secondNodes, ofSecond),
    between: laidOut(layers.between, all, all),
    ...{ houseNodes, before, all, target: all - 1 },
  };
}

type Ground = ReturnType<typeof groundOf>;

const rowOf = ({ house, first, before, houseNodes }: Ground): Row => {
  const row = new Row(
    new WeighedWays(house.laid, weighing),
    { ways: () => first.laid, nodeCount: before },
    houseNodes,
  );
  row.growBeyond(Number.MAX_VALUE);
  return row;
};

function searched(ground: Ground, row: Row) {
  const { first, second, between, houseNodes, before, all, target } = ground;
  const laid = (ways: OwnWays, firstOwn: number) =>
    new LaidLayer(ways, row.house.weighing, firstOwn, new EntryTable());
  const search = new PairSearch(
    row,
    { wholeNodeCount: all },
    [laid(first.laid, houseNodes), laid(second.laid, before), laid(between.laid, all)],
    { reached: new ReachedFrom(), waiting: new NodeHeap() },
  );
  return search.wayAsGrown(target);
}

/**
 * Independent oracle: the same search as plainly as it can be written. Everything leaves the row at once, in the order in which the
 * layers came upon it; then what is nearest is looked for among all, of two as near the lower node. The first step counts.
 */
function plainly(ground: Ground, row: Row): { weight: number; steps: Step[] } | null {
  const { house, first, second, between, before, target } = ground;
  const known = new Map<number, { weight: number; step: Step }>();
  const weightOf = (node: number): number => known.get(node)?.weight ?? Number.POSITIVE_INFINITY;
  const goOn = (lists: readonly Ground['house'][], node: number, weight: number): void => {
    for (const { list } of lists)
      for (const way of list) {
        if (way.from !== node) continue;
        const [to, reached] = [way.to, weight + way.weight];
        const ofRow = to < before ? row.weightOf(to) : Number.POSITIVE_INFINITY;
        if (reached < Math.min(ofRow, weightOf(to), weightOf(target)))
          known.set(to, { weight: reached, step: { from: node, edge: way.edge } });
      }
  };
  for (const { list } of [second, between])
    for (const { from } of list) if (from < before) goOn([second, between], from, row.weightOf(from));
  const settled = new Set<number>();
  for (;;) {
    const left = [...known].filter(([node]) => !settled.has(node));
    const [next] = left.toSorted(([a, one], [b, other]) => one.weight - other.weight || a - b);
    if (next === undefined || next[0] === target) break;
    settled.add(next[0]);
    goOn([house, first, second, between], next[0], next[1].weight);
  }
  if (!known.has(target)) return null;
  const steps: Step[] = [];
  for (let at = target; ; ) {
    const step: Step | null = known.get(at)?.step ?? row.stepTo(at);
    if (step === null) break;
    steps.unshift(step);
    at = step.from;
  }
  return { weight: weightOf(target), steps };
}

describe('what leaves a row', () => {
  it('goes step by step as where all of it leaves at once, whatever weighs the same', () => {
    fc.assert(
      fc.property(layersOf, (layers) => {
        const ground = groundOf(layers);
        const row = rowOf(ground);
        const [ours, plain] = [searched(ground, row), plainly(ground, row)];
        expect(ours?.weight).toBe(plain?.weight);
        expect(ours?.steps.map(({ from }) => from)).toEqual(plain?.steps.map(({ from }) => from));
        expect(ours?.steps.every(({ edge }, at) => edge === plain?.steps[at]?.edge) ?? true).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
