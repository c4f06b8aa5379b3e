import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { entriesOf } from '#drawing/shopping/shopping-sheet.ts';
import { demoShare } from '#engine/demo-marks.ts';
import { isCutToLength } from '#engine/price/buying/line-for-all.ts';
import type { PurchasePlan } from '#engine/price/buying/purchase.ts';
import { EXTRA_GROUP } from '#engine/price/extra-bill.ts';
import { staleDaysOf, staleItems } from '#engine/price/list/stale.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import type { BillLine } from '#engine/price/totals.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Prices } from '#model/library.ts';
import { setStock, setStockLengths } from '../../edits/stock.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { areLit } from '../../lit-things.ts';
import { counted, dayWords, pounds } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { billGroups } from './bill-groups.ts';
import { type AskedFor, boughtWords, quantityWritten } from './bought-words.ts';
import './lengths-field.ts';
import { lengthsWritten } from './van-lengths.ts';

/**
 * The bill of a scheme: everything that has to be in the van, what of it is there already, what to buy, what it costs.
 * A line tapped lights on the plan what it is for.
 *
 * @fires job-edit, things-lit
 */
export class KitBill extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        container-type: inline-size;
      }
      h3 {
        margin: 18px 0 4px;
      }
      /* Every group of the bill has its figures in the same columns. */
      table {
        table-layout: fixed;
      }
      th {
        width: 4.125rem;
      }
      th:first-child {
        width: auto;
      }
      th.buy {
        width: 7rem;
      }
      th.stock,
      td.stock {
        width: 5rem;
      }
      td.buy {
        white-space: normal;
      }
      td small {
        display: block;
        font-size: 0.875rem;
        color: var(--ink-soft);
        white-space: normal;
      }
      td small.old {
        color: var(--ask);
      }
      .demo {
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      .line {
        width: 100%;
        min-height: 36px;
        padding: 4px 6px;
        font-weight: 400;
        text-align: left;
        justify-content: flex-start;
        border-color: transparent;
        background: none;
      }
      td {
        padding: 3px 6px;
      }
      td.number {
        padding-top: 10px;
      }
      /* What was tapped here stands out by a rule and by weight; its row and that of its causes are one block. */
      tr.lit > td {
        background: var(--copper-wash);
      }
      tr.lit > td:first-child {
        box-shadow: inset 4px 0 0 var(--copper);
      }
      tr.lit > td.number,
      tr.lit .line {
        font-weight: 600;
      }
      tr.lit .line {
        color: var(--ink);
        background: none;
        border-color: transparent;
      }
      tr.lit > td.causes {
        padding: 0 6px 8px 12px;
        color: var(--ink);
        font-size: 0.875rem;
        border-top: 0;
      }
      tfoot td {
        font-weight: 600;
        border-top: 1px solid var(--ink);
        padding-top: 8px;
      }
      @media (pointer: coarse) {
        .line {
          min-height: 44px;
        }
      }
      /* Where its column is narrow, be it a phone's or a small window's. */
      @container (max-width: 30rem) {
        .line {
          min-height: 44px;
        }
        /* A line of the bill over two rows: its name, then its figures with their words. */
        table,
        tbody,
        tfoot {
          display: block;
        }
        thead {
          display: none;
        }
        tr {
          display: grid;
          grid-template-columns: minmax(0, 1fr) 5.75rem minmax(0, 1.2fr) minmax(0, 1fr);
          align-items: end;
          border-top: 1px solid var(--rule);
        }
        td,
        td.number,
        td.stock {
          width: auto;
          padding: 2px 6px 6px;
          text-align: left;
          white-space: normal;
          border: 0;
        }
        td[data-words='Needed'] {
          padding-left: 12px;
        }
        td:first-child {
          grid-column: 1 / -1;
          padding-bottom: 0;
        }
        tr.lit {
          box-shadow: inset 4px 0 0 var(--copper);
          background: var(--copper-wash);
        }
        tr.lit > td,
        tr.lit > td:first-child {
          background: none;
          box-shadow: none;
        }
        tr.lit + tr.lit {
          border-top: 0;
        }
        td[data-words]::before {
          display: block;
          font-size: 0.875rem;
          color: var(--ink-soft);
          content: attr(data-words);
        }
        tfoot td:first-child {
          grid-column: 1 / 4;
        }
      }
    `,
  ];
  declare view: JobView;
  declare scheme: SchemeEstimate;
  #known: {
    readonly prices: Prices;
    readonly date: string;
    readonly ages: ReadonlyMap<string, number>;
  } | null = null;

  #list: {
    readonly purchase: PurchasePlan;
    readonly prices: Prices;
    readonly asked: ReadonlyMap<string, AskedFor>;
  } | null = null;

  override render(): TemplateResult {
    const { scheme } = this;
    const labelOf = labelsOf(scheme.worked);
    const { bill } = scheme.price;
    return html`<p class="hint">
        ${counted(bill.length, 'line')}. Tap one to light what it is for. <em>to</em> says how much it may come to while things are assumed or not looked at. What the van holds is taken off what is
        bought, not off the price. What to buy is as on the shopping list; whether the job is charged the pack or what it uses of
        one is set on the <a href="/firm?part=prices">price list</a>. Costs are before mark-up and VAT; prices:
        ${this.view.library.prices.source},
        ${dayWords(this.view.library.prices.date)}.
      </p>
      ${this.#demoLines(scheme)} ${this.#oldLines(scheme)}
      ${billGroups.map(([group, words]) => this.#group(scheme, group, words, labelOf))}
      <table>
        <tfoot>
          <tr>
            <td>Materials at cost</td>
            <td class="number">${pounds(scheme.price.materialsCostPence)}</td>
          </tr>
        </tfoot>
      </table>`;
  }

  /** What the shopping list asks for by item, out of the van or not; worked out once for a purchase and a price list. */
  #asked(): ReadonlyMap<string, AskedFor> {
    const { purchase } = this.scheme;
    const { prices } = this.view.library;
    if (this.#list?.purchase !== purchase || this.#list.prices !== prices) {
      const entries = entriesOf(shoppingListOf(purchase, prices)).filter(({ place }) => place !== 'van');
      this.#list = { purchase, prices, asked: new Map(entries.map((entry) => [entry.item, entry])) };
    }
    return this.#list.asked;
  }

  /** How old a line's price is, where it is older than the firm lets it be. */
  #age({ item, priced }: BillLine): TemplateResult | typeof nothing {
    const days = priced ? this.#ages().get(item) : undefined;
    return days === undefined ? nothing : html`<small class="old">price ${counted(days, 'day')} old</small>`;
  }

  /** Worked out once for a price list and a day. */
  #ages(): ReadonlyMap<string, number> {
    const { prices } = this.view.library;
    const { date } = this.view.estimate;
    if (this.#known?.prices !== prices || this.#known.date !== date)
      this.#known = { prices, date, ages: staleItems(prices, date) };
    return this.#known.ages;
  }

  #demoLines(scheme: SchemeEstimate): TemplateResult | typeof nothing {
    const { billLines, demoBillLines } = demoShare(scheme, this.view.library);
    if (demoBillLines === 0) return nothing;
    return html`<p class="demo">
      ${demoBillLines} of ${billLines} lines carry the demo’s invented prices:
      <a href="/firm?part=prices">put in your own</a>.
    </p>`;
  }

  #oldLines({ price }: SchemeEstimate): TemplateResult | typeof nothing {
    const ages = this.#ages();
    const old = price.bill.filter(({ item, priced }) => priced && ages.has(item)).length;
    if (old === 0) return nothing;
    return html`<p class="demo">
      ${old} of ${counted(price.bill.length, 'line')} ${old === 1 ? 'carries a price' : 'carry prices'} more than
      ${staleDaysOf(this.view.library.prices)} days old: <a href="/firm?part=import">take in a newer list</a>.
    </p>`;
  }

  #group(
    scheme: SchemeEstimate,
    group: string,
    words: string,
    labelOf: LabelOf,
  ): TemplateResult | typeof nothing {
    // The bill has a line for each of the take-off, in its order.
    const lines = scheme.price.bill.flatMap((line, index) =>
      line.group === group
        ? [{ line, mostQuantity: scheme.takeoff[index]?.highQuantity ?? line.quantity }]
        : [],
    );
    if (lines.length === 0) return nothing;
    return html`<h3>${words}</h3>
      <table>
        <thead>
          <tr>
            <th>Item</th>
            <th class="number">Needed</th>
            <th class="stock">In the van</th>
            <th class="number buy">To buy</th>
            <th class="number">Cost</th>
          </tr>
        </thead>
        <tbody>
          ${lines.map(({ line, mostQuantity }) => this.#line(line, mostQuantity, labelOf))}
        </tbody>
      </table>`;
  }

  #line(line: BillLine, mostQuantity: number, labelOf: LabelOf): TemplateResult {
    const lit = areLit(this.view.lit, line.causes);
    // A sum that somebody typed is no thing: it is neither in the van nor on the shopping list.
    const isSum = line.group === EXTRA_GROUP;
    const bought = isSum
      ? { buy: 'a sum of your own', rest: 'not on the shopping list' }
      : boughtWords(line, this.#asked().get(line.item) ?? null);
    return html`<tr class=${lit ? 'lit' : ''}>
        <td>
          <button class="line" aria-pressed=${lit} @click=${() => this.#light(line, lit)}>
            ${line.description}
          </button>
        </td>
        <td class="number" data-words="Needed">
          ${isSum ? '' : quantityWritten(line.quantity, line.unit)}${
            mostQuantity > line.quantity
              ? html`<small>to ${quantityWritten(mostQuantity, line.unit)}</small>`
              : nothing
          }
        </td>
        <td class="stock" data-words="In the van">${isSum ? nothing : this.#stockField(line)}</td>
        <td class="number buy" data-words="To buy">
          ${bought.buy}${bought.rest === '' ? nothing : html`<small>${bought.rest}</small>`}
        </td>
        <td class="number" data-words="Cost">
          ${line.priced ? pounds(line.costPence) : 'no price'}${this.#age(line)}
        </td>
      </tr>
      ${
        lit
          ? html`<tr class="lit">
            <td colspan="5" class="causes">For ${[...new Set(line.causes.map(labelOf))].join(', ')}</td>
          </tr>`
          : nothing
      }`;
  }

  /** Of what is cut every piece counts by itself: no run can be pulled from two. */
  #stockField(line: BillLine): TemplateResult {
    const entries = this.view.job.stock.filter(({ item }) => item === line.item);
    if (this.scheme.takeoff.some((one) => one.item === line.item && isCutToLength(one)))
      return html`<lengths-field
        label=${`Lengths in the van, m: ${line.description}`}
        label-hidden
        .value=${lengthsWritten(entries)}
        @field-change=${(event: CustomEvent<FieldChange<readonly number[]>>) => {
          event.stopPropagation();
          send(this, 'job-edit', setStockLengths(line.item, line.description, event.detail.value));
        }}
      ></lengths-field>`;
    const held = entries.reduce((sum, { quantity }) => sum + quantity, 0);
    return html`<number-field
      label=${`In the van: ${line.description}`}
      label-hidden
      .value=${held === 0 ? null : held}
      .min=${0}
      .max=${1e6}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
        event.stopPropagation();
        send(this, 'job-edit', setStock(line.item, line.description, event.detail.value ?? 0));
      }}
    ></number-field>`;
  }

  #light(line: BillLine, lit: boolean): void {
    send(this, 'things-lit', { subjectIds: lit ? [] : line.causes });
  }
}
customElements.define('kit-bill', KitBill);
declare global {
  interface HTMLElementTagNameMap {
    'kit-bill': KitBill;
  }
}
