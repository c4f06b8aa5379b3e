import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { SoldSizes } from '#model/library.ts';
import { setSold } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/tick-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { ownFoldCss } from './own-fold.ts';
import { boughtOf, boughtWith, isOnlyOne, type SoldRow, soldRows } from './sold-rows.ts';

/** Which of the sizes that merchants sell the firm buys. */
export class OwnSold extends LitElement {
  static override properties: PropertyDeclarations = { sold: { attribute: false } };
  static override styles = [
    controlsCss,
    ownFoldCss,
    css`
      fieldset {
        margin: 0 0 12px;
        padding: 0;
        border: 0;
      }
      legend {
        padding: 0;
        font-weight: 600;
      }
      .sizes {
        display: flex;
        flex-wrap: wrap;
        gap: 0 20px;
      }
    `,
  ];
  declare sold: SoldSizes;

  override render(): TemplateResult {
    const own = soldRows.filter(({ family }) => this.sold[family] !== undefined).length;
    return html`<details>
      <summary>
        <span>Sizes that you buy</span
        ><span class="soft">${own === 0 ? 'all usual' : `${own} of ${soldRows.length} your own`}</span>
      </summary>
      <p class="hint">
        Counted is the smallest of these that serves. What merchants sell is from memory: leave out what yours do not have. One of each has to stay.
      </p>
      ${soldRows.map((row) => this.#family(row))}
    </details>`;
  }

  #family(row: SoldRow): TemplateResult {
    const bought = boughtOf(row, this.sold);
    return html`<fieldset>
      <legend>${row.label}</legend>
      <div class="sizes">
        ${row.sizes.map(
          (size) =>
            html`<tick-field
              .label=${`${size} ${row.unit}`}
              .value=${bought.includes(size)}
              .disabled=${isOnlyOne(row, this.sold, size)}
              @field-change=${(event: CustomEvent<FieldChange<boolean>>) => this.#tick(row, size, event.detail.value)}
            ></tick-field>`,
        )}
      </div>
    </fieldset>`;
  }

  #tick(row: SoldRow, size: number, isBought: boolean): void {
    sendLibraryEdit(this, setSold(row.family, boughtWith(row, this.sold, { size, isBought })));
  }
}
customElements.define('own-sold', OwnSold);
declare global {
  interface HTMLElementTagNameMap {
    'own-sold': OwnSold;
  }
}
