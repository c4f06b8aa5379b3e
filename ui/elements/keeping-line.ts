import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Keeping } from '../job-view.ts';
import { controlsCss } from './shared-styles.ts';

const words: Readonly<Record<Keeping, string>> = {
  kept: 'Saved',
  keeping: 'Saving…',
  'not-kept': 'Not saved',
  'changed-elsewhere': 'Changed elsewhere',
  gone: 'Deleted',
};

/** How far the keeping of the job has got, in two words with a mark. */
export class KeepingLine extends LitElement {
  static override properties: PropertyDeclarations = { keeping: { type: String, reflect: true } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: inline-flex;
        gap: 6px;
        align-items: center;
        min-width: 74px;
        color: var(--ink-soft);
        font-size: 0.8125rem;
        white-space: nowrap;
      }
      svg {
        flex: none;
        width: 12px;
        height: 12px;
      }
      circle {
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
      }
      :host([keeping='kept']) circle {
        fill: currentColor;
        color: var(--pass);
      }
      :host([keeping='not-kept']),
      :host([keeping='changed-elsewhere']),
      :host([keeping='gone']) {
        color: var(--fail);
        font-weight: 600;
      }
    `,
  ];
  declare keeping: Keeping;

  constructor() {
    super();
    this.keeping = 'kept';
  }

  override render(): TemplateResult {
    return html`<svg viewBox="0 0 12 12" aria-hidden="true"><circle cx="6" cy="6" r="4"></circle></svg>
      <span>${words[this.keeping]}</span>`;
  }
}
customElements.define('keeping-line', KeepingLine);
declare global {
  interface HTMLElementTagNameMap {
    'keeping-line': KeepingLine;
  }
}
