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
import { ToolHold } from '../../controllers/tool-hold.ts';
import { setBoardFact } from '../../edits/boards.ts';
import { markedBy } from '../../edits/marked.ts';
import { setPointFact } from '../../edits/points.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import { BranchTapping } from './branch-tapping.ts';
import { formCss } from './form-styles.ts';
import './known-by.ts';
import { surveyOf } from './ask-words.ts';
import { type KnownBy, keepKnownBy, knownByOf } from './known-by-job.ts';
import { missingFacts, missingWords } from './missing-facts.ts';
import { circuitToOrder, OrderTapping } from './order-tapping.ts';
import { PointsTapping } from './points-tapping.ts';
import './quoting-visit.ts';
import { type FoundSection, sectionOfThing } from './section-of-thing.ts';
import { foundSections, type SectionOfStep } from './sections.ts';
import './survey-list.ts';
import { foundHeightMm } from './usual-heights.ts';

/** The step As found: what the survey of the house and its installation holds, and what it is worth to find out more. */
export class AsFoundStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    ask: { attribute: false },
    tapped: { attribute: false },
    open: { state: true },
    placingId: { state: true },
    knownBy: { state: true },
    visiting: { state: true },
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
  declare ask: string | null;
  declare tapped: Place | null;
  declare private open: ReadonlySet<FoundSection>;
  /** The thing that the plan waits to be shown the place of; null for none. */
  declare private placingId: string | null;
  /** What the person goes by in what they enter; null until they say. */
  declare private knownBy: KnownBy | null;
  /** Whether the quoting visit is on, in place of the list and the parts of the survey. */
  declare private visiting: boolean;
  readonly #place = new ToolHold(this, 'place', {
    ended: () => {
      this.placingId = null;
    },
  });
  readonly #order = new OrderTapping(this, () => this.view);
  readonly #points = new PointsTapping(
    this,
    () => this.view,
    () => this.#toOrder(),
  );
  readonly #branches = new BranchTapping(this, () => this.view);
  /** The fact that the thing chosen next is chosen for. */
  #askedFact: string | null = null;

  constructor() {
    super();
    keepFocus(this);
    this.tapped = null;
    this.open = new Set();
    this.placingId = null;
    this.knownBy = null;
    this.visiting = false;
    this.addEventListener('visit-begun', () => this.#visit(true));
    this.addEventListener('visit-ended', () => this.#visit(false));
    this.addEventListener('job-edit', (event) => this.#mark(event));
    this.addEventListener('place-wanted', (event) => {
      event.stopPropagation();
      const { chosen } = this.view;
      if (this.placingId !== null) this.#place.letGo();
      else if (chosen !== null) this.#wait(chosen);
    });
    this.addEventListener('fact-asked', (event) => {
      event.stopPropagation();
      this.#ask(event.detail.subjectId, event.detail.fact);
    });
    this.addEventListener('points-wanted', () => this.#points.toggle());
    this.addEventListener('order-wanted', ({ detail }) => this.#order.toggle(detail.circuitId));
    this.addEventListener('order-drafted', ({ detail }) => this.#order.drafted(detail));
    this.addEventListener('spur-wanted', ({ detail }) => this.#branches.spurFrom(detail.pointId));
    this.addEventListener('joint-wanted', ({ detail }) => this.#branches.jointIn(detail.legId));
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
      this.#place.letGo();
      if (chosen !== null) void this.#showRow(chosen);
    }
    if (changed.has('tapped') && this.tapped !== null) this.#placed(this.tapped);
  }

  /** Begins or ends the quoting visit, and goes to the head of what is shown then. */
  async #visit(isOn: boolean): Promise<void> {
    this.visiting = isOn;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
    // Who has not said yet what they go by is asked that first.
    const shown = this.knownBy === null ? null : this.renderRoot.querySelector('quoting-visit');
    (shown ?? this).scrollIntoView({ block: 'start' });
  }

  /** Opens a thing's form at the field of one of its facts. */
  #ask(id: string, fact: string | null): void {
    this.#askedFact = fact;
    this.visiting = false;
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
      const field = fact === null ? null : await fieldIn(row, fact);
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

  /** Has the plan wait for the place of a thing, as high as it is. */
  #wait(thingId: string): void {
    const { job, library } = this.view;
    const point = job.points.find(({ id }) => id === thingId);
    const board = job.boards.find(({ id }) => id === thingId);
    this.placingId = thingId;
    const own = library.terms.heights;
    const heightMm =
      point === undefined
        ? (board?.place?.heightMm ?? BOARD_HEIGHT_MM)
        : (point.place?.heightMm ?? foundHeightMm(job.points, point.kind, own));
    this.#place.ask({ tool: 'place', symbol: point?.kind ?? 'board', heightMm });
  }

  #placed(place: Place): void {
    if (this.placingId === null) return;
    const edit = placeEdit(this.view.job, this.placingId, place);
    if (edit !== null) send(this, 'job-edit', edit);
    this.#place.letGo();
  }

  /** The points are tapped; what follows is their order. */
  #toOrder(): void {
    const circuit = circuitToOrder(this.view.job);
    if (circuit === null) return;
    this.#toggle('cables', true);
    this.#order.toggle(circuit.id);
  }

  override render(): TemplateResult {
    const { job } = this.view;
    const found = job.points.filter(({ status }) => status !== 'wanted');
    return html`<h2 tabindex="-1">As found</h2>
      ${this.#knownByField()}
      ${this.visiting ? html`<quoting-visit .view=${this.view}></quoting-visit>` : this.#parts(found.length === 0)}`;
  }

  #parts(isNew: boolean): TemplateResult {
    const missing = missingFacts(this.view.job, surveyOf(this.view));
    return html`${isNew ? this.#start() : nothing}
      <survey-list .view=${this.view} .asked=${this.ask}></survey-list>
      ${foundSections.map((section) => this.#section(section, missing.get(section.id) ?? []))}`;
  }

  #knownByField(): TemplateResult {
    return html`<known-by
      class=${this.knownBy === null ? 'asks' : ''}
      .value=${this.knownBy}
      @field-change=${(event: CustomEvent<FieldChange<KnownBy>>) => {
        event.stopPropagation();
        this.knownBy = event.detail.value;
        keepKnownBy(this.view.job.id, event.detail.value);
        this.renderRoot.querySelector('quoting-visit')?.scrollIntoView({ block: 'start' });
      }}
    ></known-by>`;
  }

  #start(): TemplateResult {
    const hasWalls = this.view.job.storeys.some(({ walls }) => walls.length > 0);
    return html`<div class="start">
      <h3>Ways to start</h3>
      <ol>
        ${hasWalls ? nothing : html`<li>Draw the rooms by their sides.</li>`}
        <li>List the points room by room${hasWalls ? '' : '; no plan is needed for a first price'}.</li>
        <li>Tap the points on the plan.</li>
        ${hasWalls ? nothing : html`<li>Or open a demo job from <a href="/">the list of jobs</a> and look how one is filled in.</li>`}
      </ol>
      <div class="buttons">
        ${hasWalls ? nothing : html`<button class="small" @click=${() => void this.#drawRooms()}>Draw rooms</button>`}
        <button class="small" @click=${() => void this.#listByRoom()}>List points by room</button>
        <button class="small" aria-pressed=${this.#points.isOn} @click=${() => this.#points.toggle()}>
          ${this.#points.isOn ? 'Tap each point; press here when done' : 'Tap points on the plan'}
        </button>
      </div>
    </div>`;
  }

  /** Opens the section of the rooms and brings it to the top of sight. */
  async #drawRooms(): Promise<void> {
    this.#toggle('rooms', true);
    await this.updateComplete;
    this.renderRoot.querySelector('room-list')?.closest('details')?.scrollIntoView({ block: 'start' });
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

  #section({ id, title, state, body }: SectionOfStep, notKnown: readonly string[]): TemplateResult {
    const { view } = this;
    const isOpen = this.open.has(id);
    const missing = missingWords(notKnown);
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
      <div class="body">${isOpen ? body({ view, placingId: this.placingId, tapping: this.#points.isOn, order: this.#order.sight }) : nothing}</div>
    </details>`;
  }

  #toggle(section: FoundSection, isOpen: boolean): void {
    if (this.open.has(section) === isOpen) return;
    const open = new Set(this.open);
    if (isOpen) open.add(section);
    else open.delete(section);
    this.open = open;
  }
}

/** The field of a fact in a thing's open form, which may be an element of its own; null where there is none. */
async function fieldIn(row: HTMLElement, fact: string): Promise<HTMLElement | null> {
  const field = `[data-fact='${fact}']`;
  for (const form of row.querySelectorAll('.open > *')) {
    if (!(form instanceof LitElement)) continue;
    await form.updateComplete;
    const found = form.renderRoot.querySelector<HTMLElement>(field);
    if (found instanceof LitElement) await found.updateComplete;
    if (found !== null) return found;
  }
  return row.querySelector<HTMLElement>(field);
}

/** Brings a field into the middle of sight and goes to it, past a part of the form that is folded away. */
function showField(field: HTMLElement): void {
  const folded = field.closest('details');
  if (folded !== null) folded.open = true;
  field.scrollIntoView({ block: 'center' });
  field.focus({ preventScroll: true });
}

/** Middle of a board whose height nobody has said, mm above the floor. Common practice, no source. */
const BOARD_HEIGHT_MM = 1400;

/** Puts a point or a board where the plan was tapped. */
function placeEdit(job: Job, id: string, place: Place): JobEdit | null {
  const point = job.points.find((each) => each.id === id);
  if (point !== undefined) return setPointFact(point, 'place', place);
  const board = job.boards.find((each) => each.id === id);
  return board === undefined ? null : setBoardFact(board, 'place', place);
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
