import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { controlsCss } from '../shared-styles.ts';

/** A thing in a list to be put in order. */
export interface Ordered {
  readonly id: string;
  readonly label: string;
}

/**
 * Things in a row, to be put in order by buttons.
 *
 * @fires order-change - detail: { order: string[] }
 */
export class OrderList extends LitElement {
  static override properties: PropertyDeclarations = {
    label: { type: String },
    things: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ol {
        margin: 2px 0 0;
        padding: 0 0 0 22px;
      }
      li {
        padding: 2px 0;
      }
      .row {
        display: flex;
        gap: 6px;
        align-items: center;
      }
      .row span {
        flex: 1;
      }
      .label {
        font: 500 0.875rem/1.35 var(--text-font);
        color: var(--ink-soft);
      }
      button svg {
        width: 16px;
        height: 16px;
        fill: none;
        stroke: currentcolor;
        stroke-width: 1.8;
      }
    `,
  ];
  declare label: string;
  declare things: readonly Ordered[];

  /** What was moved last, until it is drawn where it was moved to. */
  #moved: { readonly id: string; readonly by: -1 | 1 } | null = null;

  constructor() {
    super();
    this.label = '';
    this.things = [];
  }

  /** The focus goes with what was moved; at the end of the list to the button that leads back. */
  override updated(): void {
    if (this.#moved === null) return;
    const { id, by } = this.#moved;
    this.#moved = null;
    const row = [...this.renderRoot.querySelectorAll<HTMLElement>('li')].find((one) => one.dataset.id === id);
    const buttons = [...(row?.querySelectorAll<HTMLButtonElement>('button') ?? [])].filter(
      ({ disabled }) => !disabled,
    );
    (buttons.find((one) => one.dataset.by === String(by)) ?? buttons[0])?.focus();
  }

  override render(): TemplateResult {
    return html`<span class="label" id="label">${this.label}</span>
      <ol aria-labelledby="label">
        ${repeat(
          this.things,
          ({ id }) => id,
          ({ id, label }, i) =>
            html`<li data-id=${id}>
              <div class="row">
                <span>${label}</span>
                <button
                  class="small"
                  data-by=-1
                  aria-label=${`Move up: ${label}`}
                  ?disabled=${i === 0}
                  @click=${() => this.#move(id, -1)}
                >
                  <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M3 10l5-5 5 5" /></svg>Move up
                </button>
                <button
                  class="small"
                  data-by=1
                  aria-label=${`Move down: ${label}`}
                  ?disabled=${i === this.things.length - 1}
                  @click=${() => this.#move(id, 1)}
                >
                  <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M3 6l5 5 5-5" /></svg>Move down
                </button>
              </div>
            </li>`,
        )}
      </ol>`;
  }

  #move(id: string, by: -1 | 1): void {
    const order = this.things.map((thing) => thing.id);
    const at = order.indexOf(id);
    order.splice(at, 1);
    order.splice(at + by, 0, id);
    this.#moved = { id, by };
    this.dispatchEvent(new CustomEvent('order-change', { detail: { order }, bubbles: true, composed: true }));
  }
}
customElements.define('order-list', OrderList);
declare global {
  interface HTMLElementTagNameMap {
    'order-list': OrderList;
  }
}
