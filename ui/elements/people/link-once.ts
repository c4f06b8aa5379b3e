import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { controlsCss } from '../shared-styles.ts';

/** A link that is shown this once, to be copied and passed on. */
export class LinkOnce extends LitElement {
  static override properties: PropertyDeclarations = {
    href: { type: String },
    words: { type: String },
    copied: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin: 10px 0;
        padding: 10px 12px;
        background: var(--pass-wash);
        border-left: 4px solid var(--pass);
      }
      p {
        margin: 0 0 6px;
      }
      code {
        display: block;
        margin-bottom: 8px;
        overflow-wrap: anywhere;
        user-select: all;
      }
    `,
  ];
  declare href: string;
  /** What it is, and until when it goes. */
  declare words: string;
  declare private copied: boolean;

  constructor() {
    super();
    this.href = '';
    this.words = '';
    this.copied = false;
  }

  async #copy(): Promise<void> {
    // Over plain HTTP browsers give no clipboard: the link can be selected as it stands.
    try {
      await navigator.clipboard.writeText(this.href);
      this.copied = true;
    } catch {
      const code = this.renderRoot.querySelector('code');
      if (code !== null) getSelection()?.selectAllChildren(code);
    }
  }

  override render(): TemplateResult {
    return html`<p role="status">${this.words} It is shown this once; whoever has it can use it.</p>
      <code>${this.href}</code>
      <button @click=${() => void this.#copy()}>${this.copied ? 'Copied' : 'Copy the link'}</button>`;
  }
}
customElements.define('link-once', LinkOnce);
declare global {
  interface HTMLElementTagNameMap {
    'link-once': LinkOnce;
  }
}
