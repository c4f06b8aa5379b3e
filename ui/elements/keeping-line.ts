import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Keeping } from '../job-view.ts';
import { counted } from '../written.ts';
import { listenToUnread, unreadEntries } from './fields/unread-entries.ts';
import { controlsCss } from './shared-styles.ts';

const words: Readonly<Record<Keeping, string>> = {
  kept: 'Saved',
  keeping: 'Saving…',
  'not-kept': 'Not saved',
  'changed-elsewhere': 'Changed elsewhere',
  gone: 'Deleted',
};

/** How far the keeping of the job has got, in two words with a mark; an entry that cannot be read is not kept. */
export class KeepingLine extends LitElement {
  static override properties: PropertyDeclarations = {
    keeping: { type: String, reflect: true },
    here: { type: Boolean, reflect: true },
    unread: { type: Number, reflect: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: inline-flex;
        gap: 6px;
        align-items: center;
        min-width: 74px;
        color: var(--ink-soft);
        font-size: 0.875rem;
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
      :host([unread]:not([unread='0'])) circle {
        fill: none;
        color: var(--fail);
      }
      :host([unread]:not([unread='0'])),
      :host([keeping='not-kept']),
      :host([keeping='changed-elsewhere']),
      :host([keeping='gone']) {
        color: var(--fail);
        font-weight: 600;
      }
      /* Nothing is lost: it waits. */
      :host([here]) {
        color: var(--ink);
      }
    `,
  ];
  declare keeping: Keeping;
  /** True where it is kept on the device, and waits for the connection. */
  declare here: boolean;
  /** How many entries cannot be read. */
  declare private unread: number;
  #endWatch = (): void => {};

  constructor() {
    super();
    this.keeping = 'kept';
    this.here = false;
    this.unread = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    const count = (): void => {
      this.unread = unreadEntries().length;
    };
    count();
    this.#endWatch = listenToUnread(count);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#endWatch();
  }

  get #words(): string {
    const saysUnread = this.unread > 0 && (this.keeping === 'kept' || this.keeping === 'keeping');
    if (this.here && !saysUnread) return 'On this device';
    return saysUnread ? `${counted(this.unread, 'entry', 'entries')} not saved` : words[this.keeping];
  }

  override render(): TemplateResult {
    return html`<svg viewBox="0 0 12 12" aria-hidden="true"><circle cx="6" cy="6" r="4"></circle></svg>
      <span>${this.#words}</span>`;
  }
}
customElements.define('keeping-line', KeepingLine);
declare global {
  interface HTMLElementTagNameMap {
    'keeping-line': KeepingLine;
  }
}
