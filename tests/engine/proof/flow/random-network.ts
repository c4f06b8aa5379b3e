import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';

/** Kinds of circuit that the tests draw at random. */
export const networkKinds = [
  'tree',
  'ring',
  'ring-with-trees',
  'two-rings',
  'joined-rings',
  'lollipop',
  'parallel-legs',
  'mesh',
] as const;
export type NetworkKind = (typeof networkKinds)[number];

/** What a random circuit is made by; the same one gives the same circuit. */
export interface NetworkRecipe {
  readonly seed: number;
  readonly kind: NetworkKind;
  /** Roughly how many nodes. */
  readonly size: number;
  /** How many legs in a hundred are links of no resistance; links never close a loop by themselves. */
  readonly linkPercent: number;
  /** Whether there are legs from a node to itself, and parts that nothing reaches. */
  readonly isOdd: boolean;
}

/** A circuit with loads. */
export interface LoadedNetwork {
  readonly network: FlowNetwork;
  readonly loadA: Float64Array;
}

/** Numbers from 0 to below 1, the same ones for the same seed. Source: T. Ettinger's mulberry32, public domain (from memory). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Pair = readonly [number, number];

/** Pairs of nodes while a circuit grows; node 0 is the source. */
class Growth {
  readonly pairs: Pair[] = [];
  nodeCount = 1;
  readonly random: () => number;
  constructor(random: () => number) {
    this.random = random;
  }
  pick = (below: number): number => Math.floor(this.random() * below);
  /** A new node on an old one. */
  hang(on: number): number {
    const node = this.nodeCount++;
    this.pairs.push([on, node]);
    return node;
  }
  trees(count: number): void {
    for (let i = 0; i < count; i += 1) this.hang(this.pick(this.nodeCount));
  }
  /** A way of new nodes between two old ones, which may be one and the same. */
  path(from: number, to: number, newNodes: number): void {
    let at = from;
    for (let i = 0; i < newNodes; i += 1) at = this.hang(at);
    this.pairs.push([at, to]);
  }
}

const growing: Readonly<Record<NetworkKind, (growth: Growth, size: number) => void>> = {
  tree: (growth, size) => growth.trees(size),
  ring: (growth, size) => growth.path(0, 0, Math.max(1, size)),
  'ring-with-trees': (growth, size) => {
    growth.path(0, 0, Math.max(1, Math.ceil(size / 2)));
    growth.trees(Math.floor(size / 2));
  },
  'two-rings': (growth, size) => {
    growth.path(0, 0, Math.max(1, Math.ceil(size / 3)));
    const shared = growth.pick(growth.nodeCount);
    growth.path(shared, shared, Math.max(1, Math.ceil(size / 3)));
    growth.trees(Math.floor(size / 3));
  },
  'joined-rings': (growth, size) => {
    growth.path(0, 0, Math.max(2, Math.ceil(size / 3)));
    growth.path(growth.pick(growth.nodeCount - 1), growth.nodeCount - 1, Math.ceil(size / 3));
    growth.trees(Math.floor(size / 3));
  },
  lollipop: (growth, size) => {
    let at = growth.hang(0);
    for (let i = 0; i < Math.floor(size / 4); i += 1) at = growth.hang(at);
    growth.path(at, at, Math.max(1, Math.ceil(size / 2)));
    growth.trees(Math.floor(size / 4));
  },
  'parallel-legs': (growth, size) => {
    growth.trees(Math.max(2, size));
    for (const pair of growth.pairs.slice()) if (growth.random() < 0.3) growth.pairs.push(pair);
  },
  mesh: (growth, size) => {
    growth.trees(Math.max(2, size));
    for (let i = 0; i < Math.ceil(size / 3); i += 1) {
      const a = growth.pick(growth.nodeCount);
      growth.pairs.push([a, (a + 1 + growth.pick(growth.nodeCount - 1)) % growth.nodeCount]);
    }
  },
};

/** Legs to themselves, and an island: a loop with a spur that nothing joins to the source. */
function addOddities(growth: Growth): void {
  const node = growth.pick(growth.nodeCount);
  growth.pairs.push([node, node]);
  const island = growth.nodeCount++;
  growth.path(island, island, 2);
  growth.hang(island + 1);
  growth.nodeCount += 1;
}

function shuffled<T>(random: () => number, items: readonly T[]): readonly T[] {
  return items
    .map((item) => ({ item, at: random() }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

/** Which legs may be links, so that no loop is of links alone. */
function linksAmong(growth: Growth, legs: readonly Pair[], percent: number): readonly boolean[] {
  const group = Array.from({ length: growth.nodeCount }, (_, node) => node);
  return legs.map(([a, b]) => {
    const [one, other] = [group[a] ?? a, group[b] ?? b];
    if (one === other || growth.random() * 100 >= percent) return false;
    group.forEach((of, node) => {
      if (of === other) group[node] = one;
    });
    return true;
  });
}

/** A circuit of a kind with loads up to 20 A, its nodes and legs numbered and turned at random. */
export function randomNetwork({ seed, kind, size, linkPercent, isOdd }: NetworkRecipe): LoadedNetwork {
  const random = randomFrom(seed);
  const growth = new Growth(random);
  growing[kind](growth, size);
  if (isOdd) addOddities(growth);
  const legs = shuffled(random, growth.pairs).map(([a, b]): Pair => (random() < 0.5 ? [a, b] : [b, a]));
  const isLink = linksAmong(growth, legs, linkPercent);
  const names = shuffled(
    random,
    Array.from({ length: growth.nodeCount }, (_, node) => node),
  );
  return {
    network: {
      nodeCount: growth.nodeCount,
      source: names[0] ?? 0,
      from: Int32Array.from(legs, ([a]) => names[a] ?? 0),
      to: Int32Array.from(legs, ([, b]) => names[b] ?? 0),
      // From a hand's length of cable to a long run of a thin one, evenly by ratio.
      ohm: Float64Array.from(legs, (_, leg) => (isLink[leg] ? 0 : 0.001 * 1000 ** random())),
    },
    loadA: Float64Array.from(names, () => (random() < 0.2 ? 0 : random() * 20)),
  };
}
