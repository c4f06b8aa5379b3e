import type { coreColours, mistaken } from '#data/standards/core-colours.ts';
import type { Device } from '#model/installation.ts';
import type { NodeId } from '../circuit/network.ts';
import type { ApplianceFlex } from '../connections/appliance-flex.ts';
import type { BackBox, CableJoint, TerminalFill } from '../connections/things.ts';
import type { Core, CoreColour } from './core-colour.ts';

/** Which terminal of a place a conductor goes to; the words are the drawing's. */
export type TerminalName =
  | 'L'
  | 'N'
  | 'E'
  | 'E1'
  | 'E2'
  | 'L-in'
  | 'N-in'
  | 'L-out'
  | 'N-out'
  | 'device'
  | 'device-N'
  | 'N-bar'
  | 'E-bar';

/** One conductor at one terminal. */
export interface Conductor {
  readonly core: Core;
  /** As it is now, without any sleeve; null: nobody looked, or the cable does not tell. */
  readonly foundColour: CoreColour | null;
  /** As it is seen once the work is done; null: to be looked at. */
  readonly afterColour: CoreColour | null;
  /** `put-on`: sleeving is in the kit for it. `look`: an old end, which has its sleeve unless somebody left it off. */
  readonly sleeve: 'put-on' | 'look' | null;
  readonly terminal: TerminalName;
}

/**
 * What a cable's end is to the work. `found`: it was here and stays. `cut-end`: an old cable's cut end that is brought here.
 * `new`: the scheme lays it. `not-recorded`: the survey saw it, or takes it to be there, and no leg tells of it.
 */
export type CableEndState = 'found' | 'cut-end' | 'new' | 'not-recorded';

/** One end of a cable with its conductors: line, neutral, earth. */
export interface CableEnd {
  /** The edge's id; null where it is not recorded. */
  readonly edgeId: string | null;
  /** Its name on all papers; null where it is not recorded. */
  readonly mark: string | null;
  readonly state: CableEndState;
  readonly nodeId: NodeId;
  /** Of a ring at its board, where it is told. */
  readonly ringEnd: 'A' | 'B' | null;
  /** The place at its other end; null where it is not recorded. */
  readonly towards: { readonly nodeId: NodeId; readonly mark: string } | null;
  readonly lineMm2: number | null;
  readonly cpcMm2: number | null;
  readonly conductors: readonly Conductor[];
}

/** What is connected beside cables: an appliance's flex, a box's tail, an RCBO's own leads. */
export interface Lead {
  readonly kind: 'flex' | 'box-tail' | 'rcbo-neutral' | 'rcbo-earth';
  /** Of a flex: what it is, and what it feeds. */
  readonly flex?: ApplianceFlex;
  readonly conductors: readonly Conductor[];
}

/** The terminals of one side of a place: of a fused unit its supply, its load; of a grid each fused module. */
export interface TerminalSide {
  readonly nodeId: NodeId;
  readonly side: 'only' | 'supply' | 'load';
  /** Found ends by mark (a ring's end A before B), then cut ends, new ones, those not recorded. */
  readonly ends: readonly CableEnd[];
  /** Of accessories: how much its line terminal holds of what it takes; neutral alike. */
  readonly fill: TerminalFill | null;
  /** The fuse between the supply and this side: its rating, null where nobody knows it; absent: none. */
  readonly fuse?: { readonly ratingA: number | null };
}

/** What protects a circuit once the work is done, and what did before. */
export interface ChangedDevice {
  readonly circuitName: string;
  /** Its way at the board, as it is labelled; null where nobody has said. */
  readonly way: string | null;
  readonly before: Device | null;
  /** Null while its rating cannot be told. */
  readonly after: Device | null;
}

/** A board with what has to be known of it before a device is bought. */
export interface BoardToBuyFor {
  /** As on its cover; null: nobody wrote it down. */
  readonly make: string | null;
}

/** What the flex of an appliance comes out of. */
export interface FlexOrigin {
  readonly mark: string;
  /** How it is parted from the supply: by the unit's switch and its fuse, by its fuse alone, or at what is before an outlet plate. */
  readonly partedBy: 'switch' | 'fuse' | 'before';
}

/** A place as people come to it: an accessory with its box, a joint, a board, the end of a flex in an appliance. */
export interface ConnectionPlace {
  /**
   * The point's id, the joint's or unit's node, `board/<id>`, `<pointId>/joined` for a box whose accessory goes, `<id>/appliance` for what
   * a flex from there feeds.
   */
  readonly id: string;
  readonly mark: string;
  readonly kind: 'accessory' | 'fused-unit' | 'joint' | 'board' | 'old-box' | 'appliance';
  /** What stands there once the work is done, of an accessory: its kind as the job file has it. */
  readonly accessory: {
    readonly kind: string;
    readonly features: readonly string[];
    readonly isNew: boolean;
  } | null;
  readonly storeyId: string | null;
  readonly room: string | null;
  /** Of accessories and boards, above the floor. */
  readonly heightMm: number | null;
  /** Whether the scheme changes anything here. */
  readonly isWorkedOn: boolean;
  /** Supply before load; one for most. */
  readonly sides: readonly TerminalSide[];
  /** Ends that were here and go: disconnected, made dead for good, left where they are. */
  readonly gone: readonly CableEnd[];
  readonly leads: readonly Lead[];
  readonly box: BackBox | null;
  readonly joint: CableJoint | null;
  /** Whether old and new colours meet here; null where nobody knows the old ones. */
  readonly mixesColours: boolean | null;
  /** Of a board: the devices that are not as they were, by circuit. */
  readonly devices: readonly ChangedDevice[];
  /** Of a board that stays and gets a device; null for all else. */
  readonly buyFor: BoardToBuyFor | null;
  /** Of an appliance, what its flex comes out of; null for all else. */
  readonly fedFrom: FlexOrigin | null;
  /** Of a board, the circuits whose cables nobody recorded: names. */
  readonly unrecordedCircuits: readonly string[];
}

/** How every conductor is connected once a scheme is carried out. */
export interface ConnectionSheet {
  /** Of the circuits that the scheme touches: those worked on first, each by storey from the lowest, room and mark; boards last. */
  readonly places: readonly ConnectionPlace[];
  /** Whether an old or an unseen core is met where something is done. */
  readonly meetsOldColours: boolean;
  /** Colours of cores, the older first, with the days between which they were used. */
  readonly colours: typeof coreColours.rows;
  /** Colours that changed their meaning. */
  readonly mistaken: typeof mistaken;
}
