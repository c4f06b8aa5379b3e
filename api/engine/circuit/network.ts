import type { Cable } from '#model/cable.ts';
import type { Board, Circuit, Device, Joint, Place, Point } from '#model/installation.ts';

/**
 * A place where conductors meet. Ids: an origin is `<circuitId>`; a point's terminals are `<pointId>`; a
 * fused unit's load side is `<pointId>/load`, a grid module's `<pointId>/module-<n>`; what a connection
 * brings along is `<connectionId>/joint`, `/joint-out`, `/joint-back`, `/unit`, `/unit/load`; a joint left
 * where a removed point was is `<pointId>/joined`, those where a moved one was are `<pointId>/joined-<n>`.
 *
 * Edges go by ids of the same make: a leg is `<legId>`, what is left of a cut one `<legId>/part-<n>` in order
 * along it, a new cable `<connectionId>/cable-<n>`, one that extends an old cable `<pointId>/extension-<n>`, a fuse `<pointId>/fuse` or `<connectionId>/unit/fuse`. The
 * kept end of an old cable that no leg records is `<connectionId>/old-out` or `/old-back`: it runs from the
 * neighbour on the ring to where it was cut, it is `found`, has no leg, and its length and make are unknown.
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

/** An old cable that no leg records and that a scheme lifts at a point's terminals. */
export interface LiftedEnd {
  readonly nodeId: NodeId;
  readonly connectionId: string;
}

/**
 * Something that a scheme asks for and that cannot be done as written; becomes a finding. The subject is a
 * node, point, leg or circuit, the connection itself where it is about the whole of it, or
 * `remedy/<kind>`, `remedy/<kind>/<at>`.
 */
export interface EditProblem {
  /** Null where a remedy is at fault. */
  readonly connectionId: string | null;
  readonly code:
    | 'leg-gone'
    | 'leg-too-short'
    /** The leg that is named does not run between the two places named beside it. */
    | 'leg-elsewhere'
    | 'leg-of-other-circuit'
    /** No leg joins the two places between which the ring is to be opened. */
    | 'not-neighbours'
    | 'point-not-connected-here'
    /** A feed that goes on from a place which nothing before it in the connection reaches. */
    | 'feed-not-reached'
    | 'not-a-spur'
    | 'cut-order'
    /** A joint of an earlier connection lies in the stretch that this one takes out. */
    | 'joint-cut-away'
    | 'already-connected'
    | 'unit-is-no-fused-unit'
    | 'unit-by-spur'
    | 'not-from-source'
    | 'nothing-to-connect'
    | 'no-existing-point'
    /** A remedy that does not say what it is done to, where there is not exactly one thing that it can mean. */
    | 'remedy-without-target';
  readonly subjectId: string;
}

/** A circuit as the network stage knows it, found or new. */
export interface NetworkCircuit {
  readonly id: string;
  readonly name: string;
  readonly board: Board | null;
  /** The device at its origin: as found, or as the scheme's remedies leave it; null while it is unknown. */
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
  /** Sorted by node, then connection; absent where nothing is lifted that no leg records. */
  readonly lifted?: readonly LiftedEnd[];
  readonly problems: readonly EditProblem[];
  /** Points of a circuit that no leg or connection reaches (a quoting visit), by circuit id. */
  readonly unwired: ReadonlyMap<string, readonly Point[]>;
}
