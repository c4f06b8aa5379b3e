/**
 * One weighed way to connect one set of wanted points at one attachment. `cost` is what is made as little as may be, whole
 * and not negative: what an aim weighs its works, money, disturbance or both; what every scheme pays alike is left out.
 */
export interface Column {
  /** The wanted points that it connects: bit i is the i-th wanted point; never 0. */
  readonly mask: number;
  readonly cost: number;
  /** Of two columns at one cost the one whose key comes first is taken first; unique in the space. */
  readonly key: string;
}

/** An attachment that can be used once: of its columns a scheme takes at most one. */
export interface Layer<C extends Column = Column> {
  readonly id: string;
  readonly columns: readonly C[];
}

/** All there is to choose from: every scheme takes columns that together connect each wanted point exactly once. */
export interface SearchSpace<C extends Column = Column> {
  /** How many wanted points. */
  readonly points: number;
  readonly layers: readonly Layer<C>[];
  /** Columns of which a scheme may take any number: joints cut into legs, each its own. */
  readonly free: readonly C[];
}

/** One choice of columns that connects every point exactly once. */
export interface Choice<C extends Column = Column> {
  readonly cost: number;
  /** In the order of their keys. */
  readonly columns: readonly C[];
}

/** A space with those of its columns alone that are let in. */
export const filtered = <C extends Column>(
  { points, layers, free }: SearchSpace<C>,
  isIn: (column: C) => boolean,
): SearchSpace<C> => ({
  points,
  layers: layers
    .map(({ id, columns }) => ({ id, columns: columns.filter(isIn) }))
    .filter(({ columns }) => columns.length > 0),
  free: free.filter(isIn),
});
