import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { controlsCss } from '../elements/shared-styles.ts';

/** What is shown at an address that leads nowhere. */
export class MissingPage extends LitElement {
  static override properties: PropertyDeclarations = { path: { type: String } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        max-width: 640px;
        margin: 0 auto;
        padding: 64px 20px;
      }
      h1 {
        margin: 0 0 12px;
        font: 600 1.5rem / 1.25 var(--drawing-font);
      }
      code {
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare path: string;

  constructor() {
    super();
    this.path = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'No such page · Ringwright';
  }

  override render(): TemplateResult {
    return html`<main>
      <h1 tabindex="-1">There is no page at this address</h1>
      <p><code>${this.path}</code> leads nowhere. It may have been mistyped, or be from another version.</p>
      <a class="button main" href="/">All jobs</a>
    </main>`;
  }
}
customElements.define('missing-page', MissingPage);
declare global {
  interface HTMLElementTagNameMap {
    'missing-page': MissingPage;
  }
}
