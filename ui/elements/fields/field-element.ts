import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import type { Certainty } from '#model/primitives.ts';
import { mayChange } from '../../rights.ts';
import { controlsCss } from '../shared-styles.ts';
import { fieldCss } from './field-styles.ts';

/** How sure a fact is, in the words of the survey. */
const certaintyWords: Readonly<Record<Certainty, string>> = {
  seen: 'seen',
  measured: 'measured',
  assumed: 'assumed',
  unknown: 'unknown',
};

/** What a field sends when a person has settled on a value. */
export interface FieldChange<V> {
  readonly value: V;
}

/**
 * What the fields share: a label, help, an error of their own, and how sure the fact is.
 * A field keeps no value; it shows the one it is given and sends the one it is told.
 *
 * @fires field-change - detail: { value }
 * @fires certainty-change - detail: { certainty }
 */
export abstract class FieldElement extends LitElement {
  static override properties: PropertyDeclarations = {
    label: { type: String },
    help: { type: String },
    certainty: { attribute: false },
    disabled: { type: Boolean },
    error: { state: true },
  };
  static override styles = [controlsCss, fieldCss];
  declare label: string;
  declare help: string;
  /** Null or absent: this value has no certainty to show. */
  declare certainty: Certainty | null | undefined;
  declare disabled: boolean;
  declare protected error: string;

  constructor() {
    super();
    this.label = '';
    this.help = '';
    this.certainty = null;
    this.disabled = false;
    this.error = '';
  }

  override willUpdate(_changed: PropertyValues): void {
    if (!mayChange()) this.disabled = true;
  }

  /** Goes to the control, past what stands before it. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('input, select, textarea')?.focus(options);
  }

  protected sendChange<V>(value: V): void {
    const detail: FieldChange<V> = { value };
    this.dispatchEvent(new CustomEvent('field-change', { detail, bubbles: true, composed: true }));
  }

  /** Ids of what describes the control, for `aria-describedby`. */
  protected get describedBy(): string | typeof nothing {
    const ids = [this.help === '' ? '' : 'help', this.error === '' ? '' : 'error'].filter((id) => id !== '');
    return ids.length === 0 ? nothing : ids.join(' ');
  }

  protected belowControl(): TemplateResult {
    return html`${this.error === '' ? nothing : html`<p class="error" id="error" role="alert">${this.error}</p>`}
      ${this.help === '' ? nothing : html`<p class="help" id="help">${this.help}</p>`}`;
  }

  protected certaintyControl(): TemplateResult | typeof nothing {
    if (this.certainty === null || this.certainty === undefined) return nothing;
    const now = this.certainty;
    return html`<select
      class="certainty"
      aria-label=${`How sure: ${this.label}`}
      ?disabled=${this.disabled}
      @change=${(event: Event) => this.#certaintyChosen(event)}
    >
      ${Object.entries(certaintyWords).map(
        ([value, words]) => html`<option value=${value} .selected=${live(value === now)}>${words}</option>`,
      )}
    </select>`;
  }

  #certaintyChosen(event: Event): void {
    event.stopPropagation();
    const chosen = (event.target as HTMLSelectElement).value;
    this.dispatchEvent(
      new CustomEvent('certainty-change', { detail: { certainty: chosen }, bubbles: true, composed: true }),
    );
  }
}
