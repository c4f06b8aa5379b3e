import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { EntryField } from './entry-field.ts';
import { readNumber } from './read-number.ts';

/**
 * A number with its unit; emptied it is null, not known, unless a number is needed. What cannot be is kept as typed, with the reason, and
 * nothing is sent until it is put right.
 */
export class NumberField extends EntryField {
  static override properties: PropertyDeclarations = {
    value: { attribute: false },
    unit: { type: String },
    min: { type: Number },
    max: { type: Number },
    whole: { type: Boolean },
    needed: { type: Boolean },
    bareMetresBelow: { type: Number },
  };
  declare value: number | null | undefined;
  declare unit: string;
  declare min: number | null;
  declare max: number | null;
  declare whole: boolean;
  /** True where nothing at all cannot be meant. */
  declare needed: boolean;
  /** For rooms as a laser measures them: a bare number below this is in metres; null for none. */
  declare bareMetresBelow: number | null;

  constructor() {
    super();
    this.value = null;
    this.unit = '';
    this.min = null;
    this.max = null;
    this.whole = false;
    this.needed = false;
    this.bareMetresBelow = null;
  }

  override render(): TemplateResult {
    const shown = this.typed ?? (this.value === null || this.value === undefined ? '' : String(this.value));
    return html`<label class="label" for="control">${this.label}</label>
      <div class="line">
        <div class="control">
          <input
            id="control"
            inputmode="decimal"
            autocomplete="off"
            aria-describedby=${this.describedBy}
            aria-invalid=${this.error === '' ? nothing : 'true'}
            ?disabled=${this.disabled}
            .value=${live(shown)}
            @change=${(event: Event) => this.#changed(event)}
          />${this.unit === '' ? nothing : html`<span class="unit">${this.unit}</span>`}
        </div>
        ${this.certaintyControl()}
      </div>
      ${this.belowControl()}`;
  }

  #changed(event: Event): void {
    event.stopPropagation();
    const typed = (event.target as HTMLInputElement).value;
    const { min, max, whole, unit, needed, bareMetresBelow } = this;
    const bounds = { min, max, whole, unit, needed, bareMetresBelow, wholePence: unit === '£' };
    const read = readNumber(typed, bounds);
    this.hold(read.ok ? null : typed, read.ok ? '' : read.error);
    if (read.ok && read.value !== (this.value ?? null)) this.sendChange(read.value);
    else this.requestUpdate();
  }
}
customElements.define('number-field', NumberField);
declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
