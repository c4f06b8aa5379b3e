import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { askPlan, whenPlanGivenUp } from '../../controllers/plan-given-up.ts';
import { setBoardFact } from '../../edits/boards.ts';
import { markedBy } from '../../edits/marked.ts';
import { addFoundPoints, setPointFact } from '../../edits/points.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';
import './known-by.ts';
import { type KnownBy, keepKnownBy, knownByOf } from './known-by-job.ts';
import { missingFacts, missingWords } from './missing-facts.ts';
import { newPoint } from './new-point.ts';
import './open-questions.ts';
import { type FoundSection, sectionOfThing } from './section-of-thing.ts';
import { foundSections, type SectionOfStep } from './sections.ts';

/** What the plan waits to be tapped for: new points, one a tap, the wall beside a new room, or the place of a thing. */
type Waiting = 'new-points' | 'wall' | { readonly thingId: string };

/** The step As found: what the survey of the house and its installation holds, and what it is worth to find out more. */
export class AsFoundStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    tapped: { attribute: false },
    open: { state: true },
    waiting: { state: true },
    wall: { state: true },
    knownBy: { state: true },
  };
  static override styles = [
    controlsCss,
    stepCss,
    formCss,
    css`
      h2 {
        margin-bottom: 6px;
      }
      .section {
        border-top: 1px solid var(--line);
      }
      .section > summary {
        display: flex;
        gap: 8px;
        align-items: baseline;
        min-height: 42px;
        padding: 9px 0;
        list-style: none;
      }
      .section > summary::-webkit-details-marker {
        display: none;
      }
      .section > summary::before {
        flex: 0 0 auto;
        width: 0;
        height: 0;
        border: 5px solid transparent;
        border-right-width: 0;
        border-left: 6px solid var(--ink-soft);
        content: '';
      }
      .section[open] > summary::before {
        transform: rotate(90deg);
      }
      .section > summary .title {
        flex: 1;
      }
      @media (max-width: 700px) {
        .section > summary {
          min-height: 44px;
        }
      }
      .title .missing {
        display: block;
      }
      .section > .body {
        padding-bottom: 12px;
      }
      known-by {
        margin: 0 0 14px;
      }
      known-by.asks,
      .start {
        margin: 0 0 14px;
        padding: 10px 12px;
        background: var(--copper-wash);
        border-left: 3px solid var(--copper);
      }
      .start ol {
        margin: 6px 0;
        padding-left: 20px;
      }
    `,
  ];
  declare view: JobView;
  /** Where the plan was tapped while it waited for a place. */
  declare tapped: Place | null;
  declare private open: ReadonlySet<FoundSection>;
  declare private waiting: Waiting | null;
  /** The wall that was tapped last for a new room. */
  declare private wall: Place | null;
  /** What the person goes by in what they enter; null until they say. */
  declare private knownBy: KnownBy | null;
  /** The fact that the thing chosen next is chosen for. */
  #askedFact: string | null = null;

  constructor() {
    super();
    keepFocus(this);
    whenPlanGivenUp(this, () => {
      this.waiting = null;
    });
    this.tapped = null;
    this.open = new Set();
    this.waiting = null;
    this.wall = null;
    this.knownBy = null;
    this.addEventListener('job-edit', (event) => this.#mark(event));
    this.addEventListener('place-wanted', (event) => {
      event.stopPropagation();
      const { chosen } = this.view;
      if (chosen !== null) this.#wait(this.waiting === null ? { thingId: chosen } : null);
    });
    this.addEventListener('fact-asked', (event) => {
      event.stopPropagation();
      this.#ask(event.detail.subjectId, event.detail.fact);
    });
    this.addEventListener('wall-wanted', () => this.#wait(this.waiting === 'wall' ? null : 'wall'));
    this.addEventListener('points-wanted', () => this.#wait(this.waiting === null ? 'new-points' : null));
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('view');
    const { chosen, job } = this.view;
    if (changed.has('view') && before?.job.id !== job.id) this.knownBy = knownByOf(job.id);
    if (!changed.has('view') || chosen === null || before?.chosen === chosen) return;
    const section = sectionOfThing(job, chosen);
    if (section !== null) this.open = new Set([...this.open, section]);
  }

  override updated(changed: PropertyValues<this>): void {
    const before = changed.get('view');
    const { chosen } = this.view;
    if (changed.has('view') && before?.chosen !== chosen) {
      if (typeof this.waiting === 'object' && this.waiting !== null) this.#wait(null);
      if (chosen !== null) void this.#showRow(chosen);
    }
    if (changed.has('tapped') && this.tapped !== null) this.#placed(this.tapped);
  }

  /** Opens a thing's form at the field of one of its facts. */
  #ask(id: string, fact: string | null): void {
    this.#askedFact = fact;
    // Shut by hand since the thing was chosen, its section has to be opened again.
    const section = sectionOfThing(this.view.job, id);
    if (section !== null) this.#toggle(section, true);
    if (this.view.chosen === id) void this.#showRow(id);
    else send(this, 'thing-chosen', { subjectId: id });
  }

  /** Brings the chosen thing's line to the top, unless it was chosen right here; what was asked of it takes the focus. */
  async #showRow(id: string): Promise<void> {
    const fact = this.#askedFact;
    this.#askedFact = null;
    await this.updateComplete;
    for (const list of this.renderRoot.querySelectorAll('.body > *')) {
      if (!(list instanceof LitElement)) continue;
      await list.updateComplete;
      // The open form's own fields are there a frame later; before, the sheet is too short to scroll that far.
      await new Promise(requestAnimationFrame);
      const rows = [...list.renderRoot.querySelectorAll<HTMLElement>('[data-thing]')];
      const row = rows.find(({ dataset }) => dataset.thing === id);
      if (row === undefined) continue;
      const field = fact === null ? null : row.querySelector<HTMLElement>(`[data-fact='${fact}']`);
      if (field !== null) showField(field);
      else if (!row.matches(':focus-within')) row.scrollIntoView({ block: 'start' });
    }
  }

  /** Marks a fact that was entered by what the person goes by; nobody who has not said has seen anything. */
  #mark(event: HTMLElementEventMap['job-edit']): void {
    if (event.detail.marked === undefined) return;
    event.stopImmediatePropagation();
    send(this, 'job-edit', markedBy(event.detail, this.knownBy ?? 'assumed'));
  }

  #wait(waiting: Waiting | null): void {
    this.waiting = waiting;
    askPlan(this, waiting === null ? null : { tool: 'place' });
  }

  #placed(place: Place): void {
    const { waiting } = this;
    if (waiting === null) return;
    if (waiting === 'wall') {
      this.wall = place;
      this.#wait(null);
      return;
    }
    if (waiting === 'new-points') {
      const made = { ...newPoint(this.view.job, newId()), place };
      send(this, 'job-edit', addFoundPoints([made]));
      return;
    }
    const edit = placeEdit(this.view.job, waiting.thingId, place);
    if (edit !== null) send(this, 'job-edit', edit);
    this.#wait(null);
  }

  override render(): TemplateResult {
    const { job } = this.view;
    const found = job.points.filter(({ status }) => status !== 'wanted');
    return html`<h2 tabindex="-1">As found</h2>
      ${this.#knownByField()}
      ${found.length === 0 ? this.#start() : html`<h3>Worth finding out</h3><open-questions .view=${this.view}></open-questions>`}
      ${foundSections.map((section) => this.#section(section))}`;
  }

  #knownByField(): TemplateResult {
    return html`<known-by
      class=${this.knownBy === null ? 'asks' : ''}
      .value=${this.knownBy}
      @field-change=${(event: CustomEvent<FieldChange<KnownBy>>) => {
        event.stopPropagation();
        this.knownBy = event.detail.value;
        keepKnownBy(this.view.job.id, event.detail.value);
      }}
    ></known-by>`;
  }

  #start(): TemplateResult {
    return html`<div class="start">
      <h3>Ways to start</h3>
      <ol>
        <li>Draw the rooms by their sides, under Rooms and walls below.</li>
        <li>Open a demo job from <a href="/">the list of jobs</a> and look how one is filled in.</li>
        <li>List the points room by room, under Points below; no plan is needed for a first price.</li>
        <li>Tap the points on the plan.</li>
      </ol>
      <div class="buttons">
        <button class="small" @click=${() => void this.#listByRoom()}>List points by room</button>
        <button class="small" aria-pressed=${this.waiting === 'new-points'} @click=${() => this.#wait(this.waiting === null ? 'new-points' : null)}>
          ${this.waiting === 'new-points' ? 'Tap each point; press here when done' : 'Tap points on the plan'}
        </button>
      </div>
    </div>`;
  }

  /** Opens the list by room and goes to its first field: it lies further down than a screen shows. */
  async #listByRoom(): Promise<void> {
    this.#toggle('points', true);
    await this.updateComplete;
    const list = this.renderRoot.querySelector('point-list');
    await list?.updateComplete;
    const byRoom = list?.renderRoot.querySelector('points-by-room') ?? null;
    await byRoom?.updateComplete;
    const room = byRoom?.renderRoot.querySelector('text-field') ?? null;
    if (room !== null) showField(room);
  }

  #section({ id, title, state, body }: SectionOfStep): TemplateResult {
    const { view } = this;
    const isOpen = this.open.has(id);
    const missing = missingWords(missingFacts(view.job)[id]);
    return html`<details
      class="section"
      ?open=${isOpen}
      @toggle=${(event: Event) => {
        if (event.target instanceof HTMLDetailsElement) this.#toggle(id, event.target.open);
      }}
    >
      <summary>
        <span class="title">${title} ${missing === '' ? nothing : html`<span class="state missing">Not known: ${missing}</span>`}</span>
        <span class="state">${state(view.job)}</span>
      </summary>
      <div class="body">${isOpen ? body({ view, placingId: this.#placingId, tapping: this.waiting === 'new-points', walling: this.waiting === 'wall', wall: this.wall }) : nothing}</div>
    </details>`;
  }

  #toggle(section: FoundSection, isOpen: boolean): void {
    if (this.open.has(section) === isOpen) return;
    const open = new Set(this.open);
    if (isOpen) open.add(section);
    else open.delete(section);
    this.open = open;
  }

  get #placingId(): string | null {
    return typeof this.waiting === 'object' && this.waiting !== null ? this.waiting.thingId : null;
  }
}

/** Brings a field into the middle of sight and goes to it, past a part of the form that is folded away. */
function showField(field: HTMLElement): void {
  const folded = field.closest('details');
  if (folded !== null) folded.open = true;
  field.scrollIntoView({ block: 'center' });
  field.focus({ preventScroll: true });
}

/** Puts a point or a board where the plan was tapped; the height that it has stays. */
function placeEdit(job: Job, id: string, place: Place): JobEdit | null {
  const point = job.points.find((each) => each.id === id);
  const heightMm = point?.place?.heightMm;
  if (point !== undefined)
    return setPointFact(point, 'place', heightMm === undefined ? place : { ...place, heightMm });
  const board = job.boards.find((each) => each.id === id);
  if (board === undefined) return null;
  return setBoardFact(board, 'place', { ...place, heightMm: board.place?.heightMm ?? place.heightMm });
}

customElements.define('as-found-step', AsFoundStep);
declare global {
  interface HTMLElementTagNameMap {
    'as-found-step': AsFoundStep;
  }
  interface HTMLElementEventMap {
    'points-wanted': CustomEvent<null>;
  }
}
