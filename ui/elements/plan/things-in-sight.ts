import type { ScreenPlan } from '#drawing/plan/screen-plan.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { fromSheet, type SheetPoint } from '#engine/plan/sheet-frame.ts';
import { storeyOfAny } from './marked-storeys.ts';
import type { PlanSight } from './plan-sight.ts';

/** The plan on which things are brought into sight, as it is at each moment. */
export interface SightPlan {
  readonly worked: () => Worked;
  readonly storeyId: () => string;
  readonly drawn: () => ScreenPlan | null;
  /** False before the plan's box was measured. */
  readonly isMeasured: () => boolean;
  readonly showStorey: (storeyId: string) => void;
}

/** Shows what was just chosen, lit or come to by keyboard: its storey first, then its place if that is out of sight. */
export class ThingsInSight {
  readonly #plan: SightPlan;
  readonly #sight: PlanSight;

  constructor(plan: SightPlan, sight: PlanSight) {
    this.#plan = plan;
    this.#sight = sight;
  }

  bring(things: ReadonlySet<string>, mayChangeStorey: boolean): void {
    const drawn = this.#plan.drawn();
    const spots = [...things].map((id) => drawn?.spots.get(id)).filter((spot) => spot !== undefined);
    if (spots.length > 0) {
      this.bringSpots(spots);
      return;
    }
    const storeyId = mayChangeStorey ? storeyOfAny(this.#plan.worked(), things) : null;
    if (storeyId !== null && storeyId !== this.#plan.storeyId()) this.#plan.showStorey(storeyId);
  }

  bringSpots(spots: readonly SheetPoint[]): void {
    const frame = this.#plan.drawn()?.frame;
    if (frame !== undefined && this.#plan.isMeasured())
      this.#sight.bring(spots.map((spot) => fromSheet(frame, spot)));
  }
}
