import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { priceListCsv } from '#engine/price/list/own-list.ts';
import { STALE_DAYS, staleDaysOf, staleItems } from '#engine/price/list/stale.ts';
import type { Prices } from '#model/library.ts';
import { setStaleDays } from '../../edits/price-import.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { counted } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../outcome-mark.ts';
import { fetchAsFile } from '../../fetch-as-file.ts';
import { controlsCss } from '../shared-styles.ts';

/**
 * How many prices are too old, after how many days they count so, and the list as a file.
 *
 * @fires price-book-wanted - the list as a workbook is wanted from the server
 */
export class OldPrices extends LitElement {
  static override properties: PropertyDeclarations = {
    prices: { attribute: false },
    today: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin: 8px 0 12px;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 16px;
        align-items: end;
      }
      number-field {
        width: 14rem;
      }
      .old {
        display: flex;
        gap: 8px;
        align-items: center;
        padding: 6px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  declare prices: Prices;
  /** Today by the calendar, ISO. */
  declare today: string;

  #fetch(): void {
    fetchAsFile('price-list.csv', priceListCsv(this.prices), 'text/csv');
  }

  override render(): TemplateResult {
    const { prices, today } = this;
    const old = staleItems(prices, today);
    return html`${
      old.size === 0
        ? nothing
        : html`<p class="old">
              <outcome-mark outcome="advice"></outcome-mark
              ><span
                >${counted(old.size, 'price is', 'prices are')} more than ${staleDaysOf(prices)} days old; the oldest is of
                ${Math.max(...old.values())} days ago.</span
              >
            </p>`
    }
      <div class="row">
        <number-field
          label="A price counts as old after"
          unit="days"
          whole
          .value=${prices.staleDays ?? null}
          help=${`Empty: ${STALE_DAYS}`}
          .min=${1}
          .max=${10_000}
          @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setStaleDays(event.detail.value))}
        ></number-field>
        <button @click=${() => this.#fetch()}>Fetch the list as CSV</button>
        <button
          @click=${() => this.dispatchEvent(new CustomEvent('price-book-wanted', { bubbles: true, composed: true }))}
        >
          Fetch it as XLSX
        </button>
      </div>`;
  }
}
customElements.define('old-prices', OldPrices);
declare global {
  interface HTMLElementTagNameMap {
    'old-prices': OldPrices;
  }
  interface HTMLElementEventMap {
    'price-book-wanted': CustomEvent<null>;
  }
}
