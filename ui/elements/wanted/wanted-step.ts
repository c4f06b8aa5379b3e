import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Place, Point, PointKind } from '#model/installation.ts';
import type { Terms } from '#model/job.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { askPlan, whenPlanGivenUp } from '../../controllers/plan-given-up.ts';
import { nextLabel } from '../../edits/next-label.ts';
import { addPoints, setPointFact } from '../../edits/points.ts';
import { setTakenAway } from '../../edits/replacements.ts';
import { setFinish } from '../../edits/terms.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import type { PlacedThing } from '../../plan-asks.ts';
import { counted, metres } from '../../written.ts';
import { edits } from '../as-found/fact-fields.ts';
import { formCss } from '../as-found/form-styles.ts';
import { finishWords, plateFinishes, pointKinds } from '../as-found/found-words.ts';
import { placeWords } from '../as-found/place-words.ts';
import { pointInRoom } from '../as-found/room-of-place.ts';
import { thingRow } from '../as-found/thing-row.ts';
import { firstHeightMm } from '../as-found/usual-heights.ts';
import { type WallChoice, wallChoices } from '../as-found/wall-choices.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import { type Joined, joinedIn } from './joined-words.ts';
import './nearer-offer.ts';
import './wanted-form.ts';

/** What the plan waits to be tapped for: a new point, or the place of one that is wanted already. */
type Waiting = 'new-point' | { readonly pointId: string };

/** Labels up to this many letters fit the narrow column before the line. */
const LONGEST_LABEL = 5;

/** The step Wanted: the points that the customer wants, where each goes, and how the shown scheme joins it. */
export class WantedStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    tapped: { attribute: false },
    kind: { state: true },
    waiting: { state: true },
  };
  static override styles = [
    controlsCss,
    stepCss,
    formCss,
    css`
      h2 {
        margin-bottom: 6px;
      }
      .add {
        margin: 16px 0 0;
        padding-top: 12px;
        border-top: 1px solid var(--line);
      }
      .joined {
        margin: 0 0 10px;
      }
      .going {
        display: flex;
        gap: 8px;
        align-items: center;
        justify-content: space-between;
        padding: 4px 6px;
      }
      .none {
        color: var(--ask);
        font-weight: 500;
      }
    `,
  ];
  declare view: JobView;
  /** Where the plan was tapped while it waited for a place. */
  declare tapped: Place | null;
  /** What the next point is to be. */
  declare private kind: PointKind;
  declare private waiting: Waiting | null;
  /** The point that was just put on the plan: its line takes the focus as soon as it is there. */
  #justPlaced: string | null = null;

  constructor() {
    super();
    keepFocus(this);
    whenPlanGivenUp(this, () => {
      this.waiting = null;
    });
    this.tapped = null;
    this.kind = 'socket-twin';
    this.waiting = null;
    this.addEventListener('place-wanted', (event) => {
      event.stopPropagation();
      const { chosen } = this.view;
      if (chosen !== null) this.#wait(this.waiting === null ? { pointId: chosen } : null);
    });
  }

  override updated(changed: PropertyValues<this>): void {
    const before = changed.get('view');
    const { chosen } = this.view;
    if (changed.has('view') && before?.chosen !== chosen) {
      if (typeof this.waiting === 'object' && this.waiting !== null) this.#wait(null);
      this.#showRow(chosen);
    }
    if (changed.has('tapped') && this.tapped !== null) this.#placed(this.tapped);
    else if (this.#justPlaced !== null) void this.#goToRow(this.#justPlaced);
  }

  /** Brings the chosen point's line to the top, unless it was chosen right here. */
  #showRow(id: string | null): void {
    const row = this.#rowOf(id);
    if (row !== undefined && !row.matches(':focus-within')) row.scrollIntoView({ block: 'start' });
  }

  #rowOf(id: string | null): HTMLElement | undefined {
    const rows = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-thing]')];
    return rows.find(({ dataset }) => dataset.thing === id);
  }

  /** Goes to the line of a point that was just placed: the button that asked for the place is pushed out of sight by its form. */
  async #goToRow(id: string): Promise<void> {
    if (this.#rowOf(id) === undefined) return;
    this.#justPlaced = null;
    // The open form's own fields are there a frame later; before, the sheet is too short to scroll that far.
    await new Promise(requestAnimationFrame);
    const row = this.#rowOf(id);
    row?.querySelector('button')?.focus({ preventScroll: true });
    row?.scrollIntoView({ block: 'start' });
  }

  #wait(waiting: Waiting | null): void {
    this.waiting = waiting;
    askPlan(this, waiting === null ? null : { tool: 'place', ...this.#thingFor(waiting) });
  }

  /** What the plan is asked for: the next point as it will be, or a place for one that is there. */
  #thingFor(waiting: Waiting): PlacedThing {
    const { job, library } = this.view;
    const point = waiting === 'new-point' ? undefined : job.points.find(({ id }) => id === waiting.pointId);
    const symbol = point?.kind ?? this.kind;
    return { symbol, heightMm: point?.place?.heightMm ?? firstHeightMm(symbol, library.terms.heights) };
  }

  #placed(place: Place): void {
    const { waiting } = this;
    if (waiting === null) return;
    if (waiting === 'new-point') this.#add(place);
    else {
      const point = this.view.job.points.find(({ id }) => id === waiting.pointId);
      if (point !== undefined) send(this, 'job-edit', setPointFact(point, 'place', place));
      this.#justPlaced = waiting.pointId;
    }
    this.#wait(null);
  }

  #add(place: Place | null): void {
    const id = newId();
    const label = nextLabel(this.view.job.points, true);
    const point = { id, label, status: 'wanted', kind: this.kind } as const;
    send(this, 'job-edit', addPoints([place === null ? point : { ...point, place }]));
    send(this, 'thing-chosen', { subjectId: id });
    if (place !== null) this.#justPlaced = id;
  }

  override render(): TemplateResult {
    const { job, scheme } = this.view;
    const wanted = job.points.filter(({ status }) => status === 'wanted');
    const plan = buildPlan(job);
    const faces = wallChoices(plan);
    return html`<h2 tabindex="-1">Wanted</h2>
      ${
        wanted.length === 0
          ? html`<p>
              Nothing is wanted yet. Add each new socket-outlet or appliance below: choose what it is, then
              ${faces.length === 0 ? 'add it; its place can wait.' : 'tap the wall on the plan, or add it and choose its wall from a list.'}
            </p>`
          : html`<p class="hint">${counted(wanted.length, 'point')}. ${
              wanted.some(({ place }) => place !== undefined)
                ? 'Drag one on the plan, or open it here.'
                : 'Open one to change it.'
            }</p>
              <ul class="list">
                ${wanted.map((point) => {
                  const joined = scheme === null ? null : joinedIn(scheme, point.id);
                  return thingRow(this.view, {
                    id: point.id,
                    name: point.label,
                    facts: pointKindWords[point.kind],
                    more: [
                      placeWords(plan, faces, point.place),
                      ...(joined === null ? [] : [joinedWords(joined)]),
                    ],
                    state: joined === null ? 'not joined' : '',
                    wide: point.label.length > LONGEST_LABEL,
                    form: () => this.#form(point, joined),
                  });
                })}
              </ul>`
      }
      ${this.#adding(faces)} ${this.#finish()} ${this.#leaving(plan)}`;
  }

  /** How new plates look unless a point has a finish of its own. */
  #finish(): TemplateResult {
    return html`<section class="add" aria-label="Finish of new plates">
      <h3>Finish of new plates</h3>
      <div class="fields">
        <choice-field
          label="All new plates are"
          help="A point can have a finish of its own. Metal plates want a deeper box, 35 mm, and an earth tail to a steel one."
          .empty=${firmFinishWords(this.view.library.terms.finish)}
          .options=${plateFinishes}
          .value=${this.view.job.terms.finish ?? null}
          @field-change=${edits<Terms['finish'] | null>((finish) => setFinish(finish ?? null))}
        ></choice-field>
      </div>
    </section>`;
  }

  #form(point: Point, joined: Joined | null): TemplateResult {
    const waits = typeof this.waiting === 'object' && this.waiting?.pointId === point.id;
    return html`${
      joined === null
        ? this.#notJoined(point)
        : html`<nearer-offer .view=${this.view} .pointId=${point.id}></nearer-offer>`
    }
      <wanted-form .view=${this.view} .point=${point} .waiting=${waits}></wanted-form>`;
  }

  #notJoined(point: Point): TemplateResult {
    const { scheme, job } = this.view;
    const words = scheme === null ? 'No scheme joins it yet.' : html`Not joined in “${scheme.name}”.`;
    const query = scheme === null ? '' : `scheme=${encodeURIComponent(scheme.id)}&`;
    const href = `/jobs/${encodeURIComponent(job.id)}/ways?${query}on=${encodeURIComponent(point.id)}`;
    return html`<p class="joined">
      <span class="none">${words}</span>
      <button class="small" @click=${() => send(this, 'page-asked', { href })}>Choose how in Ways</button>
    </p>`;
  }

  #adding(faces: readonly WallChoice[]): TemplateResult {
    const isWaiting = this.waiting === 'new-point';
    return html`<section class="add" aria-label="Add a point">
      <h3>Add a point</h3>
      <div class="fields">
        <choice-field
          label="What it is"
          .empty=${null}
          .options=${pointKinds}
          .value=${this.kind}
          @field-change=${(event: CustomEvent<FieldChange<PointKind>>) => {
            event.stopPropagation();
            this.kind = event.detail.value;
          }}
        ></choice-field>
        <div class="buttons">
          <button class=${isWaiting ? '' : 'main'} aria-pressed=${isWaiting} @click=${() => this.#wait(isWaiting ? null : 'new-point')}>
            ${isWaiting ? `Tap ${faces.length === 0 ? 'its place' : 'its wall'} on the plan, or press here to stop` : 'Place it on the plan'}
          </button>
          <button @click=${() => this.#add(null)}>${faces.length === 0 ? 'Add it without a place' : 'Add it, wall from a list'}</button>
        </div>
        ${
          faces.length === 0
            ? html`<p class="hint">This job has no walls to choose from: place the point roughly on the plan, or add it without a place; its cable is then priced at a typical length.</p>`
            : nothing
        }
      </div>
    </section>`;
  }

  /** What is there and goes: replaced by a wanted point, or taken away. */
  #leaving(plan: Plan): TemplateResult | typeof nothing {
    const { points } = this.view.job;
    const going = points.filter(({ status }) => status === 'removed' || status === 'replaced');
    const staying = points.filter(({ status }) => status === 'existing');
    if (going.length + staying.length === 0) return nothing;
    return html`<section class="add" aria-label="Points taken out">
      <h3>Points taken out</h3>
      <ul class="list">
        ${going.map((point) => this.#going(plan, point))}
      </ul>
      <div class="fields">
        <choice-field
          label="Take an existing point away"
          .empty=${'None'}
          .options=${staying.map((point) => ({ value: point.id, label: pointInRoom(plan, point, pointKindWords[point.kind].toLowerCase()) }))}
          .value=${null}
          @field-change=${edits<string | null>((id) => {
            const point = staying.find((each) => each.id === id);
            return point === undefined ? null : setTakenAway(point, true);
          })}
        ></choice-field>
      </div>
    </section>`;
  }

  #going(plan: Plan, point: Point): TemplateResult {
    const by = this.view.job.points.find(({ replaces }) => replaces === point.id);
    return html`<li class="going">
      <span>${pointInRoom(plan, point)} ${by === undefined ? 'is taken away' : `is replaced by ${by.label}`}</span>
      <button class="small" @click=${() => send(this, 'job-edit', setTakenAway(point, false))}>Leave ${point.label}</button>
    </li>`;
  }
}

/** How a point is joined, and with how much new cable: "Spur from R4, 6.20 m of new cable". */
function joinedWords(joined: Joined): string {
  return `${joined.words}${cableWords(joined)}`;
}

/** The new cable that ends at a point: ", 6.20 m of new cable". */
function cableWords({ cablesMm }: Joined): string {
  const known = cablesMm.filter((lengthMm) => lengthMm !== null);
  if (cablesMm.length === 0) return '';
  if (known.length < cablesMm.length) return ', new cable of a typical length';
  return `, ${known.map(metres).join(' and ')} of new cable`;
}
/** What new plates are where the job does not say. */
const firmFinishWords = (finish: Terms['finish']): string =>
  finish === undefined ? 'Not said: white moulded' : `The firm’s: ${finishWords(finish)}`;
customElements.define('wanted-step', WantedStep);
declare global {
  interface HTMLElementTagNameMap {
    'wanted-step': WantedStep;
  }
}
