import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Room, Storey } from '#model/building.ts';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { removeFixture } from '../../edits/fixtures.ts';
import { addStorey } from '../../edits/house.ts';
import { roomHolding } from '../../house/along-side.ts';
import { fixtureWords } from '../../house/fixture-kinds.ts';
import type { CopiedParts } from '../../house/next-storey.ts';
import { storeyName } from '../../house/next-storey.ts';
import { type RoomSide, roomSides } from '../../house/room-sides.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { formCss } from '../as-found/form-styles.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { Reshaping } from './reshaping.ts';
import './room-add.ts';
import './room-form.ts';
import './stairwell-list.ts';
import './underlay-form.ts';

const metresOf = (mm: number): string => (mm / 1000).toFixed(2);

/** "3.62 × 4.20 m" for a room of four sides, else how many it has. */
function sizeWords(sides: readonly RoomSide[]): string {
  if (sides.length === 0) return 'does not close';
  const [a, b] = sides;
  return sides.length === 4 && a !== undefined && b !== undefined
    ? `${metresOf(a.lengthMm)} × ${metresOf(b.lengthMm)} m`
    : `${sides.length} sides`;
}

/** The rooms of the storey that is shown: each with its sides and walls, a new one, a storey on top. */
export class RoomList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    adding: { state: true },
  };
  static override styles = [controlsCss, formCss, houseFormCss];
  declare view: JobView;
  declare private adding: boolean;
  #within: Element | null = null;
  /** Whether the form of a new room is brought into sight when it is there: it opens above the button that asked for it. */
  #goesToForm = false;
  readonly #reshaping = new Reshaping(this, () => this.view);

  constructor() {
    super();
    this.adding = false;
    this.addEventListener('part-taken', ({ detail: { part } }) => this.#reshaping.begin(part));
  }

  override updated(changed: PropertyValues<this>): void {
    const before = changed.get('view');
    if (before !== undefined && (before.job !== this.view.job || before.storeyId !== this.view.storeyId))
      this.#reshaping.follow();
    if (!this.#goesToForm) return;
    this.#goesToForm = false;
    const heading = this.renderRoot.querySelector<HTMLElement>('.new-room');
    heading?.focus({ preventScroll: true });
    heading?.scrollIntoView({ block: 'start' });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const root = this.getRootNode();
    this.#within = root instanceof ShadowRoot ? root.host : null;
  }

  /** The section was folded up: walls are moved no longer, and what is around it tells the plan so. */
  override disconnectedCallback(): void {
    const isOn = this.#reshaping.isOn;
    super.disconnectedCallback();
    if (isOn && this.#within !== null) askPlan(this.#within, null);
  }

  override render(): TemplateResult {
    const storey =
      this.view.job.storeys.find(({ id }) => id === this.view.storeyId) ?? this.view.job.storeys[0];
    if (storey === undefined) return html`<p class="hint">The job has no storey.</p>`;
    const isAdding = this.adding || storey.rooms.length === 0;
    return html`${this.view.job.storeys.length > 1 ? html`<h4>${storey.name}</h4>` : nothing}
      <ul class="list">
        ${storey.rooms.map((room) => this.#room(storey, room))}
      </ul>
      ${
        isAdding
          ? html`<h4 class="new-room" tabindex="-1">${storey.rooms.length === 0 ? 'The first room' : 'A new room'}</h4>
              <room-add
                .view=${this.view}
                .storey=${storey}
                @job-edit=${() => {
                  this.#goesToForm = true;
                }}
              ></room-add>`
          : nothing
      }
      ${storey.walls.length === 0 ? nothing : this.#storeyParts(storey)}
      <div class="buttons">
        ${
          storey.rooms.length === 0
            ? nothing
            : html`<button
                aria-expanded=${isAdding}
                @click=${() => {
                  this.adding = !this.adding;
                  this.#goesToForm = this.adding;
                }}
              >
                ${this.adding ? 'No more rooms' : 'Draw another room'}
              </button>`
        }
        ${
          storey.walls.length === 0
            ? nothing
            : html`<button aria-pressed=${this.#reshaping.isOn} @click=${() => this.#reshaping.toggle()}>
                ${this.#reshaping.isOn ? 'Walls move on the plan; press here when done' : 'Move walls, corners and fixtures on the plan'}
              </button>`
        }
        ${storey.walls.length === 0 ? nothing : html`${this.#storeyButton('outer-walls', 'Storey above: outer walls')}${this.#storeyButton('all-walls-and-rooms', 'Storey above: all walls and rooms')}`}
      </div>
      <details class="less" ?open=${storey.underlay !== undefined}>
        <summary>Trace a picture</summary>
        <underlay-form .view=${this.view} .storey=${storey}></underlay-form>
      </details>`;
  }

  /** What of a storey is in no room: openings in its floor, fixtures outside. */
  #storeyParts(storey: Storey): TemplateResult {
    return html`<details class="less">
        <summary>Stairs that come up here</summary>
        <stairwell-list .view=${this.view} .storey=${storey}></stairwell-list>
      </details>
      ${this.#outside(storey)}`;
  }

  /** Fixtures that stand in no room, and so in no room's form: a meter outside. */
  #outside(storey: Storey): TemplateResult | typeof nothing {
    const map = this.view.estimate.asFound.worked.plan.wallById;
    const outside = storey.fixtures.filter(({ outline }) => roomHolding(storey, outline, map) === null);
    if (outside.length === 0) return nothing;
    return html`<h4>In no room</h4>
      <ul class="list">
        ${outside.map(
          (fixture) =>
            html`<li data-thing=${fixture.id}>
              <span>${fixtureWords[fixture.kind]}</span>
              <button class="small" @click=${() => send(this, 'job-edit', removeFixture(storey.id, fixture))}>Remove</button>
            </li>`,
        )}
      </ul>`;
  }

  #room(storey: Storey, room: Room): TemplateResult {
    const isOpen = this.view.chosen === room.id;
    const sides = roomSides(storey, room, this.view.estimate.asFound.worked.plan.wallById);
    return html`<li data-thing=${room.id}>
      <button
        class="row wide"
        aria-expanded=${isOpen}
        @click=${() => send(this, 'thing-chosen', { subjectId: isOpen ? null : room.id })}
      >
        <span class="name">${room.name}</span>
        <span class="state size">${sizeWords(sides)}</span>
      </button>
      ${isOpen ? html`<div class="open"><room-form .view=${this.view} .storey=${storey} .room=${room}></room-form></div>` : nothing}
    </li>`;
  }

  #storeyButton(parts: CopiedParts, words: string): TemplateResult {
    return html`<button
      @click=${() => {
        const made = addStorey(this.view.job, storeyName(this.view.job.storeys.length), parts);
        if (made === null) return;
        this.#goesToForm = true;
        send(this, 'job-edit', made.edit);
        send(this, 'storey-shown', { storeyId: made.storeyId });
      }}
    >
      ${words}
    </button>`;
  }
}
customElements.define('room-list', RoomList);
declare global {
  interface HTMLElementTagNameMap {
    'room-list': RoomList;
  }
}
