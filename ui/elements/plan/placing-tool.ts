import { html, type TemplateResult } from 'lit';
import type { PlanPoint } from '#engine/plan/plane.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import { isPress } from './plan-keys.ts';
import { placeDrawing } from './plan-parts.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { movedByKey, placeAt, placeInWords, placeName, USUAL_HEIGHT_MM } from './point-movement.ts';

/** Whom picking a place tells. */
interface PlacingTells {
  readonly took: (place: Place) => void;
  readonly moved: (words: string) => void;
  readonly gaveUp: () => void;
}

/** Picks a place for a new thing: a tap takes it there and then, keys bring it along the walls first. */
export class PlacingTool implements PlanTool {
  #ghost: Place;
  readonly #of: () => ToolPlace;
  readonly #tells: PlacingTells;

  constructor(of: () => ToolPlace, middle: PlanPoint, tells: PlacingTells) {
    this.#of = of;
    this.#tells = tells;
    this.#ghost = this.#placeAt(middle);
  }

  get name(): string {
    return `choose a place with the arrows${this.#of().hasWalls ? ', [ and ]' : ''}, then Enter`;
  }

  get telling(): string {
    return `${placeName(this.#of().worked, this.#ghost, null)}, ${this.#ghost.heightMm} mm above floor`;
  }

  /** How a place is chosen and how it is given up: a phone has no Escape. */
  get hint(): TemplateResult {
    return html`${this.#of().hasWalls ? 'Tap the wall where it is to go.' : 'Tap where it is to go.'}
      <span class="by-key">Escape gives up.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    return placeDrawing(frame, this.#of().worked, this.#ghost, null);
  }

  hovered(at: PlanPoint): void {
    this.#ghost = this.#placeAt(at);
    this.#tells.moved('');
  }

  tapped(at: PlanPoint): void {
    this.#tells.took(this.#placeAt(at));
  }

  keyed(key: string, isFine: boolean): boolean {
    if (isPress(key)) {
      this.#tells.took(this.#ghost);
      return true;
    }
    const { worked } = this.#of();
    const place = movedByKey(worked.plan, this.#ghost, key, isFine);
    if (place === null) return false;
    this.#ghost = place;
    this.#tells.moved(`${placeName(worked, place, null)}, ${placeInWords(worked.plan, place)}`);
    return true;
  }

  giveUp(): void {
    this.#tells.gaveUp();
  }

  #placeAt(at: PlanPoint): Place {
    const { worked, storeyId } = this.#of();
    return placeAt(worked.plan, storeyId, at, USUAL_HEIGHT_MM);
  }
}
