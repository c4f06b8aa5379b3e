import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { UnmatchedRow } from '#engine/price/list/import-plan.ts';
import { likelyItems } from '#engine/price/list/match-items.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { counted } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { sendImportAct } from './import-events.ts';

/** How many rows are shown at a time, and how many items are offered before the others. */
const SHOWN = 12;
const LIKELY = 6;

const others = knownItems
  .map(({ id, description }) => ({ value: id, label: description }))
  .sort((a, b) => (a.label < b.label ? -1 : 1));

/** Rows of a merchant's list that are about no known item, the likeliest first: a person says what they are, once. */
export class UnmatchedRows extends LitElement {
  static override properties: PropertyDeclarations = {
    rows: { attribute: false },
    wanted: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 8px 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 20rem);
        gap: 6px 16px;
        align-items: end;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      .what {
        align-self: center;
        overflow-wrap: anywhere;
      }
      @media (max-width: 700px) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];
  declare rows: readonly UnmatchedRow[];
  /** What is looked for, as typed. */
  declare private wanted: string;
  #ranked: readonly UnmatchedRow[] = [];
  /** How like some item's words are: the same for as long as the page is open. */
  readonly #likeness = new Map<string, number>();

  constructor() {
    super();
    this.rows = [];
    this.wanted = '';
    keepFocus(this);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('rows')) return;
    this.#ranked = this.rows
      .map((row) => ({ row, likeness: this.#likenessOf(row.words) }))
      .sort((a, b) => b.likeness - a.likeness || a.row.row - b.row.row)
      .map(({ row }) => row);
  }

  #likenessOf(words: string): number {
    const known = this.#likeness.get(words);
    if (known !== undefined) return known;
    const likeness = likelyItems(words, 1)[0]?.likeness ?? 0;
    this.#likeness.set(words, likeness);
    return likeness;
  }

  override render(): TemplateResult {
    const wanted = this.wanted.trim().toLowerCase();
    const found = this.#ranked.filter(({ code, words }) => `${code} ${words}`.toLowerCase().includes(wanted));
    const left = found.length - SHOWN;
    return html`<p class="hint">
        Say what those are that you buy; it is remembered. The others are let be. The likeliest come first.
      </p>
      <text-field
        label="Find a row"
        .value=${this.wanted}
        @input=${(event: Event) => this.#look(event)}
        @field-change=${(event: Event) => event.stopPropagation()}
      ></text-field>
      <ul>
        ${repeat(
          found.slice(0, SHOWN),
          ({ row }) => row,
          (row) => this.#row(row),
        )}
      </ul>
      ${left > 0 ? html`<p class="hint">and ${counted(left, 'more row')}: look for it above.</p>` : nothing}`;
  }

  #look(event: Event): void {
    const typed = event.composedPath()[0];
    if (typed instanceof HTMLInputElement) this.wanted = typed.value;
  }

  #row({ row, key, code, words, price }: UnmatchedRow): TemplateResult {
    const likely = likelyItems(words, LIKELY).map(({ item }) => ({
      value: item.id,
      label: item.description,
    }));
    const first = new Set(likely.map(({ value }) => value));
    return html`<li>
      <span class="what"><span class="hint">Row ${row}</span> <bdi>${code}</bdi> <bdi>${words}</bdi> <bdi>${price}</bdi></span>
      <choice-field
        .label=${`Row ${row} is`}
        .value=${null}
        .options=${[...likely, ...others.filter(({ value }) => !first.has(value))]}
        .empty=${'Nothing of ours'}
        .disabled=${key === ''}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
          const item = event.detail.value;
          if (item !== null) sendImportAct(this, { kind: 'match', key, item });
        }}
      ></choice-field>
    </li>`;
  }
}
customElements.define('unmatched-rows', UnmatchedRows);
declare global {
  interface HTMLElementTagNameMap {
    'unmatched-rows': UnmatchedRows;
  }
}
