import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { shoppingRows } from '#drawing/shopping/shopping-rows.ts';
import type { ShoppingSheet } from '#drawing/shopping/shopping-sheet.ts';
import { merchantText, shoppingText } from '#drawing/shopping/shopping-text.ts';
import { csvText } from '#engine/price/list/csv-text.ts';
import { fetchAsFile } from '../../fetch-as-file.ts';
import { controlsCss } from '../shared-styles.ts';

/** The ways in which the shopping list leaves the screen: as a message to a merchant, as files, on paper. None needs a connection. */
export class ShoppingOut extends LitElement {
  static override properties: PropertyDeclarations = {
    sheet: { attribute: false },
    had: { attribute: false },
    said: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 4px 0 12px;
      }
      h3 {
        margin-top: 10px;
      }
      p {
        margin: 0 0 4px;
      }
    `,
  ];
  declare sheet: ShoppingSheet;
  /** Keys of what is ticked already: a merchant is not asked for it again. */
  declare had: ReadonlySet<string>;
  declare private said: string;

  constructor() {
    super();
    this.had = new Set();
    this.said = '';
  }

  override render(): TemplateResult {
    const message = merchantText(this.sheet, this.had);
    return html`<h3>Send to a merchant</h3>
      <p class="hint">What is still to be bought, by your reference: nothing of the customer or of prices.</p>
      <div class="tools">
        ${
          typeof navigator.share === 'function'
            ? html`<button ?disabled=${message === ''} @click=${() => this.#share(message)}>Share</button>`
            : nothing
        }
        <button ?disabled=${message === ''} @click=${() => this.#copy(message)}>Copy</button>
      </div>
      <h3>The whole list</h3>
      <div class="tools">
        <button @click=${() => print()}>Print</button>
        <button @click=${() => fetchAsFile(this.#named('shopping.txt'), shoppingText(this.sheet), 'text/plain')}>
          Fetch as text
        </button>
        <button @click=${() => fetchAsFile(this.#named('shopping.csv'), csvText(shoppingRows(this.sheet)), 'text/csv')}>
          Fetch as CSV
        </button>
      </div>
      <p role="status">${this.said}</p>`;
  }

  /** The lists of several jobs lie side by side on one device. */
  #named(name: string): string {
    return `${this.sheet.reference} ${name}`.replace(/[^\p{L}\p{N}.]+/gu, '-').replace(/^-/, '');
  }

  async #share(text: string): Promise<void> {
    try {
      await navigator.share({ text });
      this.said = '';
    } catch (error) {
      // Who closes the sheet of their device has not been let down.
      if (!(error instanceof DOMException && error.name === 'AbortError'))
        this.said = 'This device would not share it: copy it, or fetch it as text.';
    }
  }

  async #copy(text: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(text);
      this.said = 'Copied: paste it into a message.';
    } catch {
      // Browsers let no page copy that came without HTTPS.
      fetchAsFile(this.#named('to-collect.txt'), text, 'text/plain');
      this.said = 'This browser lets a page copy over HTTPS only: it is fetched as a file instead.';
    }
  }
}
customElements.define('shopping-out', ShoppingOut);
declare global {
  interface HTMLElementTagNameMap {
    'shopping-out': ShoppingOut;
  }
}
