import type { Worked } from '#engine/connections/worked.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import { pinnedVia } from '../edits/pin-run.ts';
import {
  begun,
  type DrawAsk,
  type DrawnWay,
  drawnOn,
  drawnWay,
  runOf,
  type WayDraft,
  type WayTarget,
} from '../way-drawing/way-draft.ts';

/** The house as it is drawn in: as found, and with the shown scheme; null where there is none. */
export interface DrawnHouse {
  readonly asFound: Worked;
  readonly scheme: Worked | null;
}

/** Holds the way that is drawn by hand, until it is kept or dropped; it outlives a look at another step. */
export class WayDrawing {
  #draft: WayDraft | null = null;
  #away: WayDraft | null = null;
  #house: DrawnHouse | null = null;
  #isAtWays = false;
  /** Worked out once for each draft in each house. */
  #shown: { readonly worked: Worked; readonly draft: WayDraft; readonly drawn: DrawnWay | null } | null =
    null;

  /** @param isAtWays false in other steps: nothing is drawn there. */
  take(house: DrawnHouse, isAtWays: boolean): void {
    this.#house = house;
    this.#isAtWays = isAtWays;
  }

  /** What is drawn; null for nothing, and while another step or another scheme is shown. */
  get view(): DrawnWay | null {
    return this.#isAtWays ? this.#drawn : null;
  }

  do(ask: DrawAsk): void {
    if (ask.do === 'begin') this.#begin(ask.target);
    else if (ask.do === 'end') this.#putAway();
    else {
      const [worked, drawn] = [this.#worked, this.#drawn];
      if (worked !== null && drawn !== null) this.#draft = drawnOn(drawn, worked.plan, ask);
    }
  }

  /** What was put away is offered again when the same cable is drawn. */
  #putAway(): void {
    if (this.#draft !== null && this.#draft.steps.length > 0) this.#away = this.#draft;
    this.#draft = null;
  }

  /** A cable whose corners are recorded or pinned is drawn on from there. */
  #begin(target: WayTarget): void {
    this.#draft = begun(target, []);
    const worked = this.#worked;
    const run = worked === null ? null : runOf(worked, target);
    if (worked === null || run === null) return;
    const via =
      target.what === 'run'
        ? pinnedVia(worked, run)
        : (worked.job.legs.find(({ id }) => id === target.legId)?.via ?? []);
    const before = this.#away !== null && isSameData(this.#away.target, target) ? this.#away.steps : [];
    this.#draft = { ...begun(target, via), dropped: via.length === 0 ? before : [] };
  }

  get #worked(): Worked | null {
    const what = this.#draft?.target.what;
    if (this.#house === null || what === undefined) return null;
    return what === 'leg' ? this.#house.asFound : this.#house.scheme;
  }

  get #drawn(): DrawnWay | null {
    const [worked, draft] = [this.#worked, this.#draft];
    if (worked === null || draft === null) return null;
    if (this.#shown?.worked !== worked || this.#shown.draft !== draft)
      this.#shown = { worked, draft, drawn: drawnWay(worked, draft) };
    return this.#shown.drawn;
  }
}
