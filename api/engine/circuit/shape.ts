import type { NetworkEdge, NodeId } from './network.ts';

/**
 * ring: one cycle through the origin. radial: no cycle. broken-ring: claimed or wired as a ring (two ends at
 * the origin) and the cycle does not close. lollipop: a cycle that does not pass the origin. interconnected:
 * more than one cycle, or joined to another circuit. unknown: too little was recorded to tell.
 */
export type CircuitShapeName = 'ring' | 'radial' | 'broken-ring' | 'lollipop' | 'interconnected' | 'unknown';

/** Where a node is in its circuit. `claimed`: no legs, so by the survey's word (asFound.role) only. */
export type NodeRole =
  | 'origin'
  | 'ring'
  | 'unfused-spur'
  | 'radial'
  | 'behind-fuse'
  | 'unreached'
  | 'claimed-ring'
  | 'claimed-spur';

export interface NodePlace {
  readonly nodeId: NodeId;
  readonly circuitId: string;
  readonly role: NodeRole;
  /** The next node towards the origin (any neighbour for ring nodes: null). */
  readonly upstreamNode: NodeId | null;
  readonly upstreamEdgeId: string | null;
  /** The ring node (or origin) that the tree with this node hangs from; null on the ring itself. */
  readonly rootNode: NodeId | null;
  /** The smallest fuse between here and the origin; null when none. */
  readonly fuseA: number | null;
  /** The unit node (load side) of that fuse. */
  readonly behindUnit: NodeId | null;
  /** Cables (not fuses) between here and the ring or origin. */
  readonly depth: number;
}

/** A tree of cable that hangs from the ring (or the origin of a ring circuit) up to its first fuse. */
export interface UnfusedSpur {
  /** `spur@<first edge id>` */
  readonly id: string;
  readonly circuitId: string;
  readonly rootNode: NodeId;
  readonly edgeIds: readonly string[];
  /** Terminal nodes on it that take a load or more cable: sockets, fused units' supply sides, outlets. Joints are not listed. */
  readonly accessoryNodes: readonly NodeId[];
  readonly jointNodes: readonly NodeId[];
  /** True when any part of it is new in the scheme. */
  readonly isNew: boolean;
}

/** What a circuit's wiring amounts to. */
export interface CircuitShape {
  readonly circuitId: string;
  readonly shape: CircuitShapeName;
  /** What the survey claims, and whether the legs contradict it. */
  readonly claimed: 'ring' | 'radial' | null;
  readonly contradicts: boolean;
  /** `proved`: the order is certain (measured); `recorded`: from legs; `claimed`: only the survey's word; `none`. */
  readonly evidence: 'proved' | 'recorded' | 'claimed' | 'none';
  /** Ring nodes in order from end A, origin excluded; empty when not a ring. */
  readonly ringNodes: readonly NodeId[];
  /** Ring edges in order from end A, one more than `ringNodes`. */
  readonly ringEdges: readonly NetworkEdge[];
  /** Length of the loop, null when any ring edge's length is unknown. */
  readonly ringLengthMm: number | null;
  readonly spurs: readonly UnfusedSpur[];
  /** Places of every node of the circuit, sorted by node id. */
  readonly places: readonly NodePlace[];
  /** Other circuits that this one is joined to. */
  readonly joinedTo: readonly string[];
  /** Points of the circuit that are on no leg. */
  readonly unwiredPointIds: readonly string[];
}
