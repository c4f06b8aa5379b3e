import type { DrawnWay } from './way-drawing/way-draft.ts';

/**
 * What the plan may be asked to do with taps and keys in place of choosing things, by the tool that does it. A further tool: its
 * ask here, and who makes it in `elements/plan/tool-makers.ts`.
 */
export interface PlanAsks {
  /** Each tap gives a place, told by `place-tapped`, until whoever asked has enough. */
  readonly place: Readonly<Record<never, never>>;
  /** A way is drawn by hand, told by `way-drawn`. */
  readonly way: { readonly drawing: DrawnWay };
}

/** An ask for one tool. */
export type AskOf<K extends keyof PlanAsks> = { readonly tool: K } & PlanAsks[K];

/** An ask for any tool. */
export type PlanAsk = { readonly [K in keyof PlanAsks]: AskOf<K> }[keyof PlanAsks];

/** Whether a tool is the one that is asked for. */
export const isAskOf = <K extends keyof PlanAsks>(ask: PlanAsk | null, tool: K): ask is PlanAsk & AskOf<K> =>
  ask?.tool === tool;

/** What is asked of a tool at this moment; what was asked first once it is to be put away. */
export const newestAsk = <K extends keyof PlanAsks>(ask: PlanAsk | null, first: AskOf<K>): AskOf<K> =>
  isAskOf<K>(ask, first.tool) ? ask : first;
