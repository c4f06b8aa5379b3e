import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { WallSpot } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { send } from '../../job-events.ts';
import '../fields/choice-field.ts';
import type { Choice } from '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';
import { type Hand, middleOfFace, spotFromCorner } from './spot-on-face.ts';
import type { UsualHeight } from './usual-heights.ts';
import { faceValue, type WallChoice, wallChoices } from './wall-choices.ts';

type OnWall = Extract<Place, { wall: string }>;
type Free = Exclude<Place, OnWall>;

/** What the fields send when a place was changed; null takes the place away. */
export interface PlaceChange {
  readonly place: Place | null;
}

const inside = (event: CustomEvent<FieldChange<unknown>>): void => event.stopPropagation();

/**
 * Where something sits: the wall by its room, the distances to the corners on both hands, and the height; all of it
 * by the keyboard alone, or on the plan with one button.
 *
 * @fires place-change - detail: { place }
 * @fires place-wanted - the place is to be tapped on the plan
 * @fires storey-shown - the storey of a wall chosen from the list
 */
export class PlaceFields extends LitElement {
  static override properties: PropertyDeclarations = {
    job: { attribute: false },
    place: { attribute: false },
    name: { attribute: false },
    heights: { attribute: false },
    newHeightMm: { attribute: false },
    waiting: { attribute: false },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
      .fields {
        padding: 0;
      }
    `,
  ];
  declare job: Job;
  declare place: Place | undefined;
  /** What is placed, for the button to the plan. */
  declare name: string;
  declare heights: readonly UsualHeight[];
  /** The height of what had no place before. */
  declare newHeightMm: number;
  /** True while the plan waits for this place. */
  declare waiting: boolean;

  constructor() {
    super();
    this.place = undefined;
    this.name = '';
    this.heights = [];
    this.newHeightMm = 450;
    this.waiting = false;
  }

  override render(): TemplateResult {
    const plan = buildPlan(this.job);
    const faces = wallChoices(plan);
    return html`<div class="fields">
      ${faces.length === 0 ? this.#noWalls() : this.#wallField(plan, faces)}
      ${this.place === undefined ? nothing : this.#details(plan, this.place)}
      <div class="buttons">
        <button class="small" aria-pressed=${this.waiting} @click=${() => this.#askPlan()}>
          ${this.waiting ? 'Now tap its place on the plan, or press here to stop' : html`Tap the place of ${this.name} on the plan`}
        </button>
      </div>
    </div>`;
  }

  #noWalls(): TemplateResult {
    if (this.place !== undefined)
      return html`<p class="hint">
        No walls are drawn yet: it is placed roughly, and the plan shows where. Tap the plan to move it.
      </p>`;
    return html`<p class="hint">
      No walls are drawn yet. Without a place its cable is priced at a typical length, from 2 to 15 m; tap the plan to
      say roughly where it is.
    </p>`;
  }

  #wallField(plan: Plan, faces: readonly WallChoice[]): TemplateResult {
    const { place } = this;
    const free: Choice[] =
      place !== undefined && !('wall' in place) ? [{ value: 'free', label: freeWords(plan, place) }] : [];
    return html`<choice-field
      label="Wall"
      .options=${[...free, ...faces]}
      .empty=${'Not placed yet'}
      .value=${place === undefined ? null : 'wall' in place ? faceValue(place.wall, place.side) : 'free'}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        inside(event);
        this.#wallChosen(plan, faces, event.detail.value);
      }}
    ></choice-field>`;
  }

  #wallChosen(plan: Plan, faces: readonly WallChoice[], value: string | null): void {
    const face = faces.find((each) => each.value === value);
    if (value === null) this.#send(null);
    if (face === undefined) return;
    this.#sendSpot(middleOfFace(plan, face.wallId, face.side), this.place?.heightMm ?? this.newHeightMm);
    // The list has the walls of every storey: the plan shows where the chosen one put it.
    const storeyId = plan.wallById.get(face.wallId)?.storeyId;
    if (storeyId !== undefined) send(this, 'storey-shown', { storeyId });
  }

  #details(plan: Plan, place: Place): TemplateResult {
    return html`${'wall' in place ? this.#corners(plan, place) : nothing}
      <number-field
        label="Height above the floor, to the middle"
        .unit=${'mm'}
        .min=${-20_000}
        .max=${20_000}
        .value=${place.heightMm}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
          inside(event);
          if (event.detail.value !== null) this.#send({ ...place, heightMm: event.detail.value });
        }}
      ></number-field>
      ${this.#usualHeights(place)}`;
  }

  #usualHeights(place: Place): TemplateResult | typeof nothing {
    if (this.heights.length === 0) return nothing;
    return html`<div class="buttons" role="group" aria-label="Usual heights">
      ${this.heights.map(
        ({ heightMm, words }) =>
          html`<button
            class="small"
            aria-pressed=${place.heightMm === heightMm}
            @click=${() => this.#send({ ...place, heightMm })}
          >
            ${heightMm} <span class="hint">${words}</span>
          </button>`,
      )}
    </div>`;
  }

  #corners(plan: Plan, place: OnWall): TemplateResult {
    const spot = { wallId: place.wall, side: place.side, alongMm: place.alongMm };
    const { leftMm, rightMm } = cornerDistances(plan, spot);
    if (leftMm === null && rightMm === null) return this.#alongField(place);
    return html`<div class="pair">
      ${this.#cornerField(plan, { spot, hand: 'left', distanceMm: leftMm, heightMm: place.heightMm })}
      ${this.#cornerField(plan, { spot, hand: 'right', distanceMm: rightMm, heightMm: place.heightMm })}
    </div>`;
  }

  #cornerField(
    plan: Plan,
    at: { spot: WallSpot; hand: Hand; distanceMm: number | null; heightMm: number },
  ): TemplateResult {
    const { spot, hand, distanceMm, heightMm } = at;
    return html`<number-field
      .label=${`From the ${hand} corner`}
      .unit=${'mm'}
      .min=${0}
      .max=${1_000_000}
      .disabled=${distanceMm === null}
      .help=${distanceMm === null ? 'No corner on this hand' : ''}
      .value=${distanceMm === null ? null : Math.round(distanceMm)}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        inside(event);
        const { value } = event.detail;
        const moved = value === null ? null : spotFromCorner(plan, spot, hand, value);
        if (moved !== null) this.#sendSpot(moved, heightMm);
      }}
    ></number-field>`;
  }

  #alongField(place: OnWall): TemplateResult {
    return html`<number-field
      label="Along the wall from its end"
      help="This face has no corner to measure from."
      .unit=${'mm'}
      .min=${0}
      .max=${1_000_000}
      .value=${Math.round(place.alongMm)}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        inside(event);
        if (event.detail.value !== null) this.#send({ ...place, alongMm: event.detail.value });
      }}
    ></number-field>`;
  }

  #askPlan(): void {
    this.dispatchEvent(new CustomEvent('place-wanted', { bubbles: true, composed: true }));
  }

  #sendSpot({ wallId, side, alongMm }: WallSpot, heightMm: number): void {
    this.#send({ wall: wallId, side, alongMm, heightMm });
  }

  #send(place: Place | null): void {
    const detail: PlaceChange = { place };
    this.dispatchEvent(new CustomEvent('place-change', { detail, bubbles: true, composed: true }));
  }
}

const freeWords = (plan: Plan, place: Free): string =>
  `${plan.storeyById.get(place.storey)?.storey.name ?? 'A storey'}, not on a wall`;
customElements.define('place-fields', PlaceFields);
declare global {
  interface HTMLElementTagNameMap {
    'place-fields': PlaceFields;
  }
  interface HTMLElementEventMap {
    'place-change': CustomEvent<PlaceChange>;
    'place-wanted': CustomEvent<null>;
  }
}
