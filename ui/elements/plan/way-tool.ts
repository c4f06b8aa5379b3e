import { html, svg, type TemplateResult } from 'lit';
import { drawnWayShapes } from '#drawing/plan/drawn-way.ts';
import { type PlanPoint, planPoint, planPointOf } from '#engine/plan/plane.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import { levelWords } from '../../way-drawing/levels.ts';
import {
  type DrawnSoFar,
  type KeyedPlace,
  keyedCorner,
  type MeantCorner,
  meantCorner,
} from '../../way-drawing/meant-corner.ts';
import type { DrawAsk, DrawnWay } from '../../way-drawing/way-draft.ts';
import { isPress } from './plan-keys.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { shapeTemplate } from './shape-template.ts';

/** How far off a wall, a line or an end is still meant, px. */
const REACH_PX = 12;

/** Whom drawing a way tells. */
interface WayTells {
  readonly ask: (ask: DrawAsk) => void;
  /** What a screen reader is told of the last movement. */
  readonly moved: (words: string) => void;
}

const keysThatAsk: Readonly<Record<string, DrawAsk>> = {
  PageUp: { do: 'move', by: 'up' },
  PageDown: { do: 'move', by: 'down' },
  Backspace: { do: 'take-back' },
};

/** What is drawn of a way at this moment, below the hand. */
export function wayDrawing(frame: SheetFrame, drawn: DrawnWay, next: MeantCorner | null): PlaceDrawing {
  const rest = drawn.segments.filter(({ certainty }) => certainty !== 'pinned');
  const shapes = drawnWayShapes(frame, {
    corners: drawn.corners,
    end: drawn.to,
    rest: rest.flatMap(({ from, to }) => [from.at, to.at]),
    next: next && {
      at: next.at,
      places: next.waypoints.map(({ at }) => planPointOf(at)),
      possible: next.whyNot === null,
    },
  });
  return {
    template: svg`<g class="drawn-way" aria-hidden="true">${shapes.map(shapeTemplate)}</g>`,
    written: [],
  };
}

/** Draws a way: a tap puts a corner down, keys bring the next one to its place first, up and down at the last corner. */
export class WayTool implements PlanTool {
  #next: KeyedPlace | null = null;
  /** The drawing that the next corner was brought to its place for. */
  #of: DrawnWay | null = null;
  readonly #place: () => ToolPlace;
  readonly #drawn: () => DrawnWay;
  readonly #tells: WayTells;

  constructor(place: () => ToolPlace, drawn: () => DrawnWay, tells: WayTells) {
    this.#place = place;
    this.#drawn = drawn;
    this.#tells = tells;
  }

  get #so(): DrawnSoFar {
    const { worked, storeyId } = this.#place();
    const { here, to } = this.#drawn();
    return { plan: worked.plan, here, end: to, storeyId };
  }

  /** The place under the hand; where the last corner is once that was put down. */
  get #keyed(): KeyedPlace {
    const drawn = this.#drawn();
    if (this.#next === null || this.#of !== drawn)
      return { at: drawn.here.at, way: this.#next?.way ?? [1, 0] };
    return this.#next;
  }

  get #meant(): MeantCorner | null {
    const { at } = this.#keyed;
    return this.#of === this.#drawn() ? meantCorner(this.#so, at, this.#reachMm) : null;
  }

  get #reachMm(): number {
    return REACH_PX * this.#place().mmPerPx;
  }

  get name(): string {
    return 'draw the way: arrows, [ ] and End bring the next corner to its place, Enter puts it down, Page Up and Page Down go up and down, Backspace takes the last back';
  }

  get telling(): string | null {
    const meant = this.#meant;
    return meant === null ? null : (meant.whyNot ?? meant.words);
  }

  get hint(): TemplateResult {
    const words = levelWords(this.#place().worked.plan, this.#drawn().here);
    // There is room for one line: where the next corner would be comes before where the last one is.
    const where = this.telling === null ? `${words.charAt(0).toUpperCase()}${words.slice(1)}. ` : '';
    return html`${where}<span class="by-key">Escape stops.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    return wayDrawing(frame, this.#drawn(), this.#meant);
  }

  hovered(at: PlanPoint): void {
    this.#bring({ at, way: this.#keyed.way });
    this.#tells.moved('');
  }

  tapped(at: PlanPoint): void {
    this.#bring({ at, way: this.#keyed.way });
    this.#take(meantCorner(this.#so, at, this.#reachMm));
  }

  keyed(key: string, isFine: boolean): boolean {
    const ask = keysThatAsk[key];
    if (ask !== undefined) this.#tells.ask(ask);
    else if (isPress(key)) this.#take(meantCorner(this.#so, this.#keyed.at, 1));
    else return this.#movedBy(key, isFine);
    return true;
  }

  giveUp(): void {
    this.#tells.ask({ do: 'draw', on: false });
  }

  #bring(place: KeyedPlace): void {
    this.#next = place;
    this.#of = this.#drawn();
  }

  #movedBy(key: string, isFine: boolean): boolean {
    const moved = keyedCorner(this.#so, this.#keyed, key, isFine);
    if (moved === null) return false;
    const meant = meantCorner(this.#so, moved.at, 1);
    this.#bring({ ...moved, at: planPoint(moved.at[0], moved.at[1]) });
    this.#tells.moved(meant.whyNot ?? meant.words);
    return true;
  }

  #take(meant: MeantCorner): void {
    if (meant.whyNot === null) this.#tells.ask({ do: 'corner', waypoints: meant.waypoints });
    else this.#tells.moved(`No corner there: ${meant.whyNot}`);
  }
}
