import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Counts } from '#model/library.ts';
import { setCount } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/choice-field.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { type CountRow, countGroups, usualWords } from './count-rows.ts';
import { firmGridCss } from './firm-grid.ts';
import { ownFold, ownFoldCss } from './own-fold.ts';

/** Lengths and counts by the firm's habit, which no drawing tells. */
export class OwnCounts extends LitElement {
  static override properties: PropertyDeclarations = { counts: { attribute: false } };
  static override styles = [
    controlsCss,
    firmGridCss,
    ownFoldCss,
    css`
      h2 {
        margin-top: 24px;
      }
    `,
  ];
  declare counts: Counts;

  override render(): TemplateResult {
    return html`<h2>Own lengths and counts</h2>
      <p class="hint">
        What no drawing tells. The usual figures are common practice, from memory, and of no published source: put your own
        in their place.
      </p>
      ${countGroups.map(({ title, rows }) =>
        ownFold(
          title,
          rows.map((row) => this.#count(row)),
          rows.filter(({ key }) => this.counts[key] !== undefined).length,
        ),
      )}`;
  }

  #size({ key, label, usual, unit }: CountRow, sizes: readonly number[]): TemplateResult {
    const size = (mm: number): string => `${mm} ${unit}`;
    const own = this.counts[key];
    return html`<choice-field
      .label=${label}
      .value=${own === undefined ? null : String(own)}
      .options=${sizes.map((mm) => ({ value: String(mm), label: size(mm) }))}
      .empty=${`${size(usual)}, from memory`}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        const { value } = event.detail;
        sendLibraryEdit(this, setCount(key, value === null ? null : Number(value)));
      }}
    ></choice-field>`;
  }

  #count(row: CountRow): TemplateResult {
    const { key, label, unit, min, max, whole, sizes } = row;
    if (sizes !== undefined) return this.#size(row, sizes);
    return html`<number-field
      .label=${label}
      .unit=${unit}
      .help=${usualWords(row)}
      .value=${this.counts[key] ?? null}
      .min=${min}
      .max=${max}
      .whole=${whole}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setCount(key, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('own-counts', OwnCounts);
declare global {
  interface HTMLElementTagNameMap {
    'own-counts': OwnCounts;
  }
}
