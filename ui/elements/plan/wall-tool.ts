import { html, nothing, svg, type TemplateResult } from 'lit';
import { line } from '#drawing/scene.ts';
import { type PlanPoint, planPointOf } from '#engine/plan/plane.ts';
import { type SheetFrame, toSheet } from '#engine/plan/sheet-frame.ts';
import { wallWords } from '#engine/plan/wall-words.ts';
import type { Place } from '#model/installation.ts';
import { isPress } from './plan-keys.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { movedByKey, placeAt } from './point-movement.ts';
import { shapeTemplate } from './shape-template.ts';

/** Whom picking a wall tells. */
interface WallTells {
  readonly took: (place: Place) => void;
  /** What a screen reader is told of the last movement. */
  readonly moved: (words: string) => void;
  readonly gaveUp: () => void;
}

/** Any height at which no window is in the way of a wall. */
const HEIGHT_MM = 100;

/** Picks a wall: a tap takes the one it is nearest to, keys go from wall to wall first. */
export class WallTool implements PlanTool {
  /** Where a mouse or the keys have got to; null for neither. */
  #spot: Place | null = null;
  readonly #of: () => ToolPlace;
  readonly #middle: PlanPoint;
  readonly #tells: WallTells;

  constructor(of: () => ToolPlace, middle: PlanPoint, tells: WallTells) {
    this.#of = of;
    this.#middle = middle;
    this.#tells = tells;
  }

  get name(): string {
    return 'choose a wall with [ and ], its end with the arrows, then Enter';
  }

  get telling(): string | null {
    const { plan } = this.#of().worked;
    return this.#spot !== null && 'wall' in this.#spot ? wallWords(plan, this.#spot.wall) : null;
  }

  get hint(): TemplateResult {
    return html`Tap the wall, near the end to line up with. <span class="by-key">Escape gives up.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    const spot = this.#spot;
    const wall =
      spot !== null && 'wall' in spot ? this.#of().worked.plan.wallById.get(spot.wall)?.wall : undefined;
    if (wall === undefined) return { template: nothing, written: [] };
    const ends = [wall.from, wall.to].map((at) => toSheet(frame, planPointOf(at)));
    return {
      template: svg`<g class="drawn-way" aria-hidden="true">${shapeTemplate(line('new-next', ends))}</g>`,
      written: [],
    };
  }

  hovered(at: PlanPoint): void {
    this.#spot = this.#at(at);
    this.#tells.moved('');
  }

  tapped(at: PlanPoint): void {
    this.#spot = null;
    this.#tells.took(this.#at(at));
  }

  reachedByKeys(): void {
    this.#spot ??= this.#at(this.#middle);
  }

  keyed(key: string, isFine: boolean): boolean {
    this.reachedByKeys();
    const spot = this.#spot ?? this.#at(this.#middle);
    if (isPress(key)) {
      this.#tells.took(spot);
      return true;
    }
    const { plan } = this.#of().worked;
    const moved = movedByKey(plan, spot, key, isFine);
    if (moved === null) return false;
    this.#spot = moved;
    this.#tells.moved('wall' in moved ? wallWords(plan, moved.wall) : '');
    return true;
  }

  giveUp(): void {
    this.#tells.gaveUp();
  }

  #at(at: PlanPoint): Place {
    const { worked, storeyId } = this.#of();
    return placeAt(worked.plan, storeyId, at, HEIGHT_MM);
  }
}
