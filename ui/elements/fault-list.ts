import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Fault } from '#model/fault.ts';
import { counted } from '../written.ts';
import './outcome-mark.ts';
import { controlsCss } from './shared-styles.ts';

/** Why a file cannot be read: every fault with its place and what to do about it. */
export class FaultList extends LitElement {
  static override properties: PropertyDeclarations = {
    name: { type: String },
    faults: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 12px 16px;
        background: var(--fail-wash);
        border-left: 4px solid var(--fail);
        border-radius: var(--corner);
      }
      h2 {
        display: flex;
        gap: 8px;
        align-items: center;
      }
      ol {
        display: grid;
        gap: 8px;
        max-height: 40vh;
        margin: 10px 0 0;
        padding-left: 22px;
        overflow-y: auto;
      }
      code {
        font: 600 14px / 1.4 var(--drawing-font);
        overflow-wrap: anywhere;
      }
    `,
  ];
  /** What the file is called. */
  declare name: string;
  declare faults: readonly Fault[];

  constructor() {
    super();
    this.name = '';
    this.faults = [];
  }

  override render(): TemplateResult {
    return html`<div role="alert">
        <h2>
          <outcome-mark outcome="fails"></outcome-mark>
          ${this.name} cannot be opened: ${counted(this.faults.length, 'fault')}
        </h2>
        <p>Nothing was kept. Mend the file as said here and open it again.</p>
      </div>
      ${
        this.faults.length === 0
          ? nothing
          : html`<ol tabindex="0" aria-label="Faults">
            ${this.faults.map(
              ({ path, message, remedy }) => html`<li><code>${path}</code>: ${message}. ${remedy}.</li>`,
            )}
          </ol>`
      }`;
  }
}
customElements.define('fault-list', FaultList);
declare global {
  interface HTMLElementTagNameMap {
    'fault-list': FaultList;
  }
}
