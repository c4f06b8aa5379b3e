import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Fault } from '#model/fault.ts';
import type { Library } from '#model/library.ts';
import { readLibraryText } from '#model/read-library.ts';
import { libraryText, takeLibraryIn } from '../../edits/library-file.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import '../fault-list.ts';
import { fetchAsFile } from '../../fetch-as-file.ts';
import { controlsCss } from '../shared-styles.ts';

/** The firm's library as a file: fetched as it stands, and taken in again, which is one step back by undo. */
export class LibraryFile extends LitElement {
  static override properties: PropertyDeclarations = {
    library: { attribute: false },
    refused: { state: true },
    taken: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 8px 0;
      }
    `,
  ];
  declare library: Library;
  /** A file that could not be read, with its faults. */
  declare private refused: { readonly name: string; readonly faults: readonly Fault[] } | null;
  /** The file that was taken in last; empty before. */
  declare private taken: string;

  constructor() {
    super();
    this.refused = null;
    this.taken = '';
  }

  #fetch(): void {
    fetchAsFile('firm-library.json', libraryText(this.library), 'application/json');
  }

  async #picked(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file === undefined) return;
    const read = readLibraryText(await file.text());
    // The same file may be opened again once it was mended.
    input.value = '';
    this.refused = read.ok ? null : { name: file.name, faults: read.faults };
    this.taken = read.ok ? file.name : '';
    if (read.ok) sendLibraryEdit(this, takeLibraryIn(read.library, file.name));
  }

  override render(): TemplateResult {
    return html`<h2>As a file</h2>
      <p class="hint">
        All of this page in one file: to keep, to carry to another computer, or for the command that estimates without a
        browser (--library).
      </p>
      <div class="buttons">
        <button @click=${() => this.#fetch()}>Fetch as a file</button>
        <button @click=${() => this.renderRoot.querySelector('input')?.click()}>Take in a file</button>
        <input
          type="file"
          accept=".json,application/json"
          tabindex="-1"
          aria-hidden="true"
          class="visually-hidden"
          @change=${(event: Event) => void this.#picked(event)}
        />
      </div>
      <p role="status">
        ${this.taken === '' ? nothing : html`${this.taken} is taken in, in the place of what was here. Undo takes it back.`}
      </p>
      ${
        this.refused === null
          ? nothing
          : html`<fault-list kind="library" .name=${this.refused.name} .faults=${this.refused.faults}></fault-list>`
      }`;
  }
}
customElements.define('library-file', LibraryFile);
declare global {
  interface HTMLElementTagNameMap {
    'library-file': LibraryFile;
  }
}
