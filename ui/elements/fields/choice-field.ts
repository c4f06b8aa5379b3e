import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { FieldElement } from './field-element.ts';

/** One of a choice, as people read it. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  /** What it is one of, where the choices are many: the heading that it stands under with those beside it. */
  readonly group?: string;
  /** Why it cannot be chosen; absent where it can. */
  readonly notPossible?: string;
}

/** One of several words, by the platform's own list; sends null for the empty choice. */
export class ChoiceField extends FieldElement {
  static override properties: PropertyDeclarations = {
    value: { attribute: false },
    options: { attribute: false },
    empty: { attribute: false },
  };
  declare value: string | null | undefined;
  declare options: readonly Choice[];
  /** The empty choice's words; null where something must be chosen. */
  declare empty: string | null;

  constructor() {
    super();
    this.value = null;
    this.options = [];
    this.empty = 'Not known';
  }

  override render(): TemplateResult {
    return html`<label class="label" for="control">${this.label}</label>
      <div class="line">
        <div class="control">
          <select
            id="control"
            aria-describedby=${this.describedBy}
            ?disabled=${this.disabled}
            @change=${(event: Event) => this.#changed(event)}
          >
            ${this.#emptyOption()}${this.#groups().map(([group, options]) => this.#group(group, options))}
          </select>
        </div>
        ${this.certaintyControl()}
      </div>
      ${this.belowControl()}`;
  }

  get #now(): string {
    return this.value ?? '';
  }

  #emptyOption(): TemplateResult | typeof nothing {
    const known = this.options.some((option) => option.value === this.#now);
    if (this.empty === null && known) return nothing;
    return html`<option value="" .selected=${live(!known)} ?disabled=${this.empty === null}>
      ${this.empty ?? 'Choose…'}
    </option>`;
  }

  /** Choices that follow each other under one heading, with it; '' for those under none. */
  #groups(): readonly (readonly [group: string, options: readonly Choice[]])[] {
    const groups: [string, Choice[]][] = [];
    for (const option of this.options) {
      const { group = '' } = option;
      const last = groups.at(-1);
      if (last?.[0] === group) last[1].push(option);
      else groups.push([group, [option]]);
    }
    return groups;
  }

  #group(group: string, options: readonly Choice[]): TemplateResult {
    const shown = options.map((option) => this.#option(option));
    return group === '' ? html`${shown}` : html`<optgroup label=${group}>${shown}</optgroup>`;
  }

  #option({ value, label, notPossible }: Choice): TemplateResult {
    return html`<option value=${value} .selected=${live(value === this.#now)} ?disabled=${notPossible !== undefined}>
      ${label}${notPossible === undefined ? nothing : `: ${notPossible}`}
    </option>`;
  }

  #changed(event: Event): void {
    event.stopPropagation();
    const chosen = (event.target as HTMLSelectElement).value;
    this.sendChange(chosen === '' ? null : chosen);
    // The job decides: shown again from the value that comes back, also where the change was refused.
    this.requestUpdate();
  }
}
customElements.define('choice-field', ChoiceField);
declare global {
  interface HTMLElementTagNameMap {
    'choice-field': ChoiceField;
  }
}
