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
import type { Circuit, Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { setPointsInOrder } from '../../edits/ring-in-order.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
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
      li.end {
        color: var(--ink-soft);
        font-size: 14px;
      }
    `,
  ];
  declare view: JobView;
  declare circuit: Circuit;
  /** The order as it is being made; null while it is the one of the legs. */
  declare private changed: readonly string[] | null;

  constructor() {
    super();
    this.changed = null;
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
    const others = foundPoints(job, this.circuit.id).filter(({ id }) => !order.includes(id));
    return html`<p class="hint">
        Put the points in the order in which the cable passes them, spurs left out. Cables that lie between neighbours
        already stay as they are.
      </p>
      <ol aria-label=${`Points of ${this.circuit.name} in order`}>
        <li class="end">From the board${isRing ? ', end A' : ''}</li>
        ${order.map((id, index) => this.#row(order, index, nameOf(id)))}
        ${isRing ? html`<li class="end">Back to the board, end B</li>` : nothing}
      </ol>
      <choice-field
        label="Next point"
        .value=${null}
        .options=${others.map(({ id, label }) => ({ value: id, label }))}
        .empty=${others.length === 0 ? 'All points are in' : 'Choose a point to put last'}
        ?disabled=${others.length === 0}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
          event.stopPropagation();
          if (event.detail.value !== null) this.changed = [...order, event.detail.value];
        }}
      ></choice-field>
      ${this.#buttons(order)}`;
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
        aria-label=${`${name} earlier`}
        ?disabled=${index === 0}
        @click=${() => this.#swap(order, index - 1)}
      >
        Up
      </button>
      <button
        class="small"
        aria-label=${`${name} later`}
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
    const legs = job.legs.filter(({ circuit }) => circuit === this.circuit.id);
    send(
      this,
      'job-edit',
      setPointsInOrder(this.circuit, {
        was: orderOfLegs(job, this.circuit),
        now,
        isRing: this.circuit.shape !== 'radial',
        cable: usualCable(legs),
        legIds: [...now, 'back'].map(() => newId()),
      }),
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
