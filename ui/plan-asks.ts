import type { SymbolName } from '#drawing/symbols.ts';
import type { PointKind } from '#model/installation.ts';
import type { PartLength } from './house/part-lengths.ts';
import type { Reshape } from './house/reshape.ts';
import type { DrawnWay } from './way-drawing/way-draft.ts';

/** What a thing that is to be placed looks like, and how high it would be. */
export interface PlacedThing {
  readonly symbol: SymbolName;
  readonly heightMm: number;
}

/**
 * What the plan may be asked to do with taps and keys in place of choosing things, by the tool that does it. A further tool: its
 * ask here, who makes it in `elements/plan/tool-makers.ts`, and what stands below the plan meanwhile in
 * `elements/plan/tool-bar.ts`.
 */
export interface PlanAsks {
  /** The next tap gives the place of one thing, told by `place-tapped`. */
  readonly place: PlacedThing;
  /** Each tap on a wall is a point that was found; a tap on one that is there chooses it. */
  readonly points: PlacedThing & {
    readonly kind: PointKind;
    /** The kinds to choose from, likeliest first. */
    readonly kinds: readonly PointKind[];
    readonly heightsMm: readonly number[];
    /** What was done last, in words; empty for nothing. */
    readonly said: string;
    /** Whether there is a circuit that the points could be put in order of. */
    readonly mayOrder: boolean;
  };
  /** Points are tapped in the order in which a circuit's cable passes them. */
  readonly order: {
    readonly circuitId: string;
    readonly name: string;
    readonly isRing: boolean;
    /** Ids of those tapped so far. */
    readonly points: readonly string[];
    readonly said: string;
  };
  /** The next tap says what hangs on a point by a cable of its own: a point, or a place where one is found. */
  readonly spur: PlacedThing & { readonly fromId: string; readonly said: string };
  /** The next tap says where a joint was found in a cable. */
  readonly joint: PlacedThing & { readonly legId: string };
  /** The next tap says beside which wall a new room stands, told by `place-tapped`. */
  readonly wall: Readonly<Record<never, never>>;
  /** Walls, corners and fixtures are dragged, or moved by keys, told by `plan-answered`. */
  readonly reshape: {
    /** What is in hand, by `keyOfPart`; null for nothing yet. */
    readonly part: string | null;
    readonly said: string;
    /** The lengths of what is in hand: each can be typed. */
    readonly lengths: readonly PartLength[];
    /** The room on the other side of a wall of which a part is marked: it can be measured from there; null for none. */
    readonly behind: string | null;
  };
  /** Places are tapped one after the other, anywhere on the plan: two to measure a picture by, or the corners of a room. */
  readonly spots: {
    /** Those tapped so far, mm on the plan. */
    readonly spots: readonly (readonly [xMm: number, yMm: number])[];
    /** True where the last leads back to the first. */
    readonly closes: boolean;
    /** What is to be tapped next, as a sentence. */
    readonly hint: string;
    readonly said: string;
    /** The words by which it is done with what was tapped; null while that is not enough, or done by itself. */
    readonly done: string | null;
  };
  /** A way is drawn by hand, told by `way-drawn`. */
  readonly way: { readonly drawing: DrawnWay };
}

/** An ask for one tool. */
export type AskOf<K extends keyof PlanAsks> = { readonly tool: K } & PlanAsks[K];

/** An ask for any tool. */
export type PlanAsk = { readonly [K in keyof PlanAsks]: AskOf<K> }[keyof PlanAsks];

/** What comes of a tool besides places, or is pressed below the plan while it is in hand. */
export type PlanAnswer =
  | { readonly do: 'pick'; readonly subjectId: string }
  | { readonly do: 'kind'; readonly kind: PointKind }
  | { readonly do: 'height'; readonly heightMm: number }
  /** Points were tapped; now they are put in order. */
  | { readonly do: 'order' }
  /** A wall or a corner was moved; by keys, steps follow each other. */
  | { readonly do: 'reshape'; readonly asked: Reshape; readonly byKeys: boolean }
  /** A length of what is in hand was typed. */
  | { readonly do: 'length'; readonly id: string; readonly mm: number }
  /** A part of the wall in hand is to be marked; or it is measured from its other side. */
  | { readonly do: 'part-of-wall' }
  | { readonly do: 'other-side' }
  | { readonly do: 'mark'; readonly alongMm: number }
  | { readonly do: 'spot'; readonly at: readonly [xMm: number, yMm: number] }
  | { readonly do: 'take-back' }
  | { readonly do: 'done' };

/** Whether a tool is the one that is asked for. */
export const isAskOf = <K extends keyof PlanAsks>(ask: PlanAsk | null, tool: K): ask is PlanAsk & AskOf<K> =>
  ask?.tool === tool;

/**
 * Whether a tool has what room there is on a phone for the plan. One that places a single thing has not: what is placed must be in
 * sight once the plan is small again. Nor has one that taps over a picture: its corners must stay where they are from tap to tap.
 */
export const needsThePlan = (ask: PlanAsk | null): boolean =>
  ask !== null && ['points', 'order', 'reshape', 'wall'].includes(ask.tool);

/** What is asked of a tool at this moment; what was asked first once it is to be put away. */
export const newestAsk = <K extends keyof PlanAsks>(ask: PlanAsk | null, first: AskOf<K>): AskOf<K> =>
  isAskOf<K>(ask, first.tool) ? ask : first;
