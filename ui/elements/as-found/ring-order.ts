import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Cable } from '#model/cable.ts';
import type { Circuit, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import { cableChoices } from './cable-choices.ts';
import { foundPoints } from './end-choices.ts';
import { formCss } from './form-styles.ts';
import { orderEdit, usualCable } from './order-edit.ts';
import { orderOfLegs } from './order-of-legs.ts';
import type { OrderDrafted } from './order-tapping.ts';

/**
 * The points of a circuit in the order in which its cable passes them, put in order by buttons; the legs between
 * them are made in one step, and those that are there already stay.
 */
export class RingOrder extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    circuit: { attribute: false },
    drafted: { attribute: false },
    tapping: { type: Boolean },
    cable: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
      ol {
        margin: 0 0 8px;
        padding: 0;
        list-style: none;
        border-bottom: 1px solid var(--rule);
      }
      li {
        display: flex;
        gap: 4px;
        align-items: center;
        min-height: 36px;
        padding: 2px 0 2px 6px;
        border-top: 1px solid var(--rule);
      }
      li span {
        flex: 1;
      }
      .label {
        margin: 0;
        font-weight: 500;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      li.end {
        color: var(--ink-soft);
        font-size: 0.875rem;
      }
    `,
  ];
  declare view: JobView;
  declare circuit: Circuit;
  /** The order as it is being made, here or on the plan; null while it is the one of the legs. */
  declare drafted: readonly string[] | null;
  /** True while the points are tapped on the plan. */
  declare tapping: boolean;
  /** The cable of new legs as it was chosen; undefined while it is the usual one of the circuit. */
  declare private cable: Cable | null | undefined;

  constructor() {
    super();
    this.drafted = null;
    this.tapping = false;
    this.cable = undefined;
  }

  override render(): TemplateResult {
    const { job } = this.view;
    const order = this.#order(job);
    const isRing = this.circuit.shape !== 'radial';
    const nameOf = (id: string): string => job.points.find((point) => point.id === id)?.label ?? id;
    return html`<p class="hint">
        Put the points in the order in which the cable passes them, spurs left out. Cables that lie between neighbours
        already stay as they are.
      </p>
      ${this.#next(order, foundPoints(job, this.circuit.id))}
      <ol aria-label=${`Points of ${this.circuit.name} in order`}>
        <li class="end">From the board${isRing ? ', end A' : ''}</li>
        ${order.map((id, index) => this.#row(order, index, nameOf(id)))}
        ${isRing ? html`<li class="end">Back to the board, end B</li>` : nothing}
      </ol>
      ${this.#cableField()} ${this.#buttons(order)}`;
  }

  /**
   * Each point that is not in yet is put last by one press: the ring is told by pressing its points in turn. The
   * buttons stand above the list and stay where they are, so that the next one is not pushed from under the finger.
   */
  #next(order: readonly string[], points: readonly Point[]): TemplateResult {
    if (points.length === 0) return html`<p class="hint">There are no points yet.</p>`;
    return html`<div class="buttons">
        <button class="small" aria-pressed=${this.tapping} @click=${() => this.#tap()}>
          ${this.tapping ? 'Tap the points in turn; press here to stop' : 'Tap them in turn on the plan'}
        </button>
      </div>
      <p class="label" id="next">Or press the points in turn:</p>
      <div class="buttons" role="group" aria-labelledby="next">
        ${points.map(
          ({ id, label }) => html`<button
            class="small"
            ?disabled=${order.includes(id)}
            @click=${() => {
              this.#draft([...order, id]);
            }}
          >
            ${label}
          </button>`,
        )}
      </div>`;
  }

  #order(job: Job): readonly string[] {
    const known = new Set(job.points.map(({ id }) => id));
    return (this.drafted ?? orderOfLegs(job, this.circuit)).filter((id) => known.has(id));
  }

  #row(order: readonly string[], index: number, name: string): TemplateResult {
    return html`<li>
      <span>${name}</span>
      <button
        class="small"
        aria-label=${`${name} up`}
        ?disabled=${index === 0}
        @click=${() => this.#swap(order, index - 1)}
      >
        Up
      </button>
      <button
        class="small"
        aria-label=${`${name} down`}
        ?disabled=${index === order.length - 1}
        @click=${() => this.#swap(order, index)}
      >
        Down
      </button>
      <button
        class="small quiet"
        aria-label=${`Leave ${name} out`}
        @click=${() => {
          this.#draft(order.toSpliced(index, 1));
        }}
      >
        Out
      </button>
    </li>`;
  }

  /** Swaps a point with the one after it. */
  #swap(order: readonly string[], index: number): void {
    const [first, second] = order.slice(index, index + 2);
    if (first !== undefined && second !== undefined) this.#draft(order.toSpliced(index, 2, second, first));
  }

  get #cable(): Cable | null {
    const legs = this.view.job.legs.filter(({ circuit }) => circuit === this.circuit.id);
    return this.cable === undefined ? usualCable(legs) : this.cable;
  }

  #cableField(): TemplateResult {
    const { options, value, cableOf } = cableChoices(this.#cable ?? undefined);
    return html`<choice-field
      label="Cable of those that are new"
      .options=${options}
      .value=${value}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        event.stopPropagation();
        this.cable = cableOf(event.detail.value);
      }}
    ></choice-field>`;
  }

  #buttons(order: readonly string[]): TemplateResult {
    return html`<div class="buttons">
      <button class="small main" ?disabled=${order.length === 0} @click=${() => this.#make(order)}>
        Make the cables
      </button>
      ${
        this.drafted === null
          ? nothing
          : html`<button
              class="small"
              @click=${() => {
                this.#draft(null);
              }}
            >
              As it was
            </button>`
      }
    </div>`;
  }

  #tap(): void {
    const detail = { circuitId: this.circuit.id };
    this.dispatchEvent(new CustomEvent('order-wanted', { detail, bubbles: true, composed: true }));
  }

  #draft(points: readonly string[] | null): void {
    const detail: OrderDrafted = { circuitId: this.circuit.id, points };
    this.dispatchEvent(new CustomEvent('order-drafted', { detail, bubbles: true, composed: true }));
  }

  #make(now: readonly string[]): void {
    send(this, 'job-edit', orderEdit(this.view.job, this.circuit, now, this.#cable));
    this.#draft(null);
  }
}
customElements.define('ring-order', RingOrder);
declare global {
  interface HTMLElementTagNameMap {
    'ring-order': RingOrder;
  }
}
