/**
 * A circuit as current sees it: nodes, and legs of some resistance between them. Parallel legs, legs from a node to
 * itself and nodes that nothing reaches are all allowed.
 */
export interface FlowNetwork {
  /** Nodes are the numbers below this one. */
  readonly nodeCount: number;
  /** The node of the origin; both ends of a ring meet there. */
  readonly source: number;
  /** Nodes, by leg. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Ω by leg, above 0; 0 for a link such as a fuse, whose ends are at the same potential. */
  readonly ohm: Float64Array;
}

/**
 * What is reached from the source. `tree`: no loop. `ring`: one loop, and it passes the source; trees may hang
 * anywhere. `mesh`: everything else.
 */
export type FlowShape = 'tree' | 'ring' | 'mesh';
