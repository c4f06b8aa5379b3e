import type { Cable, Containment, Medium } from '#model/cable.ts';
import type { NodeId } from '../circuit/network.ts';
import type { Position } from '../plan/plane.ts';
import type { WhyApart } from './chase-slots.ts';
import type { StretchCuts } from './run-cuts.ts';

/** How a part of a run is known; `assumed` parts cost contingency. */
export type SegmentCertainty = 'pinned' | 'derived' | 'assumed';

/** A straight stretch of one medium. Its length is the distance between its ends. */
export interface Segment {
  readonly medium: Medium;
  readonly from: Position;
  readonly to: Position;
  readonly lengthMm: number;
  readonly direction: 'horizontal' | 'vertical' | 'sloping';
  /** The wall the stretch is in, on or through. */
  readonly wallId: string | null;
  readonly side: 'left' | 'right' | null;
  /** The storey whose floor void it is in, for stretches in voids. */
  readonly storeyId: string;
  /** Depth below the wall's surface, mm; null when not in a wall or unknown. */
  readonly depthMm: number | null;
  readonly containment: Containment;
  readonly insulation: 'none' | 'touching' | 'surrounded' | null;
  /** Stretches that share a tube or channel carry the same name, across runs. */
  readonly bundle: string | null;
  /** How many cables of the scheme lie in this chase, itself among them, and how much deeper it is for that, mm. Absent: one that is its own, or was drawn as one. */
  readonly oneChase?: { readonly cables: number; readonly deeperMm: number };
  /** The leg in whose channel, found there, this new stretch is laid. Absent: it has its own, or needs none. */
  readonly inChannelOf?: string;
  /** Joists it crosses. */
  readonly joistsCrossed: number;
  /** Studs it crosses, inside a stud wall. */
  readonly studsCrossed: number;
  readonly certainty: SegmentCertainty;
}

/** One end of a run. */
export interface RunEnd {
  readonly nodeId: NodeId;
  readonly pointId: string | null;
  readonly position: Position | null;
  readonly kind: 'accessory' | 'joint' | 'board';
}

/** A cable's path through the building. */
export interface Run {
  /** The network edge that it is the path of. */
  readonly id: string;
  readonly connectionId: string | null;
  readonly legId: string | null;
  readonly circuitIds: readonly string[];
  readonly from: RunEnd;
  readonly to: RunEnd;
  readonly cable: Cable;
  /** In order from `from`; empty when neither end has a place. */
  readonly segments: readonly Segment[];
  /** Sum of the segments. */
  readonly routeMm: number;
  /** Tails at both ends. */
  readonly endsMm: number;
  readonly slackMm: number;
  /** route + ends + slack; null when a place is missing. */
  readonly lengthMm: number | null;
  /** Low and high ends of the length by what is assumed. */
  readonly lowMm: number | null;
  readonly highMm: number | null;
  readonly pinned: boolean;
  /** What new cable cuts and opens, one for each of the segments; none for cable that is there already. */
  readonly cuts: readonly StretchCuts[];
  /** Plain words for a person, one a step. */
  readonly steps: readonly string[];
  /** The cables that it is chased beside in a chase of its own, and why not in one; absent: none. */
  readonly chasedApart?: readonly ChasedApart[];
}

/** Another cable beside which one is chased by itself, and why. */
export interface ChasedApart {
  readonly runId: string;
  readonly why: WhyApart;
}

/** Allowances that turn a route into a length of cable, mm and percent. */
export interface LengthAllowances {
  readonly accessoryEndMm: number;
  readonly jointEndMm: number;
  readonly boardEndMm: number;
  readonly slackMm: number;
  readonly derivedPercent: number;
  readonly assumedPercent: number;
}
