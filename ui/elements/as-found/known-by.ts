import { html, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from '../fields/field-element.ts';
import type { KnownBy } from './known-by-job.ts';

const choices: readonly { readonly value: KnownBy; readonly words: string }[] = [
  { value: 'seen', words: 'Seen here' },
  { value: 'measured', words: 'Measured' },
  { value: 'assumed', words: 'Told or guessed' },
];

/** What a person goes by in what they enter just then; sends it, and shows nothing chosen until they say. */
export class KnownByField extends FieldElement {
  static override properties: PropertyDeclarations = { value: { attribute: false } };
  declare value: KnownBy | null;

  constructor() {
    super();
    this.label = 'How do you know what you enter now?';
    this.value = null;
  }

  override willUpdate(): void {
    this.help =
      this.value === null
        ? 'Until you say, what you enter is marked as assumed: not seen, and no proof.'
        : 'Marks each fact you enter from now on; each can be marked otherwise beside it.';
  }

  override render(): TemplateResult {
    return html`<fieldset aria-describedby=${this.describedBy}>
      <legend class="label">${this.label}</legend>
      <div class="choices">
        ${choices.map(
          ({ value, words }) =>
            html`<label
              ><input
                type="radio"
                name="known-by"
                value=${value}
                .checked=${live(this.value === value)}
                @change=${(event: Event) => this.#chosen(event, value)}
              />${words}</label
            >`,
        )}
      </div>
      ${this.belowControl()}
    </fieldset>`;
  }

  #chosen(event: Event, value: KnownBy): void {
    event.stopPropagation();
    this.sendChange(value);
  }
}
customElements.define('known-by', KnownByField);
declare global {
  interface HTMLElementTagNameMap {
    'known-by': KnownByField;
  }
}
