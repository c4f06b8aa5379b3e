import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { JobView } from '../job-view.ts';
import './scheme-card.ts';
import { controlsCss } from './shared-styles.ts';

/** The schemes of the job side by side, their prices on one scale. */
export class SchemeStrip extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        background: var(--paper);
      }
      ul {
        display: flex;
        gap: 10px;
        height: 100%;
        margin: 0;
        padding: 10px 16px;
        overflow-x: auto;
        list-style: none;
      }
      li {
        flex: 1 0 236px;
        max-width: 380px;
      }
      scheme-card {
        height: 100%;
      }
      p {
        padding: 14px 16px;
      }
    `,
  ];
  declare view: JobView;
  /** The scheme whose card was last brought into sight. */
  #inSight: string | null = null;

  override updated(): void {
    const id = this.view.scheme?.id ?? null;
    if (id === this.#inSight) return;
    this.#inSight = id;
    const list = this.renderRoot.querySelector('ul');
    const shown = [...this.renderRoot.querySelectorAll('li')].find(
      (item) => item.querySelector('scheme-card')?.shown,
    );
    if (list === null || shown === undefined) return;
    // Only along the strip: what the strip lies in stays where it is.
    const left = shown.offsetLeft - list.offsetLeft;
    if (left < list.scrollLeft || left + shown.offsetWidth > list.scrollLeft + list.clientWidth)
      list.scrollLeft = left - 16;
  }

  override render(): TemplateResult {
    const { estimate, scheme, moving } = this.view;
    const schemes = estimate.schemes.map((one) => (one.id === scheme?.id ? scheme : one));
    if (schemes.length === 0)
      return html`<p class="hint">No scheme yet. A scheme is one complete way to join the wanted points; the step Ways finds one, or makes one.</p>`;
    const scalePence = Math.max(...schemes.map(({ totals }) => totals.grossPence));
    return html`<ul aria-label="Schemes" aria-busy=${moving}>
      ${repeat(
        schemes,
        ({ id }) => id,
        (one) =>
          html`<li>
            <scheme-card
              .scheme=${one}
              .shown=${one.id === scheme?.id}
              .cheapest=${one.id === estimate.cheapestId}
              .scalePence=${scalePence}
            ></scheme-card>
          </li>`,
      )}
    </ul>`;
  }
}
customElements.define('scheme-strip', SchemeStrip);
declare global {
  interface HTMLElementTagNameMap {
    'scheme-strip': SchemeStrip;
  }
}
