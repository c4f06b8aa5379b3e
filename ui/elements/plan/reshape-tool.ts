import { html, nothing, type TemplateResult } from 'lit';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Storey } from '#model/building.ts';
import {
  type HousePart,
  isNearWall,
  keyOfPart,
  meantPart,
  partOfKey,
  partsOf,
  partWords,
} from '../../house/house-parts.ts';
import { type MovedParts, movedParts, nothingMoved } from '../../house/moved-parts.ts';
import { type Pulled, pulled, steppedByKey } from '../../house/pulled.ts';
import { isNoChange, partAfter, type Reshape, type Reshaped, reshapedCopy } from '../../house/reshape.ts';
import { tappedMark } from '../../house/stretch-marks.ts';
import type { Vector } from '../../house/vector.ts';
import type { Stretch } from '../../house/wall-line.ts';
import type { PlanAsks } from '../../plan-asks.ts';
import type { Grip } from './plan-gestures.ts';
import type { PlaceDrawing, PlanTool, ToolGrips, ToolPlace } from './plan-tool.ts';
import { reshapeDrawing } from './reshape-drawing.ts';
import { cornerWords, heldWords } from './reshape-words.ts';

/** Whom moving walls, corners and fixtures tells. */
export interface ReshapeTells {
  readonly picked: (key: string) => void;
  /** A place of the wall in hand was marked, so far along it. */
  readonly marked: (alongMm: number) => void;
  readonly reshaped: (asked: Reshape, byKeys: boolean) => void;
  /** Something moved under the hand; the words are for a screen reader. */
  readonly moved: (words: string) => void;
  readonly gaveUp: () => void;
}

/** What is under the hand or the keys: where it has got to, and the house as it would be. */
interface Held {
  readonly part: HousePart;
  readonly by: Vector;
  readonly byKeys: boolean;
  readonly asked: Reshape;
  readonly tried: Reshaped;
  /** What of it is elsewhere than before. */
  readonly moved: MovedParts;
  readonly guides: readonly Stretch[];
  /** The house that it was tried in. */
  readonly of: unknown;
}

/** How far off a wall or a corner is still meant, px: half a finger. */
const REACH_PX = 22;
/** How far off a line still holds what is dragged, px. */
const SNAP_PX = 9;
const STEP_MM = 10;
const LONG_STEP_MM = 100;

/** Moves walls and stretches of them square to themselves, corners anywhere, fixtures along walls: by hand, with what they line up with holding them, or by keys. */
export class ReshapeTool implements PlanTool {
  readonly #of: () => ToolPlace;
  readonly #asked: () => PlanAsks['reshape'];
  readonly #tells: ReshapeTells;
  #held: Held | null = null;
  /** What was let go of, until the job is seen with it. */
  #resting: { readonly held: Held; readonly from: unknown } | null = null;
  #over: HousePart | null = null;

  constructor(of: () => ToolPlace, asked: () => PlanAsks['reshape'], tells: ReshapeTells) {
    this.#of = of;
    this.#asked = asked;
    this.#tells = tells;
  }

  get name(): string {
    return 'choose a wall, a corner or a fixture with [ and ], move it with the arrows by 10 mm, with Shift by 100 mm, a fixture into a corner with Home and End';
  }

  get telling(): string | null {
    const held = this.#held;
    if (held === null) return null;
    return held.tried.outcome.ok ? heldWords(held.asked, held.tried) : held.tried.outcome.why;
  }

  get hint(): TemplateResult {
    return html`${this.#hintWords} <span class="by-key">Escape gives up.</span>`;
  }

  readonly grips: ToolGrips = {
    at: ([x, y]) => {
      const part = this.#meant([x, y]);
      return part === null ? null : keyOfPart(part);
    },
    // What is in hand goes with the finger at once; of the rest a swipe may pull the house along.
    gripOf: (key): Grip => {
      const part = partOfKey(key);
      if (part?.part === 'stretch' && part.marks.length < 2) return 'none';
      return key === this.#asked().part ? 'at-once' : 'by-hold';
    },
    dragged: (key, by, phase) => this.#dragged(key, by, phase),
    letGo: () => {
      if (this.#held?.byKeys) this.#rest();
    },
    aside: () => this.#shown?.moved ?? null,
  };

  drawing(frame: SheetFrame): PlaceDrawing {
    const shown = this.#shown;
    const storey = shown?.tried.storey ?? this.#storey;
    if (storey === undefined) return { template: nothing, written: [] };
    return reshapeDrawing(frame, {
      storey,
      plan: shown?.tried.plan ?? this.#of().worked.plan,
      moved: shown?.moved ?? nothingMoved,
      boards: shown?.tried.boards ?? [],
      isRefused: shown !== null && !shown.tried.outcome.ok,
      chosen: shown === null ? this.#chosen : this.#partOf(shown),
      over: shown === null ? this.#over : null,
      guides: shown?.guides ?? [],
    });
  }

  hovered([x, y]: PlanPoint): void {
    const over = this.#meant([x, y]);
    // The wall that is being marked is drawn as in hand already.
    this.#over = over?.part === 'stretch' ? null : over;
    this.#tells.moved('');
  }

  tapped([x, y]: PlanPoint, key: string | null): void {
    const [part, storey] = [key === null ? null : partOfKey(key), this.#storey];
    if (part?.part === 'stretch' && storey !== undefined) {
      const reachMm = SNAP_PX * this.#of().mmPerPx;
      this.#tells.marked(tappedMark(storey, part, [x, y], reachMm));
    } else if (key !== null) this.#tells.picked(key);
  }

  reachedByKeys(): void {
    if (this.#chosen === null) this.#pickNext(1);
  }

  keyed(key: string, isShift: boolean): boolean {
    if (key === '[' || key === 'PageUp') return this.#pickNext(-1);
    if (key === ']' || key === 'PageDown') return this.#pickNext(1);
    const [storey, held] = [this.#storey, this.#held?.byKeys ? this.#held : null];
    const part = held?.part ?? this.#chosen;
    if (storey === undefined || part === null) return false;
    const before = { part, by: held?.by ?? ([0, 0] as const), asked: held?.asked ?? null };
    const stepMm = isShift ? LONG_STEP_MM : STEP_MM;
    const step = steppedByKey(storey, before, [key, stepMm], this.#of().worked.plan.wallById);
    if (step === null) return false;
    this.#hold(part, step, { by: step.by, byKeys: true });
    const words = this.#held === null ? '' : cornerWords(this.#held.asked);
    this.#tells.moved([words, this.telling ?? ''].filter((one) => one !== '').join(': '));
    return true;
  }

  giveUp(): void {
    if (this.#held === null) this.#tells.gaveUp();
    this.#held = null;
    this.#tells.moved('');
  }

  get #storey(): Storey | undefined {
    const { worked, storeyId } = this.#of();
    return worked.plan.storeyById.get(storeyId)?.storey;
  }

  get #chosen(): HousePart | null {
    const { part } = this.#asked();
    return part === null ? null : partOfKey(part);
  }

  /** What is drawn in place of the house as it is: what is held, or was let go of and is not seen in the job yet. */
  get #shown(): Held | null {
    if (this.#held !== null) return this.#held;
    return this.#resting?.from === this.#of().worked ? this.#resting.held : null;
  }

  /** By which a part is held once it has moved. */
  #partOf({ asked, tried }: Held): HousePart {
    const storey = this.#storey;
    return storey === undefined
      ? (this.#chosen ?? partAfter(asked, tried.storey, tried.storey))
      : partAfter(asked, storey, tried.storey);
  }

  get #hintWords(): string {
    const part = this.#chosen;
    if (part === null) return 'Tap a wall, a corner or what is fixed, then drag it.';
    if (part.part !== 'stretch') return 'Drag it, or tap another.';
    return part.marks.length < 2 ? 'Tap the wall where the part begins and ends.' : 'Drag the part.';
  }

  /** While a stretch of a wall is marked, that wall is meant before all else. */
  #meant(at: Vector): HousePart | null {
    const [storey, chosen] = [this.#storey, this.#chosen];
    if (storey === undefined) return null;
    const reachMm = REACH_PX * this.#of().mmPerPx;
    if (chosen?.part === 'stretch' && isNearWall(storey, chosen.wallId, at, reachMm)) return chosen;
    return meantPart(storey, at, reachMm);
  }

  #pickNext(by: 1 | -1): boolean {
    const storey = this.#storey;
    if (storey === undefined) return false;
    this.#rest();
    const parts = partsOf(storey);
    const now = this.#asked().part;
    const at = parts.findIndex((part) => keyOfPart(part) === now);
    const next = parts[(at + by + parts.length) % parts.length];
    if (next === undefined) return false;
    this.#tells.picked(keyOfPart(next));
    this.#tells.moved(partWords(storey, next));
    return true;
  }

  #dragged(key: string, by: Vector, phase: 'begin' | 'move' | 'end'): void {
    const part = partOfKey(key);
    if (part === null) return;
    if (phase === 'begin') {
      this.#rest();
      this.#over = null;
      this.#tells.picked(key);
      this.#pull(part, [0, 0]);
      return;
    }
    // It was given up by a key while the hand still pulled.
    if (this.#held === null) return;
    if (phase === 'move' || by[0] !== 0 || by[1] !== 0) this.#pull(part, by);
    if (phase === 'end') this.#rest();
  }

  /** A hand pulls a part: what is near holds it. */
  #pull(part: HousePart, by: Vector): void {
    const [storey, { worked, mmPerPx }] = [this.#storey, this.#of()];
    if (storey === undefined) return;
    const made = pulled(storey, { part, by, reachMm: SNAP_PX * mmPerPx }, worked.plan.wallById);
    if (made !== null) this.#hold(part, made, { by, byKeys: false });
  }

  #hold(part: HousePart, { asked, guides }: Pulled, how: Pick<Held, 'by' | 'byKeys'>): void {
    const { worked, storeyId } = this.#of();
    const before = this.#held;
    // What holds a wall holds it for some movements of the hand: the house is tried once for all of them.
    const isSame =
      before !== null &&
      before.of === worked &&
      before.tried.storey.id === storeyId &&
      isSameData(before.asked, asked);
    if (isSame) {
      this.#held = { ...before, part, ...how, asked, guides };
      return;
    }
    const [storey, tried] = [this.#storey, reshapedCopy(worked.job, storeyId, asked)];
    if (storey === undefined || tried === null) return;
    const moved = movedParts({ storey, plan: worked.plan, boards: worked.job.boards }, tried);
    this.#held = { part, ...how, asked, guides, tried, moved, of: worked };
  }

  /** What was held has come to rest: it is told, unless nothing moved. */
  #rest(): void {
    const held = this.#held;
    this.#held = null;
    if (held === null || isNoChange(held.asked)) return;
    if (held.tried.outcome.ok) this.#resting = { held, from: this.#of().worked };
    this.#tells.reshaped(held.asked, held.byKeys);
  }
}
