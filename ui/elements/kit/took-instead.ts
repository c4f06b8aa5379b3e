import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { TookInstead } from '#drawing/shopping/took-instead.ts';
import type { ShoppingEntry } from '#engine/price/shopping/shopping-list.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import type { Prices } from '#model/library.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/choice-field.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';

/** What was taken, without the name of what it was taken for; null: nothing. */
export type Taken = Omit<TookInstead, 'entry'> | null;

/** What is typed so far. */
interface Typed {
  readonly took: string;
  readonly item: string | null;
  readonly pence: number | null;
}

/**
 * Asks what was taken in the place of something that was not in stock: in words, or off the price list, and what it cost.
 *
 * @fires took-instead - detail: Taken; null: what was recorded counts no longer
 * @fires in-stock - it was there after all
 * @fires closed
 */
export class TookInsteadForm extends LitElement {
  static override properties: PropertyDeclarations = {
    entry: { attribute: false },
    prices: { attribute: false },
    taken: { attribute: false },
    typed: { state: true },
    tried: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      form {
        display: grid;
        gap: 8px;
        margin: 0 0 10px;
        padding: 10px 12px;
        background: var(--paper);
        border: 1px solid var(--rule);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      p {
        margin: 0;
      }
      .missing {
        padding-left: 8px;
        border-left: 4px solid var(--fail);
      }
    `,
  ];
  declare entry: ShoppingEntry;
  declare prices: Prices;
  /** What is recorded already; null: nothing. */
  declare taken: Taken;
  declare private typed: Typed | null;
  declare private tried: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.taken = null;
    this.typed = null;
    this.tried = false;
  }

  get #now(): Typed {
    const { took = '', item = null, pence = null } = this.taken ?? {};
    return this.typed ?? { took, item, pence };
  }

  #set(part: Partial<Typed>): void {
    this.typed = { ...this.#now, ...part };
  }

  override render(): TemplateResult {
    const { took, item, pence } = this.#now;
    const { items, vat } = this.prices;
    const others = items
      .filter((one) => one.unit === this.entry.unit && one.item !== this.entry.item)
      .map((one) => ({
        value: one.item,
        label: knownItems.find(({ id }) => id === one.item)?.description ?? one.item,
      }))
      .toSorted((a, b) => (a.label < b.label ? -1 : 1));
    return html`<form @submit=${(event: Event) => event.preventDefault()}>
      <p>
        Marked as not in stock: it stays on the list, to be had elsewhere. Was something taken in its place? The estimate does not
        change by it; change the job if the work does.
      </p>
      <text-field
        label="Taken instead, in words"
        .value=${took}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.#set({ took: event.detail.value, item: null });
        }}
      ></text-field>
      <choice-field
        label="or off your price list"
        .options=${others}
        .value=${item}
        .empty=${'Not on it'}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
          event.stopPropagation();
          const chosen = others.find(({ value }) => value === event.detail.value);
          this.#set({ item: chosen?.value ?? null, took: chosen?.label ?? this.#now.took });
        }}
      ></choice-field>
      <number-field
        label=${`What all of it cost, VAT ${vat === 'included' ? '' : 'not '}in it`}
        unit="£"
        .value=${pence === null ? null : pence / 100}
        .min=${0}
        .max=${1e7}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
          event.stopPropagation();
          const { value } = event.detail;
          this.#set({ pence: value === null ? null : Math.round(value * 100) });
        }}
      ></number-field>
      ${this.tried && took.trim() === '' ? html`<p class="missing" role="alert">Say what was taken, or put this away.</p>` : nothing}
      <div class="acts">
        <button class="main" type="button" @click=${() => this.#give()}>Record it</button>
        ${
          this.taken === null
            ? html`<button type="button" @click=${() => this.#tell('in-stock')}>It was there after all</button>`
            : html`<button type="button" @click=${() => this.#tell('took-instead', null)}>Nothing was taken</button>`
        }
        <button type="button" @click=${() => this.#tell('closed')}>Put this away</button>
      </div>
    </form>`;
  }

  #give(): void {
    const { took, item, pence } = this.#now;
    this.tried = true;
    if (took.trim() === '') return;
    const taken: Taken = {
      took: took.trim(),
      ...(item === null ? {} : { item }),
      ...(pence === null ? {} : { pence }),
    };
    this.#tell('took-instead', taken);
  }

  #tell(name: 'took-instead' | 'in-stock' | 'closed', detail: Taken = null): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define('took-instead', TookInsteadForm);
declare global {
  interface HTMLElementTagNameMap {
    'took-instead': TookInsteadForm;
  }
}
