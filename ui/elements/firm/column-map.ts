import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { FoundList, ListColumns } from '#engine/price/list/find-columns.ts';
import { cellWords } from '#engine/price/list/sheet.ts';
import type { ColumnMap } from '#model/library.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { firmGridCss } from './firm-grid.ts';
import { sendImportAct } from './import-events.ts';
import { roleWords } from './import-words.ts';

const roles: readonly (keyof ListColumns)[] = [
  'description',
  'code',
  'price',
  'per',
  'pack',
  'discount',
  'date',
];

const basisWords = [
  { value: 'each', label: 'One: each' },
  { value: 'per-100', label: 'A hundred' },
  { value: 'per-1000', label: 'A thousand' },
  { value: 'per-metre', label: 'A metre' },
  { value: 'per-100-m', label: '100 metres' },
  { value: 'per-pack', label: 'A whole pack or coil' },
  { value: 'by-column', label: 'Each row says so itself' },
] as const;
const vatWords = [
  { value: 'excluded', label: 'Without VAT' },
  { value: 'included', label: 'With VAT' },
] as const;
const decimalWords = [
  { value: '.', label: 'a point: 1,234.50' },
  { value: ',', label: 'a comma: 1.234,50' },
] as const;

/** A column as spreadsheets call it: A to Z, AA … */
function columnLetters(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${columnLetters(Math.floor(index / 26) - 1)}${letter}`;
}

/** Rows that show what stands in a column. */
const SHOWN_ROWS = 3;

/** How a merchant's list is read: which column says what, and what holds for all of it. */
export class ColumnMapForm extends LitElement {
  static override properties: PropertyDeclarations = {
    list: { attribute: false },
    map: { attribute: false },
    sheets: { attribute: false },
    date: { attribute: false },
  };
  static override styles = [
    controlsCss,
    firmGridCss,
    css`
      .wide {
        overflow-x: auto;
        margin: 8px 0 12px;
        border: 1px solid var(--line);
      }
      td,
      th {
        max-width: 18rem;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      bdi {
        unicode-bidi: isolate;
      }
    `,
  ];
  declare list: FoundList;
  declare map: ColumnMap;
  /** Names of the file's sheets. */
  declare sheets: readonly string[];
  /** The day of prices that name none. */
  declare date: string;

  override render(): TemplateResult {
    const { headings } = this.list;
    return html`<p class="hint">
        ${
          headings === null
            ? 'No row of headings was found: say which column is which. Without headings this cannot be remembered.'
            : `Headings were found in row ${headings.number}. Say once which column is which; a list with these headings is known from then on.`
        }
      </p>
      ${this.#sample()}
      <div class="grid">${this.#sheet()} ${roles.map((role) => this.#column(role))}</div>
      <h4>What holds for the whole list</h4>
      <div class="grid">${this.#facts()}</div>`;
  }

  get #width(): number {
    const { headings, rows } = this.list;
    const shown = [...(headings === null ? [] : [headings]), ...rows.slice(0, 50)];
    return Math.max(0, ...shown.map(({ cells }) => cells.length));
  }

  #sample(): TemplateResult {
    const { headings, rows } = this.list;
    const columns = Array.from({ length: this.#width }, (_, index) => index);
    return html`<div class="wide" tabindex="0" role="region" aria-label="The first rows of the list">
      <table>
        <thead>
          <tr>
            ${columns.map((at) => html`<th scope="col"><bdi>${cellWords(headings?.cells[at]) || columnLetters(at)}</bdi></th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows
            .slice(0, SHOWN_ROWS)
            .map(
              ({ cells }) =>
                html`<tr>${columns.map((at) => html`<td><bdi>${cellWords(cells[at])}</bdi></td>`)}</tr>`,
            )}
        </tbody>
      </table>
    </div>`;
  }

  #sheet(): TemplateResult | typeof nothing {
    if (this.sheets.length < 2) return nothing;
    return html`<choice-field
      label="Sheet"
      .value=${this.list.sheet.name}
      .options=${this.sheets.map((name) => ({ value: name, label: name }))}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<string>>) => sendImportAct(this, { kind: 'sheet', name: event.detail.value })}
    ></choice-field>`;
  }

  #column(role: keyof ListColumns): TemplateResult {
    const { headings } = this.list;
    const options = Array.from({ length: this.#width }, (_, at) => {
      const heading = cellWords(headings?.cells[at]);
      return { value: String(at), label: heading === '' ? `Column ${columnLetters(at)}` : heading };
    });
    const now = this.map.columns[role];
    return html`<choice-field
      .label=${roleWords[role]}
      .value=${now === undefined ? null : String(now)}
      .options=${options}
      .empty=${'No column says so'}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => this.#setColumn(role, event.detail.value)}
    ></choice-field>`;
  }

  #setColumn(role: keyof ListColumns, value: string | null): void {
    const { [role]: _before, ...others } = this.map.columns;
    this.#set({ columns: value === null ? others : { ...others, [role]: Number(value) } });
  }

  #set(changes: Partial<ColumnMap>): void {
    sendImportAct(this, { kind: 'map', map: { ...this.map, ...changes } });
  }

  #setDiscount(percent: number | null): void {
    const { discountPercent: _before, ...map } = this.map;
    sendImportAct(this, { kind: 'map', map: percent === null ? map : { ...map, discountPercent: percent } });
  }

  #facts(): TemplateResult {
    const { name, basis, vat, decimal, discountPercent } = this.map;
    return html`<text-field
        label="Whose list it is"
        .value=${name}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => this.#set({ name: event.detail.value.trim() })}
      ></text-field>
      <text-field
        label="Prices are of the day"
        kind="date"
        .value=${this.date}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          if (event.detail.value !== '') sendImportAct(this, { kind: 'date', date: event.detail.value });
        }}
      ></text-field>
      <choice-field
        label="A price is for"
        help="Where the row itself does not say"
        .value=${basis}
        .options=${basisWords}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<ColumnMap['basis']>>) => this.#set({ basis: event.detail.value })}
      ></choice-field>
      <choice-field
        label="Its prices are"
        .value=${vat}
        .options=${vatWords}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<ColumnMap['vat']>>) => this.#set({ vat: event.detail.value })}
      ></choice-field>
      <number-field
        label="Discount on all of it"
        help="Where the row names none"
        unit="%"
        .value=${discountPercent ?? null}
        .min=${0}
        .max=${99}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => this.#setDiscount(event.detail.value)}
      ></number-field>
      <choice-field
        label="Decimals are set off by"
        .value=${decimal}
        .options=${decimalWords}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<ColumnMap['decimal']>>) => this.#set({ decimal: event.detail.value })}
      ></choice-field>`;
  }
}
customElements.define('column-map', ColumnMapForm);
declare global {
  interface HTMLElementTagNameMap {
    'column-map': ColumnMapForm;
  }
}
