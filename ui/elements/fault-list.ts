import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Fault } from '#model/fault.ts';
import { type FileKind, isForeign } from '#model/foreign-file.ts';
import { counted } from '../written.ts';
import './outcome-mark.ts';
import { plainFault } from './plain-fault.ts';
import { controlsCss } from './shared-styles.ts';

/** Most faults that are told in plain words: a file with more is not mended by hand. */
const MOST_TOLD = 12;

/** What to do about a file that is damaged. */
const waysOut: Readonly<Record<FileKind, string>> = {
  job: 'Fetch it anew: open the job where it was made, step Papers, “Job file”, and open that file here.',
  library: 'Fetch it anew: “Fetch as a file” on this page, where it was made, and take that file in.',
};

/** Where a file of each kind comes from. */
const origins: Readonly<Record<FileKind, string>> = {
  job: 'Choose one that the step Papers has made: “Job file”, its name ends in job.json. Other programs’ files, drawings and spreadsheets cannot be opened here.',
  library: 'Choose one that this page has made with “Fetch as a file”; its name ends in library.json.',
};

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Why a file cannot be read: which one, where in it, what to do; the file's own language folded away below. */
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
      .where {
        margin-bottom: 0;
      }
      ol,
      ul {
        display: grid;
        gap: 8px;
        max-height: 40vh;
        margin: 10px 0 0;
        padding-left: 22px;
        overflow-y: auto;
      }
      code {
        font: 500 0.875rem / 1.4 var(--drawing-font);
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
        <p>${isForeign(kind, faults) ? origins[kind] : waysOut[kind]} Nothing was changed.</p>
      </div>
      ${isForeign(kind, faults) ? nothing : this.#plainList()}
      <details>
        <summary>
          ${
            isForeign(kind, faults)
              ? 'It is one, changed by hand? What is wrong with it'
              : 'For whoever mends the file in an editor'
          }
        </summary>
        ${this.#list()}
      </details>`;
  }

  #plainList(): TemplateResult {
    const told = this.faults.slice(0, MOST_TOLD).map(plainFault);
    const more = this.faults.length - told.length;
    return html`<p class="where">Where it is damaged:</p>
      <ul>
        ${told.map(({ place, what }) => html`<li><strong>${place}</strong>: ${what}.</li>`)}
        ${more > 0 ? html`<li>and in ${counted(more, 'more place')}.</li>` : nothing}
      </ul>`;
  }

  #foreign(): string {
    return `This is no Ringwright ${this.kind} file: ${this.name}`;
  }

  #faulty(): string {
    return `The file ${this.name} is damaged and cannot be opened`;
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
