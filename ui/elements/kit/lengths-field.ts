import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { EntryField } from '../fields/entry-field.ts';
import { readLengths } from './van-lengths.ts';

/** Unbroken lengths in metres, as "5.5, 3, 3"; sends them as numbers. */
export class LengthsField extends EntryField {
  static override properties: PropertyDeclarations = { value: { type: String } };
  /** The lengths as they are written now. */
  declare value: string;

  constructor() {
    super();
    this.value = '';
  }

  override render(): TemplateResult {
    return html`<label class="label" for="control">${this.label}</label>
      <div class="line">
        <div class="control">
          <input
            id="control"
            inputmode="text"
            autocomplete="off"
            placeholder="5.5, 3"
            aria-describedby=${this.describedBy}
            aria-invalid=${this.error === '' ? nothing : 'true'}
            ?disabled=${this.disabled}
            .value=${live(this.typed ?? this.value)}
            @change=${(event: Event) => this.#changed(event)}
          />
        </div>
      </div>
      ${this.belowControl()}`;
  }

  #changed(event: Event): void {
    event.stopPropagation();
    const typed = (event.target as HTMLInputElement).value;
    const read = readLengths(typed);
    this.hold(read.ok ? null : typed, read.ok ? '' : read.error);
    if (read.ok) this.sendChange(read.lengthsM);
    this.requestUpdate();
  }
}
customElements.define('lengths-field', LengthsField);
declare global {
  interface HTMLElementTagNameMap {
    'lengths-field': LengthsField;
  }
}
