import { html, nothing, type TemplateResult } from 'lit';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Storey } from '#model/building.ts';
import {
  type HousePart,
  keyOfPart,
  meantPart,
  partOfKey,
  partsOf,
  partWords,
} from '../../house/house-parts.ts';
import {
  cornerMoved,
  isNoChange,
  partAfter,
  type Reshape,
  type Reshaped,
  reshapedCopy,
} from '../../house/reshape.ts';
import { snappedCorner, snappedMove } from '../../house/snap.ts';
import { dot, leftOf, minus, plus, type Vector } from '../../house/vector.ts';
import { wallDepths } from '../../house/wall-depths.ts';
import { directionOf, type Stretch } from '../../house/wall-line.ts';
import type { PlanAsks } from '../../plan-asks.ts';
import type { Grip } from './plan-gestures.ts';
import type { PlaceDrawing, PlanTool, ToolGrips, ToolPlace } from './plan-tool.ts';
import { reshapeDrawing } from './reshape-drawing.ts';

/** Whom moving walls and corners tells. */
export interface ReshapeTells {
  readonly picked: (key: string) => void;
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

const arrows: Readonly<Record<string, Vector>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Moves walls square to themselves, and corners anywhere: by hand, with what they line up with holding them, or by keys. */
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
    return 'choose a wall or a corner with [ and ], move it with the arrows by 10 mm, with Shift by 100 mm';
  }

  get telling(): string | null {
    const held = this.#held;
    if (held === null) return null;
    return held.tried.outcome.ok ? this.#lengthWords(held) : held.tried.outcome.why;
  }

  get hint(): TemplateResult {
    const words =
      this.#asked().part === null ? 'Tap a wall or a corner, then drag it.' : 'Drag it, or tap another.';
    return html`${words} <span class="by-key">Escape gives up.</span>`;
  }

  readonly grips: ToolGrips = {
    at: ([x, y]) => {
      const part = this.#meant([x, y]);
      return part === null ? null : keyOfPart(part);
    },
    // What is in hand goes with the finger at once; of the rest a swipe may pull the house along.
    gripOf: (key): Grip => (key === this.#asked().part ? 'at-once' : 'by-hold'),
    dragged: (key, by, phase) => this.#dragged(key, by, phase),
    letGo: () => {
      if (this.#held?.byKeys) this.#rest();
    },
    isHeld: () => this.#shown !== null,
  };

  drawing(frame: SheetFrame): PlaceDrawing {
    const shown = this.#shown;
    const storey = shown?.tried.storey ?? this.#storey;
    if (storey === undefined) return { template: nothing, written: [] };
    return reshapeDrawing(frame, {
      storey,
      plan: shown?.tried.plan ?? this.#of().worked.plan,
      isMoved: shown !== null,
      isRefused: shown !== null && !shown.tried.outcome.ok,
      chosen: shown === null ? this.#chosen : partAfter(shown.asked),
      over: shown === null ? this.#over : null,
      guides: shown?.guides ?? [],
    });
  }

  hovered([x, y]: PlanPoint): void {
    this.#over = this.#meant([x, y]);
    this.#tells.moved('');
  }

  tapped(_: PlanPoint, key: string | null): void {
    if (key !== null) this.#tells.picked(key);
  }

  reachedByKeys(): void {
    if (this.#chosen === null) this.#pickNext(1);
  }

  keyed(key: string, isShift: boolean): boolean {
    if (key === '[' || key === 'PageUp') return this.#pickNext(-1);
    if (key === ']' || key === 'PageDown') return this.#pickNext(1);
    const way = arrows[key];
    const part = this.#held?.byKeys ? this.#held.part : this.#chosen;
    if (way === undefined || part === null) return false;
    const step = isShift ? LONG_STEP_MM : STEP_MM;
    const before: Vector = this.#held?.byKeys ? this.#held.by : [0, 0];
    this.#hold(part, plus(before, [way[0] * step, way[1] * step]), true);
    this.#tells.moved(this.telling ?? this.#cornerWords());
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

  #meant(at: Vector): HousePart | null {
    const storey = this.#storey;
    return storey === undefined ? null : meantPart(storey, at, REACH_PX * this.#of().mmPerPx);
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
      this.#hold(part, [0, 0], false);
      return;
    }
    // It was given up by a key while the hand still pulled.
    if (this.#held === null) return;
    if (phase === 'move' || by[0] !== 0 || by[1] !== 0) this.#hold(part, by, false);
    if (phase === 'end') this.#rest();
  }

  #hold(part: HousePart, by: Vector, byKeys: boolean): void {
    const { worked, storeyId } = this.#of();
    const { asked, guides } = this.#askedBy(part, by, byKeys);
    const before = this.#held;
    // What holds a wall holds it for some movements of the hand: the house is tried once for all of them.
    const tried =
      before !== null &&
      before.of === worked &&
      before.tried.storey.id === storeyId &&
      isSameData(before.asked, asked)
        ? before.tried
        : reshapedCopy(worked.job, storeyId, asked);
    if (tried !== null) this.#held = { part, by, byKeys, asked, guides, tried, of: worked };
  }

  /** What a pull means: keys go where they say, a hand is held by what is near. */
  #askedBy(
    part: HousePart,
    by: Vector,
    byKeys: boolean,
  ): { readonly asked: Reshape; readonly guides: readonly Stretch[] } {
    const { worked, mmPerPx } = this.#of();
    const [storey, reachMm] = [this.#storey, SNAP_PX * mmPerPx];
    const isFree = byKeys || storey === undefined || (by[0] === 0 && by[1] === 0);
    if (part.part === 'corner') {
      const to = plus(part.at, by);
      if (isFree) return { asked: cornerMoved(part.at, by), guides: [] };
      const snapped = snappedCorner(storey, { at: part.at, to }, reachMm);
      return { asked: { part: 'corner', at: part.at, to: snapped.to }, guides: snapped.guides };
    }
    const wall = worked.plan.wallById.get(part.wallId)?.wall;
    const byMm = wall === undefined ? 0 : dot(by, leftOf(directionOf(wall)));
    if (isFree) return { asked: { ...part, byMm }, guides: [] };
    const snapped = snappedMove(storey, { wallId: part.wallId, byMm }, reachMm, worked.plan.wallById);
    return {
      asked: { ...part, byMm: snapped.byMm },
      guides: snapped.guide === null ? [] : [snapped.guide],
    };
  }

  /** What was held has come to rest: it is told, unless nothing moved. */
  #rest(): void {
    const held = this.#held;
    this.#held = null;
    if (held === null || isNoChange(held.asked)) return;
    if (held.tried.outcome.ok) this.#resting = { held, from: this.#of().worked };
    this.#tells.reshaped(held.asked, held.byKeys);
  }

  /** Where a held corner has got to, for who does not see it. */
  #cornerWords(): string {
    const asked = this.#held?.asked;
    if (asked?.part !== 'corner') return '';
    const [x, y] = minus(asked.to, asked.at).map(Math.round);
    return `${x} mm to the right, ${y} mm up`;
  }

  /** How deep the rooms beside a held wall are; null for a corner. */
  #lengthWords({ asked, tried: { storey, plan } }: Held): string | null {
    // Of a corner the lengths on the plan tell all.
    if (asked.part === 'corner') return null;
    return wallDepths(storey, asked.wallId, plan.wallById)
      .map(({ room, lengthMm }) => `${room} ${Math.round(lengthMm)} mm`)
      .join(', ');
  }
}
