import type { ScreenPlan } from '#drawing/plan/screen-plan.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { toSheet } from '#engine/plan/sheet-frame.ts';
import { send } from '../../job-events.ts';
import type { PlanStand } from '../../moved/moved-sight.ts';
import { meantAt, type Target } from './group-extent.ts';
import { type Grip, PointerReader } from './plan-gestures.ts';
import { targetsOf } from './plan-layers.ts';
import type { PlanSight } from './plan-sight.ts';
import type { PlanTool } from './plan-tool.ts';
import { PointMover } from './point-mover.ts';

/** The plan under the hand, as it is at each moment. */
export interface PlanUnderHand {
  /** What sends the events. */
  readonly from: EventTarget;
  readonly worked: () => Worked;
  readonly storeyId: () => string;
  readonly movable: () => ReadonlySet<string>;
  readonly drawn: () => ScreenPlan | null;
  /** What can be pointed at while no tool is in hand. */
  readonly targets: () => readonly Target[];
  readonly tool: () => PlanTool | null;
  readonly sight: PlanSight;
  readonly mmPerPx: () => number;
  /** Of the drawing, on the page. */
  readonly box: () => DOMRect;
  readonly stand: () => PlanStand;
  readonly choose: (subject: string | null) => void;
  /** What a screen reader is told of the last movement. */
  readonly said: (words: string) => void;
  /** The plan is to be drawn anew. */
  readonly changed: () => void;
}

/** What pointers do on the plan: they choose and move its things, or work its tool. */
export class PlanHand {
  readonly #plan: PlanUnderHand;
  readonly mover: PointMover;
  readonly pointers: PointerReader;

  constructor(plan: PlanUnderHand) {
    this.#plan = plan;
    const { from, worked, storeyId, movable, mmPerPx, sight } = plan;
    this.mover = new PointMover({
      worked,
      storeyId,
      movable,
      mmPerPx,
      took: () => sight.hold(),
      tell: (pointId, place, phase) => {
        if (phase === 'end') sight.letGo();
        send(from, 'point-placed', { pointId, place, phase, stand: phase === 'end' ? null : plan.stand() });
      },
      rested: (pointId) => plan.choose(pointId),
      said: plan.said,
    });
    this.pointers = new PointerReader(plan.box, {
      thingAt: (event) => this.#thingAt(event),
      gripOf: (subject) => this.#gripOf(subject),
      tapped: (subject, x, y) => this.#tapped(subject, x, y),
      panned: (dx, dy) => sight.pan(dx, dy),
      pinched: (factor, x, y) => sight.zoom(factor, sight.planAt(x, y)),
      dragged: (subject, dx, dy, phase) => this.#dragged(subject, [dx, dy], phase),
      hovered: (x, y) => plan.tool()?.hovered(sight.planAt(x, y)),
    });
  }

  /** A key let go of: what it moved has come to rest. */
  letGo(): void {
    this.mover.letGo();
    this.#plan.tool()?.grips?.letGo();
  }

  #thingAt(event: PointerEvent): string | null {
    const { box, sight, tool, drawn, targets } = this.#plan;
    const [{ left, top }, now, scene] = [box(), tool(), drawn()];
    const at = sight.planAt(event.clientX - left, event.clientY - top);
    if (now?.grips !== undefined) return now.grips.at(at);
    // A tool means what it is put on, and has room beside it.
    const meant =
      scene &&
      meantAt(now === null ? targets() : targetsOf(scene.scene, new Set()), toSheet(scene.frame, at));
    if (meant !== null || (now !== null && !now.onThings)) return meant;
    for (const one of event.composedPath())
      if (one instanceof SVGElement && one.dataset.subject !== undefined) return one.dataset.subject;
    return null;
  }

  #tapped(subject: string | null, x: number, y: number): void {
    const tool = this.#plan.tool();
    if (tool === null) this.#plan.choose(subject);
    else tool.tapped(this.#plan.sight.planAt(x, y), subject);
  }

  /** What was measured does not move by a swipe; what is only planned goes with the finger at once. */
  #gripOf(subject: string): Grip {
    const tool = this.#plan.tool();
    if (tool !== null) return tool.grips?.gripOf(subject) ?? 'none';
    if (!this.#plan.movable().has(subject)) return 'none';
    const point = this.#plan.worked().job.points.find(({ id }) => id === subject);
    return point?.status === 'wanted' ? 'at-once' : 'by-hold';
  }

  #dragged(subject: string, [dx, dy]: readonly [number, number], phase: 'begin' | 'move' | 'end'): void {
    const grips = this.#plan.tool()?.grips;
    const mmPerPx = this.#plan.mmPerPx();
    if (grips === undefined) this.mover.dragged(subject, [dx, dy], phase);
    else grips.dragged(subject, [dx * mmPerPx, -dy * mmPerPx], phase);
    this.#plan.changed();
  }
}
