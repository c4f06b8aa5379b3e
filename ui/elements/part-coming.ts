import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PartState } from '../controllers/screen-parts.ts';
import { send } from '../job-events.ts';
import { controlsCss } from './shared-styles.ts';

/**
 * Stands where a part of the screen will be, until its files are there; says why and what to do where they cannot be had.
 *
 * @fires parts-asked, reload-asked
 */
export class PartComing extends LitElement {
  static override properties: PropertyDeclarations = { state: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 24px 20px;
      }
      /* Most are there before anybody could read it. */
      .hint {
        animation: late 0.1s 0.4s both;
      }
      @keyframes late {
        from {
          opacity: 0;
        }
      }
    `,
  ];
  declare state: PartState;

  constructor() {
    super();
    this.state = 'coming';
  }

  override render(): TemplateResult {
    if (this.state !== 'failed') return html`<p class="hint" role="status">Opening…</p>`;
    return html`<div class="warning" role="alert">
      <p>
        <strong>This part could not be fetched.</strong> Without a connection it comes once there is one. Where the server has
        been given a newer Ringwright meanwhile, load the page again. What you did is kept.
      </p>
      <button @click=${() => send(this, 'parts-asked', null)}>Try again</button>
      <button class="quiet" @click=${() => send(this, 'reload-asked', null)}>Load the page again</button>
    </div>`;
  }
}
customElements.define('part-coming', PartComing);
declare global {
  interface HTMLElementTagNameMap {
    'part-coming': PartComing;
  }
}
