import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Cable } from '#model/cable.ts';
import type { Circuit, Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { markOrder } from '../../edits/circuits.ts';
import { markable } from '../../edits/marked.ts';
import { setPointsInOrder } from '../../edits/ring-in-order.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import { cableChoices } from './cable-choices.ts';
import { foundPoints } from './end-choices.ts';
import { formCss } from './form-styles.ts';
import { orderOfLegs } from './order-of-legs.ts';

/** The cable that most of a circuit's legs are of; null where none is recorded. */
function usualCable(legs: readonly Leg[]): Cable | null {
  const counts = new Map<string, { readonly cable: Cable; count: number }>();
  for (const { cable } of legs) {
    if (cable === undefined) continue;
    const key = JSON.stringify(cable);
    counts.set(key, { cable, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()].toSorted((a, b) => b.count - a.count)[0]?.cable ?? null;
}

/**
 * The points of a circuit in the order in which its cable passes them, put in order by buttons; the legs between
 * them are made in one step, and those that are there already stay.
 */
export class RingOrder extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    circuit: { attribute: false },
    changed: { state: true },
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
  /** The order as it is being made; null while it is the one of the legs. */
  declare private changed: readonly string[] | null;
  /** The cable of new legs as it was chosen; undefined while it is the usual one of the circuit. */
  declare private cable: Cable | null | undefined;

  constructor() {
    super();
    this.changed = null;
    this.cable = undefined;
  }

  override willUpdate(before: PropertyValues<this>): void {
    const was = before.get('circuit');
    if (was !== undefined && was.id !== this.circuit.id) this.changed = null;
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
    return html`<p class="label" id="next">Press the points in turn:</p>
      <div class="buttons" role="group" aria-labelledby="next">
        ${points.map(
          ({ id, label }) => html`<button
            class="small"
            ?disabled=${order.includes(id)}
            @click=${() => {
              this.changed = [...order, id];
            }}
          >
            ${label}
          </button>`,
        )}
      </div>`;
  }

  #order(job: Job): readonly string[] {
    const known = new Set(job.points.map(({ id }) => id));
    return (this.changed ?? orderOfLegs(job, this.circuit)).filter((id) => known.has(id));
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
          this.changed = order.toSpliced(index, 1);
        }}
      >
        Out
      </button>
    </li>`;
  }

  /** Swaps a point with the one after it. */
  #swap(order: readonly string[], index: number): void {
    const [first, second] = order.slice(index, index + 2);
    if (first !== undefined && second !== undefined) this.changed = order.toSpliced(index, 2, second, first);
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
        this.changed === null
          ? nothing
          : html`<button
              class="small"
              @click=${() => {
                this.changed = null;
              }}
            >
              As it was
            </button>`
      }
    </div>`;
  }

  #make(now: readonly string[]): void {
    const { job } = this.view;
    send(
      this,
      'job-edit',
      markable(
        setPointsInOrder(this.circuit, {
          was: orderOfLegs(job, this.circuit),
          now,
          isRing: this.circuit.shape !== 'radial',
          cable: this.#cable,
          legIds: [...now, 'back'].map(() => newId()),
        }),
        (certainty) => markOrder(this.circuit, certainty),
      ),
    );
    this.changed = null;
  }
}
customElements.define('ring-order', RingOrder);
declare global {
  interface HTMLElementTagNameMap {
    'ring-order': RingOrder;
  }
}
