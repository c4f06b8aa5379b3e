import { html, nothing, type TemplateResult } from 'lit';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import type { PlacedThing } from '../../plan-asks.ts';
import { isPress } from './plan-keys.ts';
import { placeDrawing } from './plan-parts.ts';
import type { PlaceDrawing, PlanTool, ToolPlace } from './plan-tool.ts';
import { freePlace, movedByKey, placeAt, placeInWords, placeName } from './point-movement.ts';

/** What is placed, what taps do, and whom picking a place tells. */
export interface Placing {
  readonly asked: () => PlacedThing;
  /** What can be done, at the foot of the plan. */
  readonly hint: () => string;
  readonly took: (place: Place) => void;
  /** A thing was tapped that is there; null: a tap on one means the place under it. */
  readonly picked: ((subjectId: string) => void) | null;
  readonly moved: (words: string) => void;
  readonly gaveUp: () => void;
}

/** Picks places for new things: a tap takes one there and then, keys bring it along the walls first. */
export class PlacingTool implements PlanTool {
  /** Where a mouse or the keys have got to; null for neither: a finger has nothing under it before it taps. */
  #spot: Place | null = null;
  readonly #of: () => ToolPlace;
  /** Where keys begin. */
  readonly #middle: PlanPoint;
  readonly #placing: Placing;

  constructor(of: () => ToolPlace, middle: PlanPoint, placing: Placing) {
    this.#of = of;
    this.#middle = middle;
    this.#placing = placing;
  }

  get name(): string {
    return `choose a place with the arrows${this.#of().hasWalls ? ', [ and ]' : ''}, then Enter`;
  }

  get telling(): string | null {
    const place = this.#place;
    if (place === null) return null;
    return `${placeName(this.#of().worked, place, null)}, ${place.heightMm} mm above floor`;
  }

  /** How a place is chosen and how it is given up: a phone has no Escape. */
  get hint(): TemplateResult {
    return html`${this.#placing.hint()} <span class="by-key">Escape gives up.</span>`;
  }

  drawing(frame: SheetFrame): PlaceDrawing {
    const place = this.#place;
    if (place === null) return { template: nothing, written: [] };
    const { worked, figuresMm } = this.#of();
    const { symbol } = this.#placing.asked();
    return placeDrawing(frame, worked, place, { label: null, symbol, state: 'new', figuresMm });
  }

  hovered(at: PlanPoint): void {
    this.#spot = this.#placeAt(at);
    this.#placing.moved('');
  }

  tapped(at: PlanPoint, subject: string | null): void {
    const { took, picked } = this.#placing;
    // What stands there now is drawn itself.
    this.#spot = null;
    if (subject !== null && picked !== null) picked(subject);
    else took(this.#placeAt(at));
  }

  reachedByKeys(): void {
    this.#spot ??= this.#placeAt(this.#middle);
  }

  keyed(key: string, isFine: boolean): boolean {
    this.reachedByKeys();
    const place = this.#place;
    if (place === null) return false;
    const { worked } = this.#of();
    if (isPress(key)) {
      const there = worked.job.points.find((point) => isSameData(point.place, place));
      if (there === undefined) this.#placing.took(place);
      else this.#placing.moved(`${there.label} is there already: go on from it first`);
      return true;
    }
    const moved = movedByKey(worked.plan, place, key, isFine);
    if (moved === null) return false;
    this.#spot = moved;
    this.#placing.moved(`${placeName(worked, moved, null)}, ${placeInWords(worked.plan, moved)}`);
    return true;
  }

  giveUp(): void {
    this.#placing.gaveUp();
  }

  /** At the height that is asked for just now. */
  get #place(): Place | null {
    return this.#spot && { ...this.#spot, heightMm: this.#placing.asked().heightMm };
  }

  #placeAt(at: PlanPoint): Place {
    const { worked, storeyId } = this.#of();
    const { symbol, heightMm } = this.#placing.asked();
    // A joint lies below a floor or above a ceiling, on no wall.
    if (symbol === 'joint') return freePlace(storeyId, at, heightMm);
    return placeAt(worked.plan, storeyId, at, heightMm);
  }
}
