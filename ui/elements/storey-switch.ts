import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Storey } from '#model/building.ts';
import { send } from '../job-events.ts';
import { counted } from '../written.ts';
import { controlsCss, segmentsCss } from './shared-styles.ts';

/** Which storey the plan shows; nothing where there is no choice. */
export class StoreySwitch extends LitElement {
  static override properties: PropertyDeclarations = {
    storeys: { attribute: false },
    storeyId: { attribute: false },
    marked: { attribute: false },
  };
  static override styles = [
    controlsCss,
    segmentsCss,
    css`
      div {
        flex-wrap: wrap;
        padding-left: 1px;
      }
      button {
        position: relative;
        margin-left: -1px;
      }
      button + button {
        border-left: 1px solid var(--line);
      }
      /* A ring as round a thing on the plan, with how many there are; on the corner, so that nothing moves for it. */
      .marked {
        position: absolute;
        top: -4px;
        right: -3px;
        z-index: 1;
        display: grid;
        place-items: center;
        min-width: 1.375rem;
        height: 1.375rem;
        padding: 0 3px;
        color: var(--ink);
        font: 600 0.875rem / 1 var(--drawing-font);
        background: var(--sheet);
        border: 2px solid var(--copper);
        border-radius: 0.6875rem;
      }
    `,
  ];
  declare storeys: readonly Storey[];
  declare storeyId: string;
  /** How many things are lit or chosen on each storey; told of those that are not shown. */
  declare marked: ReadonlyMap<string, number>;

  constructor() {
    super();
    this.storeys = [];
    this.storeyId = '';
    this.marked = new Map();
  }

  override render(): TemplateResult | typeof nothing {
    if (this.storeys.length < 2) return nothing;
    return html`<div role="group" aria-label="Storey">
      ${this.storeys.map(({ id, name }) =>
        this.#button(id, name, id === this.storeyId ? 0 : (this.marked.get(id) ?? 0)),
      )}
    </div>`;
  }

  #button(storeyId: string, name: string, count: number): TemplateResult {
    // What is seen, "First floor 5", is part of what is heard (WCAG 2.2, 2.5.3): hence the space before the figure.
    const words = count === 0 ? nothing : `${name}, ${counted(count, 'marked thing')}`;
    return html`<button
      aria-label=${words}
      aria-pressed=${storeyId === this.storeyId}
      @click=${() => send(this, 'storey-shown', { storeyId })}
    >
      ${name}${count === 0 ? nothing : html` <span class="marked" aria-hidden="true">${count}</span>`}
    </button>`;
  }
}
customElements.define('storey-switch', StoreySwitch);
declare global {
  interface HTMLElementTagNameMap {
    'storey-switch': StoreySwitch;
  }
}
