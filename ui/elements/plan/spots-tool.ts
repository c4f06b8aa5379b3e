import { html, svg, type TemplateResult } from 'lit';
import { line } from '#drawing/scene.ts';
import { type PlanPoint, planPointOf } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { PlanAsks } from '../../plan-asks.ts';
import { metres } from '../../written.ts';
import { isPress } from './plan-keys.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { shapeTemplate } from './shape-template.ts';

/** Whom tapping spots tells. */
interface SpotsTells {
  readonly took: (at: PlanPoint) => void;
  readonly takeBack: () => void;
  /** What a screen reader is told of the last movement. */
  readonly moved: (words: string) => void;
  readonly gaveUp: () => void;
}

/** How far an arrow moves, mm. */
const STEP_MM = 100;
const FINE_MM = 10;
/** Half a cross, units of the scene. */
const ARM = 2.4;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Takes places anywhere on the plan, one after the other: of a picture that lies under it. */
export class SpotsTool implements PlanTool {
  /** Where a mouse or the keys have got to; null for neither. */
  #spot: PlanPoint | null = null;
  readonly #of: () => ToolPlace;
  readonly #asked: () => PlanAsks['spots'];
  readonly #middle: PlanPoint;
  readonly #tells: SpotsTells;

  constructor(of: () => ToolPlace, asked: () => PlanAsks['spots'], middle: PlanPoint, tells: SpotsTells) {
    this.#of = of;
    this.#asked = asked;
    this.#middle = middle;
    this.#tells = tells;
  }

  get name(): string {
    return `${this.#asked().hint} Arrows move the cross, with Shift a little; Enter takes the place, Backspace takes the last back`;
  }

  /** How far it is from the last place, as it is drawn so far. */
  get telling(): string | null {
    const last = this.#asked().spots.at(-1);
    if (this.#spot === null || last === undefined) return null;
    return metres(Math.hypot(this.#spot[0] - last[0], this.#spot[1] - last[1]));
  }

  get hint(): TemplateResult {
    return html`${this.#asked().hint} <span class="by-key">Escape gives up.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    const { spots, closes } = this.#asked();
    const at = spots.map((spot) => toSheet(frame, planPointOf([...spot])));
    const here = this.#spot === null ? null : toSheet(frame, this.#spot);
    const path = here === null || at.length === 0 ? at : [...at, here];
    const round = closes && path.length > 2 ? [...path, path[0] ?? sheetPoint(0, 0)] : path;
    const crosses = [...at, ...(here === null ? [] : [here])].flatMap(([x, y]) => [
      line('new-next', [sheetPoint(x - ARM, y), sheetPoint(x + ARM, y)]),
      line('new-next', [sheetPoint(x, y - ARM), sheetPoint(x, y + ARM)]),
    ]);
    const shapes = [...(round.length < 2 ? [] : [line('new-next', round)]), ...crosses];
    return {
      template: svg`<g class="drawn-way" aria-hidden="true">${shapes.map(shapeTemplate)}</g>`,
      written: [],
    };
  }

  hovered(at: PlanPoint): void {
    this.#spot = at;
    this.#tells.moved('');
  }

  tapped(at: PlanPoint): void {
    this.#spot = null;
    this.#tells.took(at);
  }

  reachedByKeys(): void {
    this.#spot ??= this.#middle;
  }

  keyed(key: string, isFine: boolean): boolean {
    if (key === 'Backspace') {
      this.#tells.takeBack();
      return true;
    }
    const spot = this.#spot ?? this.#middle;
    const arrow = arrows[key];
    if (isPress(key)) this.#tells.took(spot);
    else if (arrow === undefined) return false;
    else this.#move(spot, arrow, isFine ? FINE_MM : STEP_MM);
    return true;
  }

  #move([x, y]: PlanPoint, [right, up]: readonly [number, number], byMm: number): void {
    this.#spot = planPointOf([x + right * byMm, y + up * byMm]);
    const { plan } = this.#of().worked;
    const storey = plan.storeyById.get(this.#of().storeyId)?.storey.name ?? '';
    this.#tells.moved(
      `${this.telling ?? storey}, ${metres(this.#spot[0])} across, ${metres(this.#spot[1])} up`,
    );
  }

  giveUp(): void {
    this.#tells.gaveUp();
  }
}
