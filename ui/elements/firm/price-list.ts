import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { demoCount, isDemo, saysDemo } from '#engine/demo-marks.ts';
import { dayOfPrice, staleAge } from '#engine/price/list/stale.ts';
import { type Item, knownItems } from '#engine/takeoff/items.ts';
import type { Price, Prices } from '#model/library.ts';
import {
  ownPrices,
  type PriceDetail,
  setPrice,
  setPriceDetail,
  setPriceListFact,
} from '../../edits/prices.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { counted } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import { billGroups } from '../kit/bill-groups.ts';
import { controlsCss } from '../shared-styles.ts';
import { demoLine, demoLineCss } from './demo-line.ts';
import './old-prices.ts';

const vatWords = [
  { value: 'excluded', label: 'Without VAT' },
  { value: 'included', label: 'With VAT' },
] as const;
const chargeWords = [
  { value: 'packs', label: 'whole packs' },
  { value: 'used', label: 'what was used' },
] as const;

/** The firm's price list: every item that a bill can ask for, by group, with what it costs and how it is sold. */
export class PriceList extends LitElement {
  static override properties: PropertyDeclarations = {
    prices: { attribute: false },
    today: { attribute: false },
    wanted: { state: true },
    open: { state: true },
    unread: { state: true },
  };
  static override styles = [
    controlsCss,
    demoLineCss,
    css`
      :host {
        display: block;
      }
      .facts {
        display: grid;
        grid-template-columns: 2fr 1fr 1fr;
        gap: 12px 16px;
        margin: 8px 0 12px;
      }
      .search {
        max-width: 420px;
        margin-bottom: 8px;
      }
      summary span {
        font-weight: 400;
        color: var(--ink-soft);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(220px, 1fr) 110px 90px 110px 150px 150px;
        gap: 10px;
        align-items: end;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .name {
        align-self: center;
      }
      .old {
        font-size: 0.875rem;
        color: var(--ask);
      }
      .none {
        grid-column: 3 / -1;
        align-self: center;
      }
      @media (max-width: 900px) {
        .facts {
          grid-template-columns: 1fr;
        }
        li {
          grid-template-columns: 1fr 1fr;
        }
        .name,
        .none {
          grid-column: 1 / -1;
        }
      }
    `,
  ];
  declare prices: Prices;
  /** Today by the calendar, ISO. */
  declare today: string;
  /** What is looked for, as typed. */
  declare private wanted: string;
  /** Groups that are unfolded. */
  declare private open: ReadonlySet<string>;
  /** Items with an entry that cannot be read: their rows stay in sight until it is mended. */
  declare private unread: ReadonlySet<string>;

  constructor() {
    super();
    this.today = '';
    this.wanted = '';
    this.open = new Set();
    this.unread = new Set();
  }

  override render(): TemplateResult {
    return html`<h2>Price list</h2>
      ${this.#facts()} ${this.#demoLeft()}
      <old-prices .prices=${this.prices} .today=${this.today}></old-prices>
      <text-field
        class="search"
        label="Find an item"
        .value=${this.wanted}
        @input=${(event: Event) => this.#look(event)}
        @field-change=${(event: Event) => event.stopPropagation()}
      ></text-field>
      ${billGroups.map(([group, words]) => this.#group(group, words))}`;
  }

  #facts(): TemplateResult {
    const { source, date, vat } = this.prices;
    return html`<div class="facts">
      <text-field
        label="Where the prices are from"
        .value=${source}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setPriceListFact({ source: event.detail.value }))}
      ></text-field>
      <text-field
        label="Of which day"
        kind="date"
        .value=${date}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          if (event.detail.value !== '')
            sendLibraryEdit(this, setPriceListFact({ date: event.detail.value }));
        }}
      ></text-field>
      <choice-field
        label="Prices are"
        .value=${vat}
        .options=${vatWords}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<Prices['vat']>>) => sendLibraryEdit(this, setPriceListFact({ vat: event.detail.value }))}
      ></choice-field>
    </div>`;
  }

  /** Prices that nobody has set are the demo's, whatever the list says it is from. */
  #demoLeft(): TemplateResult | typeof nothing {
    const { items } = this.prices;
    const left = demoCount(items);
    if (left === 0 && !saysDemo.prices(this.prices)) return nothing;
    const words =
      left > 0
        ? `${left} of ${counted(items.length, 'price')} are the demo’s, and invented. A price that is set is yours.`
        : 'The list says that its prices are the demo’s.';
    return demoLine(words, 'All of them are mine', () => sendLibraryEdit(this, ownPrices()));
  }

  #look(event: Event): void {
    const typed = event.composedPath()[0];
    if (typed instanceof HTMLInputElement) this.wanted = typed.value;
  }

  get #wantedWords(): string {
    return this.wanted.trim().toLowerCase();
  }

  #group(group: string, words: string): TemplateResult | typeof nothing {
    const wanted = this.#wantedWords;
    const items = knownItems.filter(
      (item) =>
        item.group === group &&
        (wanted === '' ||
          this.unread.has(item.id) ||
          `${item.description} ${item.id}`.toLowerCase().includes(wanted)),
    );
    if (items.length === 0) return nothing;
    const rows = new Map(this.prices.items.map((price) => [price.item, price]));
    const without = items.filter((item) => !rows.has(item.id)).length;
    const open = wanted !== '' || this.open.has(group) || items.some(({ id }) => this.unread.has(id));
    return html`<details ?open=${open} @toggle=${(event: Event) => this.#unfold(event, group)}>
      <summary>
        ${words} <span>${counted(items.length, 'item')}${without > 0 ? `, ${without} without a price` : ''}</span>
      </summary>
      ${
        open
          ? html`<ul>${repeat(
              items,
              ({ id }) => id,
              (item) => this.#item(item, rows.get(item.id)),
            )}</ul>`
          : nothing
      }
    </details>`;
  }

  #unfold(event: Event, group: string): void {
    if (!(event.target instanceof HTMLDetailsElement) || this.#wantedWords !== '') return;
    const others = [...this.open].filter((name) => name !== group);
    this.open = new Set(event.target.open ? [...others, group] : others);
  }

  /** A row of several fields stays as long as any of them holds what cannot be read. */
  #unreadIn({ id }: Item, event: Event): void {
    const row = event.currentTarget as HTMLElement;
    const holds = [...row.querySelectorAll('number-field')].some((field) => field.isUnread);
    const others = [...this.unread].filter((one) => one !== id);
    this.unread = new Set(holds ? [...others, id] : others);
  }

  #item(item: Item, price: Price | undefined): TemplateResult {
    return html`<li @entry-unread=${(event: Event) => this.#unreadIn(item, event)}>
      <span class="name"
        ><span>${item.description}</span>${price === undefined ? nothing : this.#marks(price)}</span
      >
      <number-field
        label="Price"
        unit="£"
        .value=${price === undefined ? null : price.pricePence / 100}
        .min=${0}
        .max=${10_000_000}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
          const { value } = event.detail;
          sendLibraryEdit(this, setPrice(item, value === null ? null : Math.round(value * 100), this.today));
        }}
      ></number-field>
      ${
        price === undefined
          ? html`<span class="none hint">No price: a bill with it says so and is short of it.</span>`
          : this.#details(item, price)
      }
    </li>`;
  }

  /** Whose a price is, and how old where it is too old. */
  #marks(price: Price): TemplateResult | typeof nothing {
    if (isDemo(price)) return html` <span class="hint">demo price</span>`;
    const age = staleAge(price, this.prices, this.today);
    return age === null
      ? nothing
      : html` <span class="old">of ${dayOfPrice(price, this.prices)}, ${counted(age, 'day')} old</span>`;
  }

  #details(item: Item, price: Price): TemplateResult {
    const set = (detail: PriceDetail): void => sendLibraryEdit(this, setPriceDetail(item, detail));
    const unit = item.unit === 'each' ? '' : item.unit;
    return html`<number-field
        label="buys"
        needed
        .unit=${unit}
        .value=${price.perQuantity}
        .min=${0.000001}
        .max=${1e6}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => set({ perQuantity: event.detail.value ?? 1 })}
      ></number-field>
      <number-field
        label="Packs of"
        .unit=${unit}
        .value=${price.packQuantity ?? null}
        .min=${0.000001}
        .max=${1e6}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => set({ packQuantity: event.detail.value })}
      ></number-field>
      <choice-field
        label="Charge for"
        .value=${price.charge}
        .options=${chargeWords}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<Price['charge']>>) => set({ charge: event.detail.value })}
      ></choice-field>
      <text-field
        label="Trade-counter section"
        .value=${price.counter ?? ''}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => set({ counter: event.detail.value.trim() })}
      ></text-field>`;
  }
}
customElements.define('price-list', PriceList);
declare global {
  interface HTMLElementTagNameMap {
    'price-list': PriceList;
  }
}
