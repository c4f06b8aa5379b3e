import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import type { PointKind } from '#model/installation.ts';
import type { OwnHeights } from '#model/library.ts';
import { setFirmHeight } from '../../edits/firm.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { pointKinds } from '../as-found/found-words.ts';
import { firstHeightMm } from '../as-found/usual-heights.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';

/** A joint has no plate: it lies where its cables meet. */
const withPlates = pointKinds.filter(({ value }) => value !== 'joint');

/** How high the firm fits plates, by kind: where a point that is placed begins. */
export class OwnHeightsForm extends LitElement {
  static override properties: PropertyDeclarations = { heights: { attribute: false } };
  static override styles = [
    controlsCss,
    firmGridCss,
    css`
      h2 {
        margin-top: 24px;
      }
    `,
  ];
  declare heights: OwnHeights;

  override render(): TemplateResult {
    return html`<h2>Usual heights</h2>
      <p class="hint">
        From the floor to the middle of the plate: where a point begins that is put on the plan. The usual figures are common
        practice; the building regulations ask more of new dwellings than of old ones, so go by what applies to the house.
      </p>
      <div class="grid">${withPlates.map(({ value }) => this.#height(value))}</div>`;
  }

  #height(kind: PointKind): TemplateResult {
    return html`<number-field
      .label=${pointKindWords[kind]}
      unit="mm"
      .help=${`Empty: ${firstHeightMm(kind)}`}
      .value=${this.heights[kind] ?? null}
      .min=${0}
      .max=${20_000}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setFirmHeight(kind, event.detail.value))}
    ></number-field>`;
  }
}
customElements.define('own-heights', OwnHeightsForm);
declare global {
  interface HTMLElementTagNameMap {
    'own-heights': OwnHeightsForm;
  }
}
