import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from './field-element.ts';
import { readNumber } from './read-number.ts';
import { holdUnread, releaseUnread } from './unread-entries.ts';

/**
 * A number with its unit; emptied it is null, not known, unless a number is needed. What cannot be is kept as typed, with the reason, and
 * nothing is sent until it is put right.
 *
 * @fires entry-unread - detail: { unread }; an entry cannot be read, or no longer is one that cannot
 */
export class NumberField extends FieldElement {
  static override properties: PropertyDeclarations = {
    value: { attribute: false },
    unit: { type: String },
    min: { type: Number },
    max: { type: Number },
    whole: { type: Boolean },
    needed: { type: Boolean },
    bareMetresBelow: { type: Number },
    typed: { state: true },
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
  /** A faulty entry as typed, until it is mended; else null. */
  declare private typed: string | null;

  constructor() {
    super();
    this.value = null;
    this.unit = '';
    this.min = null;
    this.max = null;
    this.whole = false;
    this.needed = false;
    this.bareMetresBelow = null;
    this.typed = null;
  }

  /** Another value came from the job: what was typed and could not be is of the past. */
  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('value') || !this.hasUpdated) return;
    this.#hold(null, '');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.typed !== null) this.#tellUnread(this.typed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    releaseUnread(this);
  }

  /** True while it holds an entry that cannot be read. */
  get isUnread(): boolean {
    return this.typed !== null;
  }

  /** Keeps a faulty entry with its reason, or (null) has none any more. */
  #hold(typed: string | null, error: string): void {
    const changed = (typed === null) !== (this.typed === null);
    this.typed = typed;
    this.error = error;
    if (typed !== null) this.#tellUnread(typed);
    else releaseUnread(this);
    if (changed)
      this.dispatchEvent(
        new CustomEvent('entry-unread', {
          detail: { unread: typed !== null },
          bubbles: true,
          composed: true,
        }),
      );
  }

  #tellUnread(typed: string): void {
    holdUnread({ field: this, label: this.label, typed });
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
    this.#hold(read.ok ? null : typed, read.ok ? '' : read.error);
    if (read.ok && read.value !== (this.value ?? null)) this.sendChange(read.value);
    else this.requestUpdate();
  }
}
customElements.define('number-field', NumberField);
declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
  interface HTMLElementEventMap {
    'entry-unread': CustomEvent<{ readonly unread: boolean }>;
  }
}
