import type { Finish } from '#model/installation.ts';
import type { NodeId } from '../circuit/network.ts';
import type { Position } from '../plan/plane.ts';

/** The device or fuse that limits what can flow through a thing, nearest upstream. */
export interface Upstream {
  readonly kind: 'device' | 'fuse' | 'unknown';
  readonly ratingA: number | null;
}

/** What a joint takes of each conductor: line, neutral and protective alike. Null: no limit. */
export interface JointCapacity {
  readonly cables: number | null;
  /** The largest single conductor. */
  readonly conductorMm2: number;
  /** Of all in one terminal together. */
  readonly areaMm2: number | null;
  /** By the sheet that comes with it, as the job says; else what is usual for its kind. */
  readonly isFromSheet: boolean;
}

/** A place where cables are joined outside an accessory's terminals. */
export interface CableJoint {
  /** The node's id: `c3/joint-out`. */
  readonly id: NodeId;
  readonly circuitId: string;
  readonly connectionId: string | null;
  readonly pointId: string | null;
  readonly legId: string | null;
  readonly kind: 'screw' | 'lever' | 'maintenance-free' | 'crimp';
  /** `given` by the job, `derived` by this stage, or `unknown` for one found that nobody looked at. */
  readonly source: 'given' | 'derived' | 'unknown';
  readonly ratingA: number;
  readonly accessible: boolean | null;
  readonly upstream: Upstream;
  readonly inRing: boolean;
  readonly cables: number;
  /** Those of them that the scheme brings. */
  readonly newCables: number;
  /** The largest line conductor that is known; nought when none is. */
  readonly conductorAreaMm2: number;
  /** Summed line area of all cables; null when the size of one is unknown. */
  readonly areaMm2: number | null;
  /** Null for one found that nobody looked at. */
  readonly takes: JointCapacity | null;
  readonly position: Position | null;
  /** Where it lies, in words' stead. */
  readonly lies: 'floor-void' | 'ceiling-void' | 'wall' | 'loft' | 'surface' | 'box' | 'unknown';
  readonly state: 'found' | 'new';
}

/** The conductors in the line terminal of an accessory's side (neutral alike). */
export interface TerminalFill {
  readonly nodeId: NodeId;
  readonly pointId: string | null;
  readonly circuitId: string;
  /** All cables when the scheme is carried out: those found that stay and the new ones. */
  readonly cables: number;
  /** Summed line area of all of them; null when a cable's size is unknown. */
  readonly areaMm2: number | null;
  /** The new cables alone. */
  readonly newCables: number;
  readonly capacityCables: number;
  readonly capacityMm2: number;
  /** True when legs or the survey say how many cables are there already. */
  readonly counted: boolean;
  /** Whether the scheme brings a cable here or lifts one; an old cable cut further along changes nothing. */
  readonly affected: boolean;
}

/** What is fitted into the wall behind an accessory. */
export type BoxBuild = 'steel' | 'dry-lining' | 'surface';

export interface BackBox {
  /** The point's id, or the node's id of a unit that a connection brings along. */
  readonly id: string;
  readonly pointId: string | null;
  readonly gangs: number;
  readonly build: BoxBuild;
  readonly wallCore: string | null;
  readonly lining: 'none' | 'dot-and-dab' | 'battens' | null;
  readonly finish: string | null;
  /** What the accessory and its cables want. */
  readonly minimumDepthMm: number;
  readonly preferredDepthMm: number;
  /** What is there; null when nobody looked. New boxes: null. */
  readonly foundDepthMm: number | null;
  /** What is fitted, or stays; what a spacer frame adds is in it. */
  readonly depthMm: number;
  /** Depth of the spacer frame that goes over it, mm; where its depth is not known, of the one that may have to. Absent: none. */
  readonly frameMm?: number;
  readonly cables: number;
  /** fit: a new box. keep: the found one serves. re-box: it is exchanged. frame: it stays under a spacer frame. unknown: found, affected, depth not known (assumed to serve). */
  readonly action: 'fit' | 'keep' | 're-box' | 'frame' | 'unknown';
  /** For re-box and frame: what asks for it. */
  readonly cause: 'wanted' | 'third-cable' | 'too-shallow' | 'remedy' | 'replaced' | null;
  readonly party: boolean;
  /** Entry by a tube (no grommet), or by cable through a knock-out. */
  readonly knockOuts: number;
  readonly state: 'found' | 'new';
}

/** A fused connection unit (or a fused grid module) with its fuse. */
export interface FusedUnit {
  /** Supply node id: the point, or `<connectionId>/unit`. */
  readonly id: NodeId;
  readonly pointId: string | null;
  readonly connectionId: string | null;
  readonly circuitId: string;
  readonly loadNode: NodeId;
  readonly fuseA: number | null;
  readonly fuseSource: 'given' | 'by-load' | 'default' | 'unknown';
  /** Watts that are named behind it: fixed loads, and plug-in loads apart; null when none is named. */
  readonly fixedW: number | null;
  readonly plugInW: number | null;
  /** Socket-outlets behind it. */
  readonly outlets: number;
  readonly accessories: readonly NodeId[];
  readonly switched: boolean;
  readonly flexOutlet: boolean;
  readonly position: Position | null;
  readonly state: 'found' | 'new';
}

/** An accessory that the scheme fits. */
export interface NewAccessory {
  readonly pointId: string | null;
  /** The point, or the node of a unit that a connection brings along. */
  readonly id: string;
  readonly kind: string;
  /** `metal` among them is a metal plate. */
  readonly features: readonly string[];
  /** How a metal plate looks; absent: white moulded, or of metal that nobody chose the look of. */
  readonly finish?: Exclude<Finish, 'white'>;
}

/** The things a circuit with runs consists of. Lists sorted by id. */
export interface Things {
  readonly joints: readonly CableJoint[];
  readonly terminals: readonly TerminalFill[];
  readonly boxes: readonly BackBox[];
  readonly fusedUnits: readonly FusedUnit[];
  readonly accessories: readonly NewAccessory[];
}
