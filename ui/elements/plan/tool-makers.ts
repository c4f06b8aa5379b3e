import type { PlanPoint } from '#engine/plan/plane.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { answerPlan } from '../../controllers/tool-hold.ts';
import { send } from '../../job-events.ts';
import { type AskOf, newestAsk, type PlacedThing, type PlanAsk } from '../../plan-asks.ts';
import { OrderTool } from './order-tool.ts';
import { type Placing, PlacingTool } from './placing-tool.ts';
import type { PlanTool, ToolPlace } from './plan-tool.ts';
import { ReshapeTool } from './reshape-tool.ts';
import { SpotsTool } from './spots-tool.ts';
import { WallTool } from './wall-tool.ts';
import { WayTool } from './way-tool.ts';

/** The plan that tools work on. */
export interface Bench {
  /** What sends their events. */
  readonly from: EventTarget;
  /** What is asked for at this moment; null for no tool. */
  readonly asked: () => PlanAsk | null;
  readonly place: () => ToolPlace;
  readonly middle: () => PlanPoint;
  /** What it is drawn in; null before it is drawn. */
  readonly frame: () => SheetFrame | null;
  /** What is in sight stays as it is, although a thing comes to it. */
  readonly stay: () => void;
  /** Something moved under the hand; the words are for a screen reader. */
  readonly moved: (words: string) => void;
}

type PlacingAsk = AskOf<'place' | 'points' | 'spur' | 'joint'>;

/** What a tool for places tells the plan's foot. */
function hintOf({ tool }: PlacingAsk, hasWalls: boolean): string {
  if (tool === 'points') return hasWalls ? 'Tap the wall at each point.' : 'Tap where each point is.';
  if (tool === 'spur') return 'Tap the point that hangs on it, or the wall where one is.';
  if (tool === 'joint') return 'Tap where the joint was found.';
  return hasWalls ? 'Tap the wall where it is to go.' : 'Tap where it is to go.';
}

/** Tells that a place was tapped, and keeps what is in sight. */
const tookPlace =
  ({ from, stay }: Pick<Bench, 'from' | 'stay'>) =>
  (place: Place): void => {
    stay();
    send(from, 'place-tapped', { place });
  };

function placingTool<K extends 'place' | 'points' | 'spur' | 'joint'>(
  { from, asked, place, middle, stay, moved }: Bench,
  first: AskOf<K>,
): PlanTool {
  const newest = (): PlacedThing => newestAsk<K>(asked(), first);
  const picked = (subjectId: string): void => answerPlan(from, { do: 'pick', subjectId });
  const placing: Placing = {
    asked: newest,
    hint: () => hintOf(first as PlacingAsk, place().hasWalls),
    took: tookPlace({ from, stay }),
    picked: first.tool === 'points' || first.tool === 'spur' ? picked : null,
    moved,
    gaveUp: () => askPlan(from, null),
  };
  return new PlacingTool(place, middle(), placing);
}

const orderTool = ({ from, asked, place }: Bench, first: AskOf<'order'>): PlanTool =>
  new OrderTool(place, () => newestAsk(asked(), first), {
    picked: (subjectId) => answerPlan(from, { do: 'pick', subjectId }),
    takeBack: () => answerPlan(from, { do: 'take-back' }),
    gaveUp: () => askPlan(from, null),
  });

const wayTool = ({ from, asked, place, moved }: Bench, first: AskOf<'way'>): PlanTool =>
  new WayTool(place, () => newestAsk(asked(), first).drawing, {
    ask: (ask) => send(from, 'way-drawn', ask),
    moved,
  });

const wallTool = ({ from, place, middle, stay, moved }: Bench): PlanTool =>
  new WallTool(place, middle(), {
    took: tookPlace({ from, stay }),
    moved,
    gaveUp: () => askPlan(from, null),
  });

const reshapeTool = ({ from, asked, place, moved }: Bench, first: AskOf<'reshape'>): PlanTool =>
  new ReshapeTool(place, () => newestAsk(asked(), first), {
    picked: (subjectId) => answerPlan(from, { do: 'pick', subjectId }),
    marked: (alongMm) => answerPlan(from, { do: 'mark', alongMm }),
    reshaped: (change, byKeys) => answerPlan(from, { do: 'reshape', asked: change, byKeys }),
    moved,
    gaveUp: () => askPlan(from, null),
  });

const spotsTool = ({ from, asked, place, middle, stay, moved }: Bench, first: AskOf<'spots'>): PlanTool =>
  new SpotsTool(place, () => newestAsk(asked(), first), middle(), {
    took: ([x, y]) => {
      stay();
      answerPlan(from, { do: 'spot', at: [x, y] });
    },
    takeBack: () => answerPlan(from, { do: 'take-back' }),
    moved,
    gaveUp: () => askPlan(from, null),
  });

/** The tool that an ask is for, new in hand. */
export function makeTool(bench: Bench, ask: PlanAsk): PlanTool {
  switch (ask.tool) {
    case 'place':
    case 'points':
    case 'spur':
    case 'joint':
      return placingTool(bench, ask);
    case 'order':
      return orderTool(bench, ask);
    case 'wall':
      return wallTool(bench);
    case 'reshape':
      return reshapeTool(bench, ask);
    case 'spots':
      return spotsTool(bench, ask);
    case 'way':
      return wayTool(bench, ask);
  }
}
