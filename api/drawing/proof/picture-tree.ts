import type { CircuitPicture } from './circuit-picture.ts';

/** A cable away from the origin, or from the ring, and what is at its far end; indexes of the picture. */
export interface Branch {
  readonly leg: number;
  readonly to: number;
}

/** How a circuit hangs together for drawing. */
export interface PictureTree {
  /** By node: the branches that go on from it, those with least behind them first. */
  readonly branches: ReadonlyMap<number, readonly Branch[]>;
  /** Legs that would close a loop which is no ring: drawn as a line of text. */
  readonly closing: readonly number[];
  /** Nodes that no cable joins to the origin. */
  readonly unreached: readonly number[];
}

/** Hangs everything from the ring, or from the origin where there is none; no node twice. */
export function pictureTree(picture: CircuitPicture): PictureTree {
  const { nodes, legs, ring } = picture;
  const used = new Set(ring?.legs ?? []);
  const links = new Map<number, Branch[]>();
  legs.forEach(({ ends: [a, b] }, leg) => {
    if (used.has(leg)) return;
    links.set(a, [...(links.get(a) ?? []), { leg, to: b }]);
    links.set(b, [...(links.get(b) ?? []), { leg, to: a }]);
  });
  const queue = [0, ...(ring?.nodes ?? [])];
  const reached = new Set(queue);
  const branches = new Map<number, Branch[]>();
  for (const node of queue)
    for (const link of links.get(node) ?? []) {
      if (used.has(link.leg) || reached.has(link.to)) continue;
      used.add(link.leg);
      reached.add(link.to);
      branches.set(node, [...(branches.get(node) ?? []), link]);
      queue.push(link.to);
    }
  const behind = new Map<number, number>();
  for (const node of queue.toReversed())
    behind.set(
      node,
      (branches.get(node) ?? []).reduce((sum, { to }) => sum + (behind.get(to) ?? 0), 1),
    );
  const sorted = [...branches].map(([node, own]): [number, readonly Branch[]] => [
    node,
    own.toSorted((a, b) => (behind.get(a.to) ?? 0) - (behind.get(b.to) ?? 0) || a.leg - b.leg),
  ]);
  return {
    branches: new Map(sorted),
    closing: legs.flatMap(({ ends: [a] }, leg) => (!used.has(leg) && reached.has(a) ? [leg] : [])),
    unreached: nodes.flatMap((_, node) => (reached.has(node) ? [] : [node])),
  };
}
