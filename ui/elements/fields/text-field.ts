import { html, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from './field-element.ts';

/** A line of text, or several; sends what was typed when the person leaves the field or presses Enter. */
export class TextField extends FieldElement {
  static override properties: PropertyDeclarations = {
    value: { type: String },
    multiline: { type: Boolean },
    kind: { type: String },
  };
  declare value: string;
  declare multiline: boolean;
  /** `text` or `date` (ISO). */
  declare kind: 'text' | 'date';

  constructor() {
    super();
    this.value = '';
    this.multiline = false;
    this.kind = 'text';
  }

  override render(): TemplateResult {
    return html`<label class="label" for="control">${this.label}</label>
      <div class="line"><div class="control">${this.#control()}</div>${this.certaintyControl()}</div>
      ${this.belowControl()}`;
  }

  #control(): TemplateResult {
    return this.multiline
      ? html`<textarea
          id="control"
          aria-describedby=${this.describedBy}
          ?disabled=${this.disabled}
          .value=${live(this.value)}
          @change=${(event: Event) => this.#changed(event)}
        ></textarea>`
      : html`<input
          id="control"
          type=${this.kind}
          autocomplete="off"
          aria-describedby=${this.describedBy}
          ?disabled=${this.disabled}
          .value=${live(this.value)}
          @change=${(event: Event) => this.#changed(event)}
        />`;
  }

  #changed(event: Event): void {
    event.stopPropagation();
    this.sendChange((event.target as HTMLInputElement | HTMLTextAreaElement).value);
  }
}
customElements.define('text-field', TextField);
declare global {
  interface HTMLElementTagNameMap {
    'text-field': TextField;
  }
}
