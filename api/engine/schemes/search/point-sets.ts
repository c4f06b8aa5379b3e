/** The sets of wanted points that are asked about: with each set all that lie in it, in ascending order, the empty set first. */
export interface PointSets {
  readonly points: number;
  /** Bit i is the i-th point. */
  readonly masks: Int32Array;
  /** The place of a set among them; must be one of them. */
  readonly at: (mask: number) => number;
  /** Most points in a set. */
  readonly largest: number;
}

/** Every set of so many points: its place is its mask. */
export function allSets(points: number): PointSets {
  return {
    points,
    masks: Int32Array.from({ length: 2 ** points }, (_, mask) => mask),
    at: (mask) => mask,
    largest: points,
  };
}

/** The sets of at most `largest` points, up to 30 in all. */
export function setsUpTo(points: number, largest: number): PointSets {
  const found: number[] = [];
  const grow = (mask: number, from: number, size: number): void => {
    found.push(mask);
    if (size < largest) for (let i = from; i < points; i++) grow(mask | (1 << i), i + 1, size + 1);
  };
  grow(0, 0, 0);
  const masks = Int32Array.from(found).sort();
  const places = new Map(Array.from(masks, (mask, place) => [mask, place] as const));
  return { points, masks, at: (mask) => places.get(mask) ?? -1, largest };
}
