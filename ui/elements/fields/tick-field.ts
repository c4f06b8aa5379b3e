import { html, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from './field-element.ts';

/** A box to tick; sends true or false. */
export class TickField extends FieldElement {
  static override properties: PropertyDeclarations = { value: { type: Boolean } };
  declare value: boolean;

  constructor() {
    super();
    this.value = false;
  }

  override render(): TemplateResult {
    return html`<div class="line">
        <label class="tick control"
          ><input
            type="checkbox"
            aria-describedby=${this.describedBy}
            ?disabled=${this.disabled}
            .checked=${live(this.value)}
            @change=${(event: Event) => this.#changed(event)}
          />${this.label}</label
        >
        ${this.certaintyControl()}
      </div>
      ${this.belowControl()}`;
  }

  #changed(event: Event): void {
    event.stopPropagation();
    this.sendChange((event.target as HTMLInputElement).checked);
  }
}
customElements.define('tick-field', TickField);
declare global {
  interface HTMLElementTagNameMap {
    'tick-field': TickField;
  }
}
