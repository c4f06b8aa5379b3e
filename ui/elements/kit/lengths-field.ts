import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from '../fields/field-element.ts';
import { holdUnread, releaseUnread } from '../fields/unread-entries.ts';
import { readLengths } from './van-lengths.ts';

/**
 * Unbroken lengths in metres, as "5.5, 3, 3"; sends them as numbers. What cannot be read is kept as typed, with the reason, and
 * nothing is sent until it is put right.
 */
export class LengthsField extends FieldElement {
  static override properties: PropertyDeclarations = { value: { type: String }, typed: { state: true } };
  /** The lengths as they are written now. */
  declare value: string;
  /** A faulty entry as typed, until it is mended; else null. */
  declare private typed: string | null;

  constructor() {
    super();
    this.value = '';
    this.typed = null;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value') && this.hasUpdated) this.#hold(null, '');
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    releaseUnread(this);
  }

  #hold(typed: string | null, error: string): void {
    this.typed = typed;
    this.error = error;
    if (typed === null) releaseUnread(this);
    else holdUnread({ field: this, label: this.label, typed });
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
    this.#hold(read.ok ? null : typed, read.ok ? '' : read.error);
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
