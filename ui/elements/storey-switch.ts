import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Storey } from '#model/building.ts';
import { send } from '../job-events.ts';
import { controlsCss } from './shared-styles.ts';

/** Which storey the plan shows; nothing where there is no choice. */
export class StoreySwitch extends LitElement {
  static override properties: PropertyDeclarations = {
    storeys: { attribute: false },
    storeyId: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      div {
        display: flex;
      }
      button {
        font: 500 14px / 1.2 var(--drawing-font);
        border-radius: 0;
      }
      button + button {
        border-left: 0;
      }
      button:first-child {
        border-radius: var(--corner) 0 0 var(--corner);
      }
      button:last-child {
        border-radius: 0 var(--corner) var(--corner) 0;
      }
      @media (max-width: 700px) {
        div {
          flex-direction: column;
        }
        button {
          justify-content: flex-start;
          min-width: 44px;
          padding: 2px 9px;
        }
        button + button {
          border-top: 0;
          border-left: 1px solid var(--line);
        }
        button:first-child {
          border-radius: var(--corner) var(--corner) 0 0;
        }
        button:last-child {
          border-radius: 0 0 var(--corner) var(--corner);
        }
      }
      button[aria-pressed='true'] {
        color: var(--sheet);
        background: var(--ink);
        border-color: var(--ink);
      }
    `,
  ];
  declare storeys: readonly Storey[];
  declare storeyId: string;

  constructor() {
    super();
    this.storeys = [];
    this.storeyId = '';
  }

  override render(): TemplateResult | typeof nothing {
    if (this.storeys.length < 2) return nothing;
    return html`<div role="group" aria-label="Storey">
      ${this.storeys.map(
        ({ id, name }) =>
          html`<button aria-pressed=${id === this.storeyId} @click=${() => send(this, 'storey-shown', { storeyId: id })}>
            ${name}
          </button>`,
      )}
    </div>`;
  }
}
customElements.define('storey-switch', StoreySwitch);
declare global {
  interface HTMLElementTagNameMap {
    'storey-switch': StoreySwitch;
  }
}
