import { html, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from './field-element.ts';

const answers = [
  { value: true, words: 'Yes' },
  { value: false, words: 'No' },
  { value: null, words: 'Not known' },
] as const;

/** Yes, no or not known; sends true, false or null. */
export class YesNoField extends FieldElement {
  static override properties: PropertyDeclarations = {
    value: { attribute: false },
    unknown: { attribute: false },
  };
  declare value: boolean | null | undefined;
  /** False where it must be yes or no. */
  declare unknown: boolean;

  constructor() {
    super();
    this.value = null;
    this.unknown = true;
  }

  override render(): TemplateResult {
    const offered = answers.filter((answer) => this.unknown || answer.value !== null);
    return html`<fieldset aria-describedby=${this.describedBy} ?disabled=${this.disabled}>
      <legend class="label">${this.label}</legend>
      <div class="line">
        <div class="control choices">
          ${offered.map(
            ({ value, words }) =>
              html`<label
                ><input
                  type="radio"
                  name="answer"
                  .checked=${live((this.value ?? null) === value)}
                  @change=${(event: Event) => this.#chosen(event, value)}
                />${words}</label
              >`,
          )}
        </div>
        ${this.certaintyControl()}
      </div>
      ${this.belowControl()}
    </fieldset>`;
  }

  #chosen(event: Event, value: boolean | null): void {
    event.stopPropagation();
    this.sendChange(value);
  }
}
customElements.define('yes-no-field', YesNoField);
declare global {
  interface HTMLElementTagNameMap {
    'yes-no-field': YesNoField;
  }
}
