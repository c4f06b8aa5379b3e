import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { controlsCss } from './shared-styles.ts';

/** How long a line stays on which nothing hangs, ms. */
const BRIEF_MS = 5000;

/**
 * What has just been done, with one way back. It stays until the person has done with it, unless it is brief.
 *
 * @fires toast-action - the way back was taken
 * @fires toast-closed - the line was put away
 */
export class ToastLine extends LitElement {
  static override properties: PropertyDeclarations = {
    words: { type: String },
    action: { type: String },
    brief: { type: Boolean },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        /* In sight wherever the page is scrolled to, with room of its own at its end: what lies under it can be come to. */
        position: sticky;
        bottom: 0;
        z-index: 5;
        display: block;
      }
      div {
        display: flex;
        gap: 12px;
        align-items: center;
        padding: 4px 8px 4px 16px;
        color: var(--block-ink);
        background: var(--block);
        border-top: 1px solid var(--block-soft);
        overflow-wrap: anywhere;
      }
      span {
        flex: 1;
        min-width: 0;
      }
      div:empty {
        display: none;
      }
      button,
      button.quiet {
        flex: none;
        color: var(--block-ink);
        background: none;
        border-color: var(--block-soft);
      }
      button.quiet {
        border-color: transparent;
      }
    `,
  ];
  /** Empty: nothing is shown. */
  declare words: string;
  /** The way back in words; empty where there is none. */
  declare action: string;
  /** True when it may go by itself, as nothing hangs on it. */
  declare brief: boolean;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.brief = false;
    this.words = '';
    this.action = '';
  }

  /** Moves the focus to the way back, for when what was left had the focus. */
  async focusAction(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector('button')?.focus();
  }

  override updated(): void {
    clearTimeout(this.#timer);
    if (this.brief && this.words !== '') this.#timer = setTimeout(() => this.#tell('toast-closed'), BRIEF_MS);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  override render(): TemplateResult {
    return html`<div role="status">${this.words === '' ? nothing : this.#line()}</div>`;
  }

  #line(): TemplateResult {
    return html`<span>${this.words}</span>${
      this.action === ''
        ? nothing
        : html`<button @click=${() => this.#tell('toast-action')}>${this.action}</button>`
    }<button class="quiet" aria-label="Close this message" @click=${() => this.#tell('toast-closed')}>Close</button>`;
  }

  #tell(name: 'toast-action' | 'toast-closed'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }));
  }
}
customElements.define('toast-line', ToastLine);
declare global {
  interface HTMLElementTagNameMap {
    'toast-line': ToastLine;
  }
  interface HTMLElementEventMap {
    'toast-action': CustomEvent;
    'toast-closed': CustomEvent;
  }
}
