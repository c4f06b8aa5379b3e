import { screenExtent } from '#drawing/plan/screen-plan.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, toSheet } from '#engine/plan/sheet-frame.ts';
import { Glide } from './glide.ts';
import type { Extent } from './group-extent.ts';
import {
  freeParts,
  type PlanWindow,
  PX_PER_UNIT,
  panned,
  type Size,
  wholeWindow,
  withInSight,
  zoomed,
} from './plan-window.ts';

/** What a window is chosen for. */
export interface Shown {
  readonly worked: Worked;
  readonly storeyId: string;
  /** Of the plan's box, px; a usual one until it was measured. */
  readonly size: Size;
}

type HouseExtent = ReturnType<typeof screenExtent>;

/** A window that stays as it is for as long as its box is as wide and no lower, although what is drawn may grow or shrink. */
interface Still {
  readonly key: string;
  readonly window: PlanWindow;
  readonly size: Size;
}

/** What of each storey is in sight: the whole of it, until somebody came nearer; then as it was left. */
export class PlanSight {
  readonly #windows = new Map<string, PlanWindow>();
  /** A house that is seen whole must not shift under the hand, nor when a point was let go or placed. */
  #still: Still | null = null;
  /** A house that is seen whole is asked for its extent at every movement: it is measured once. */
  #extent: { readonly of: Worked; readonly storeyId: string; readonly extent: HouseExtent } | null = null;
  #isHeld = false;
  readonly #shown: () => Shown;
  readonly #changed: () => void;
  readonly #glide = new Glide((window) => this.#set(window));

  constructor(shown: () => Shown, changed: () => void) {
    this.#shown = shown;
    this.#changed = changed;
  }

  /** Storeys of two jobs may have the same id. */
  get #key(): string {
    const { worked, storeyId } = this.#shown();
    return `${worked.job.id}/${storeyId}`;
  }

  get window(): PlanWindow {
    const { worked, storeyId, size } = this.#shown();
    const left = this.#windows.get(this.#key) ?? this.#stillWindow(size);
    if (left !== null) return left;
    return wholeWindow(this.#extentOf(worked, storeyId), size, freeParts(size));
  }

  #extentOf(worked: Worked, storeyId: string): HouseExtent {
    if (this.#extent?.of !== worked || this.#extent.storeyId !== storeyId)
      this.#extent = { of: worked, storeyId, extent: screenExtent(worked, storeyId) };
    return this.#extent.extent;
  }

  /** A box that grew at its foot shows what stays where it was: under the finger. One that shrank would cut it off. */
  #stillWindow({ width, height }: Size): PlanWindow | null {
    if (this.#still?.key !== this.#key || this.#still.size.width !== width) return null;
    const { window, size } = this.#still;
    if (height < size.height) return null;
    return panned(window, 0, (size.height - height) / 2);
  }

  /** The place of the house at so many px from the left and the top of the box. */
  planAt(xPx: number, yPx: number): PlanPoint {
    const { size } = this.#shown();
    const { middle, scale } = this.window;
    const mmPerPx = scale / PX_PER_UNIT;
    return planPoint(
      middle[0] + (xPx - size.width / 2) * mmPerPx,
      middle[1] - (yPx - size.height / 2) * mmPerPx,
    );
  }

  /** What of a scene in this frame is in sight. */
  seen(frame: SheetFrame): Extent {
    const { size } = this.#shown();
    const [width, height] = [size.width / PX_PER_UNIT, size.height / PX_PER_UNIT];
    const [x, y] = toSheet(frame, this.window.middle);
    return { x: x - width / 2, y: y - height / 2, width, height };
  }

  whole(): void {
    this.stop();
    this.#windows.delete(this.#key);
    this.#still = null;
    this.#changed();
  }

  pan(rightPx: number, downPx: number): void {
    this.stop();
    this.#set(panned(this.window, rightPx, downPx));
  }

  /** Comes nearer (more than 1) or goes away, about a place or about the middle. */
  zoom(factor: number, about: PlanPoint = this.window.middle): void {
    this.stop();
    this.#set(zoomed(this.window, factor, about));
  }

  /** A point is about to move: nothing is brought into sight until it is let go. */
  hold(): void {
    this.stay();
    this.#isHeld = true;
  }

  letGo(): void {
    this.#isHeld = false;
  }

  /** What is in sight stays as it is, although a point comes to it. */
  stay(): void {
    this.stop();
    this.#still = { key: this.#key, window: this.window, size: this.#shown().size };
  }

  /** Brings places into sight that are out of it. */
  bring(places: readonly PlanPoint[]): void {
    const { window } = this;
    const target = withInSight(window, places, this.#shown().size);
    if (target !== window && !this.#isHeld) this.#glide.to(window, target);
  }

  stop(): void {
    this.#glide.stop();
  }

  #set(window: PlanWindow): void {
    this.#windows.set(this.#key, window);
    this.#changed();
  }
}
