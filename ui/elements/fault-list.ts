import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Fault } from '#model/fault.ts';
import { type FileKind, isForeign } from '#model/foreign-file.ts';
import { counted } from '../written.ts';
import './outcome-mark.ts';
import { controlsCss } from './shared-styles.ts';

/** Where a file of each kind comes from. */
const origins: Readonly<Record<FileKind, string>> = {
  job: 'Choose one that the step Papers has made: “Job file”, its name ends in job.json. Other programs’ files, drawings and spreadsheets cannot be opened here.',
  library: 'Choose one that this page has made with “Fetch as a file”; its name ends in library.json.',
};

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Why a file cannot be read: every fault with its place and what to do about it. */
export class FaultList extends LitElement {
  static override properties: PropertyDeclarations = {
    name: { type: String },
    faults: { attribute: false },
    kind: { type: String },
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
        font: 500 0.8125rem / 1.4 var(--drawing-font);
        overflow-wrap: anywhere;
      }
    `,
  ];
  /** What the file is called. */
  declare name: string;
  declare faults: readonly Fault[];
  /** What it was opened as. */
  declare kind: FileKind;

  constructor() {
    super();
    this.name = '';
    this.faults = [];
    this.kind = 'job';
  }

  override render(): TemplateResult {
    const { kind, faults } = this;
    return html`<div role="alert">
        <h2><outcome-mark outcome="fails"></outcome-mark>${isForeign(kind, faults) ? this.#foreign() : this.#faulty()}</h2>
        <p>
          ${
            isForeign(kind, faults)
              ? html`${origins[kind]} Nothing was changed.`
              : 'Nothing was saved. Mend the file as said here and open it again.'
          }
        </p>
      </div>
      ${
        isForeign(kind, faults)
          ? html`<details>
              <summary>It is one, changed by hand? What is wrong with it</summary>
              ${this.#list()}
            </details>`
          : this.#list()
      }`;
  }

  #foreign(): string {
    return `This is no Ringwright ${this.kind} file: ${this.name}`;
  }

  #faulty(): string {
    return `${this.name} cannot be opened: ${counted(this.faults.length, 'fault')}`;
  }

  /** What is wrong first, and by its label; its place in the file, for who mends it in an editor, last. */
  #list(): TemplateResult | typeof nothing {
    if (this.faults.length === 0) return nothing;
    return html`<ol tabindex="0" aria-label="Faults">
      ${this.faults.map(
        ({ path, message, remedy }) =>
          html`<li>${capital(message)}. ${remedy}. <span class="hint">In the file: <code>${path}</code></span></li>`,
      )}
    </ol>`;
  }
}
customElements.define('fault-list', FaultList);
declare global {
  interface HTMLElementTagNameMap {
    'fault-list': FaultList;
  }
}
