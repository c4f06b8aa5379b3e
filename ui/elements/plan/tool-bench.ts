import type { PlanPoint } from '#engine/plan/plane.ts';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { send } from '../../job-events.ts';
import type { DrawnWay } from '../../way-drawing/way-draft.ts';
import { PlacingFocus } from './placing-focus.ts';
import { PlacingTool } from './placing-tool.ts';
import type { PlanTool, ToolPlace } from './plan-tool.ts';
import { WayTool } from './way-tool.ts';

/** Which tools are asked for. */
interface AskedTools {
  readonly placing: boolean;
  readonly drawing: DrawnWay | null;
}

/** The plan that tools work on. */
interface Bench {
  /** What sends their events. */
  readonly from: EventTarget;
  readonly asked: () => AskedTools;
  readonly place: () => ToolPlace;
  readonly middle: () => PlanPoint;
  /** What is in sight stays as it is, although a thing comes to it. */
  readonly stay: () => void;
  /** Something moved under the hand; the words are for a screen reader. */
  readonly moved: (words: string) => void;
}

/** Has the tool in hand that is asked for: none, picking a place, or drawing a way. */
export class ToolBench {
  #tool: PlanTool | null = null;
  #wasInHand = false;
  readonly #focus = new PlacingFocus();
  readonly #bench: Bench;

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  get tool(): PlanTool | null {
    return this.#tool;
  }

  get isPlacing(): boolean {
    return this.#tool instanceof PlacingTool;
  }

  /** Takes up the tool that is asked for, and puts away the one that is not. */
  take(): void {
    const { placing, drawing } = this.#bench.asked();
    if (placing) {
      if (!this.isPlacing) this.#tool = this.#placingTool();
    } else if (drawing?.isDrawing) {
      if (!(this.#tool instanceof WayTool)) this.#tool = this.#wayTool(drawing);
    } else this.#tool = null;
  }

  /** The focus goes to the plan with a tool that was taken up by keyboard, and back when it is put away. */
  follow(plan: SVGElement | null): void {
    const isInHand = this.#tool !== null;
    if (isInHand !== this.#wasInHand) this.#focus.follow(isInHand, plan);
    this.#wasInHand = isInHand;
  }

  #placingTool(): PlanTool {
    const { from, place, middle, stay, moved } = this.#bench;
    return new PlacingTool(place, middle(), {
      took: (taken) => {
        stay();
        send(from, 'place-tapped', { place: taken });
      },
      moved,
      gaveUp: () => askPlan(from, false),
    });
  }

  #wayTool(first: DrawnWay): PlanTool {
    const { from, asked, place, moved } = this.#bench;
    return new WayTool(place, () => asked().drawing ?? first, {
      ask: (ask) => send(from, 'way-drawn', ask),
      moved,
    });
  }
}
