import type { PlanPoint } from '#engine/plan/plane.ts';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { send } from '../../job-events.ts';
import { type AskOf, newestAsk, type PlanAsk } from '../../plan-asks.ts';
import { PlacingTool } from './placing-tool.ts';
import type { PlanTool, ToolPlace } from './plan-tool.ts';
import { WayTool } from './way-tool.ts';

/** The plan that tools work on. */
export interface Bench {
  /** What sends their events. */
  readonly from: EventTarget;
  /** What is asked for at this moment; null for no tool. */
  readonly asked: () => PlanAsk | null;
  readonly place: () => ToolPlace;
  readonly middle: () => PlanPoint;
  /** What is in sight stays as it is, although a thing comes to it. */
  readonly stay: () => void;
  /** Something moved under the hand; the words are for a screen reader. */
  readonly moved: (words: string) => void;
}

function placingTool({ from, place, middle, stay, moved }: Bench): PlanTool {
  return new PlacingTool(place, middle(), {
    took: (taken) => {
      stay();
      send(from, 'place-tapped', { place: taken });
    },
    moved,
    gaveUp: () => askPlan(from, null),
  });
}

function wayTool({ from, asked, place, moved }: Bench, first: AskOf<'way'>): PlanTool {
  return new WayTool(place, () => newestAsk(asked(), first).drawing, {
    ask: (ask) => send(from, 'way-drawn', ask),
    moved,
  });
}

/** The tool that an ask is for, new in hand. */
export function makeTool(bench: Bench, ask: PlanAsk): PlanTool {
  switch (ask.tool) {
    case 'place':
      return placingTool(bench);
    case 'way':
      return wayTool(bench, ask);
  }
}
