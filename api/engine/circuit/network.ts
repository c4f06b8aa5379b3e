import type { Cable } from '#model/cable.ts';
import type { Board, Circuit, Device, Joint, Place, Point } from '#model/installation.ts';

/**
 * A place where conductors meet. Ids: an origin is `<circuitId>`; a point's terminals are `<pointId>`; a
 * fused unit's load side is `<pointId>/load`, a grid module's `<pointId>/module-<n>`; what a connection
 * brings along is `<connectionId>/joint`, `/joint-out`, `/joint-back`, `/unit`, `/unit/load`; a joint left
 * where a removed point was is `<pointId>/joined`.
 */
export type NodeId = string;

export type NodeKind = 'origin' | 'terminals' | 'load-terminals' | 'joint';

export interface NetworkNode {
  readonly id: NodeId;
  readonly kind: NodeKind;
  /** The point whose terminals these are; a unit or joint that a connection brings along has none. */
  readonly pointId: string | null;
  /** Set for origins: the circuit that starts here. */
  readonly circuitId: string | null;
  readonly connectionId: string | null;
  /** Where it is, when no point says so: a place in the job's words, or a spot in a leg. */
  readonly place: Place | null;
  readonly inLeg: { readonly legId: string; readonly alongMm: number } | null;
  /** A joint's make: given, or derived later when null. */
  readonly joint: Joint | null;
  readonly state: 'found' | 'new';
}

export type EdgeState = 'found' | 'new';

/** A cable between two nodes, or the fuse between a fused unit's two sides. */
export interface NetworkEdge {
  readonly id: string;
  readonly kind: 'cable' | 'fuse';
  readonly from: NodeId;
  readonly to: NodeId;
  /** A ring's end at the board, where it is told. */
  readonly originEnd: 'A' | 'B' | null;
  /** The leg this is, or a part of; null for new cable and for fuses. */
  readonly legId: string | null;
  /** The part of the leg, measured as cable from its `from`; null where the leg's length is unknown. */
  readonly partMm: { readonly fromMm: number; readonly toMm: number } | null;
  readonly connectionId: string | null;
  readonly cable: Cable | null;
  /** Cable length: measured for legs; null for new cable (the ways stage says) and where unknown. */
  readonly lengthMm: number | null;
  /** BS 1362 fuse rating; null when the edge is no fuse or its rating is unknown. */
  readonly fuseA: number | null;
  readonly state: EdgeState;
}

/** Old cable that a scheme takes out of use: a whole leg or a part of it. */
export interface RemovedStretch {
  readonly legId: string;
  readonly fromMm: number | null;
  readonly toMm: number | null;
  readonly connectionId: string | null;
}

/** Something that a scheme asks for and that cannot be done as written; becomes a finding. */
export interface EditProblem {
  readonly connectionId: string;
  readonly code:
    | 'leg-gone'
    | 'leg-too-short'
    | 'not-neighbours'
    | 'point-not-connected-here'
    | 'not-a-spur'
    | 'cut-order'
    | 'already-connected'
    | 'unit-is-no-fused-unit'
    | 'unit-by-spur'
    | 'not-from-source'
    | 'nothing-to-connect'
    | 'no-existing-point';
  readonly subjectId: string;
}

/** A circuit as the network stage knows it, found or new. */
export interface NetworkCircuit {
  readonly id: string;
  readonly name: string;
  readonly board: Board | null;
  readonly device: Device | null;
  readonly circuit: Circuit | null;
  readonly isNew: boolean;
}

/** The wiring of the whole job as one graph. Lists are sorted by id. */
export interface Network {
  readonly nodes: readonly NetworkNode[];
  readonly edges: readonly NetworkEdge[];
  readonly circuits: readonly NetworkCircuit[];
  readonly removed: readonly RemovedStretch[];
  readonly problems: readonly EditProblem[];
  /** Points of a circuit that no leg or connection reaches (a quoting visit), by circuit id. */
  readonly unwired: ReadonlyMap<string, readonly Point[]>;
}
