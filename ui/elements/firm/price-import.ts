import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type FoundList, findList, listIn } from '#engine/price/list/find-columns.ts';
import { type ImportPlan, importPlan } from '#engine/price/list/import-plan.ts';
import { type ListReading, readingOf } from '#engine/price/list/list-reading.ts';
import { ownReading } from '#engine/price/list/own-list.ts';
import type { Sheet } from '#engine/price/list/sheet.ts';
import type { ColumnMap, Prices } from '#model/library.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { importPrices } from '../../edits/price-import.ts';
import { errorWords } from '../../error-words.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { counted } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';
import './column-map.ts';
import type { ImportAct } from './import-events.ts';
import './import-preview.ts';

/** A file that was read and waits to be taken in, with all that a person has said of it. */
interface Opened {
  readonly name: string;
  readonly sheets: readonly Sheet[];
  readonly list: FoundList;
  readonly map: ColumnMap;
  readonly date: string;
  readonly leftOut: ReadonlySet<number>;
  readonly confirmed: ReadonlySet<number>;
}

/** A set with one more in it, or without it. */
const toggled = <T>(all: ReadonlySet<T>, some: readonly T[], isIn: boolean): ReadonlySet<T> =>
  new Set(isIn ? [...all, ...some] : [...all].filter((one) => !some.includes(one)));

/** Takes a merchant's price list in: file, columns, what it would change, all of it or none. */
export class PriceImport extends LitElement {
  static override properties: PropertyDeclarations = {
    prices: { attribute: false },
    today: { attribute: false },
    readFile: { attribute: false },
    opened: { state: true },
    trouble: { state: true },
    said: { state: true },
    isReading: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 8px 0;
      }
      .trouble {
        padding: 10px 12px;
        background: var(--fail-wash);
        border-left: 4px solid var(--fail);
        overflow-wrap: anywhere;
      }
      h3 {
        margin-top: 12px;
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare prices: Prices;
  /** Today by the calendar, ISO. */
  declare today: string;
  /** Has a file read as sheets; throws with the reason, in words, where it cannot be. */
  declare readFile: (file: File) => Promise<readonly Sheet[]>;
  declare private opened: Opened | null;
  declare private trouble: string;
  /** What was done last; empty before. */
  declare private said: string;
  declare private isReading: boolean;
  #known: { readonly of: readonly unknown[]; readonly plan: ImportPlan } | null = null;

  constructor() {
    super();
    this.today = '';
    this.opened = null;
    this.trouble = '';
    this.said = '';
    this.isReading = false;
    keepFocus(this);
    this.addEventListener('import-act', (event) => this.#act(event.detail));
  }

  async #picked(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file === undefined) return;
    this.isReading = true;
    this.said = '';
    try {
      this.#open(file.name, await this.readFile(file));
    } catch (error) {
      this.opened = null;
      this.trouble = `${file.name}: ${errorWords(error)}`;
    }
    this.isReading = false;
    // The same file may be opened again once it was mended.
    input.value = '';
  }

  #open(name: string, sheets: readonly Sheet[]): void {
    const list = findList(sheets, this.prices.columnMaps ?? []);
    this.trouble = list === null ? `${name}: there is nothing in it.` : '';
    this.opened =
      list === null
        ? null
        : { name, sheets, list, map: list.map, date: this.today, leftOut: new Set(), confirmed: new Set() };
  }

  #act(act: ImportAct): void {
    const { opened } = this;
    if (opened === null) return;
    if (act.kind === 'take-in') this.#takeIn(opened);
    else if (act.kind === 'drop') this.opened = null;
    else this.opened = this.#after(opened, act);
  }

  #after(opened: Opened, act: Exclude<ImportAct, { kind: 'take-in' | 'drop' }>): Opened {
    switch (act.kind) {
      case 'map':
        // Another way of reading it gives other prices: what was said of them holds no longer.
        return { ...opened, map: act.map, confirmed: new Set() };
      case 'sheet': {
        const sheet = opened.sheets.find(({ name }) => name === act.name) ?? opened.list.sheet;
        const list = listIn(sheet, this.prices.columnMaps ?? []);
        return { ...opened, list, map: list.map, leftOut: new Set(), confirmed: new Set() };
      }
      case 'date':
        return { ...opened, date: act.date };
      case 'match': {
        const others = opened.map.matches.filter(({ row }) => row !== act.key);
        const matches = [...others, { row: act.key, item: act.item }];
        return { ...opened, map: { ...opened.map, matches } };
      }
      case 'leave-out':
        return { ...opened, leftOut: toggled(opened.leftOut, act.rows, act.out) };
      case 'confirm':
        return { ...opened, confirmed: toggled(opened.confirmed, [act.row], act.isRight) };
    }
  }

  #takeIn({ name, list, map, date, leftOut }: Opened): void {
    const plan = this.#plan(list, map, { date, leftOut });
    sendLibraryEdit(this, importPrices(plan, list.how === 'own' ? null : map, name));
    this.opened = null;
    this.said = `${counted(plan.changes.length, 'price')} from ${name} taken in. Undo takes all of it back.`;
  }

  /** What the file would do, worked out once for as long as nothing that it hangs on is another. */
  #plan(list: FoundList, map: ColumnMap, answers: Pick<Opened, 'date' | 'leftOut'>): ImportPlan {
    const of = [list, map, answers.date, answers.leftOut, this.prices];
    if (this.#known === null || of.some((one, at) => one !== this.#known?.of[at])) {
      const reading: ListReading = list.how === 'own' ? ownReading : readingOf(map);
      this.#known = { of, plan: importPlan(list.rows, this.prices, reading, answers) };
    }
    return this.#known.plan;
  }

  override render(): TemplateResult {
    return html`<h2>Take in a merchant’s price list</h2>
      <p class="hint">
        CSV or XLSX, as the merchant sends it, up to 5 MB and 20,000 rows. What it would change is shown first; then all of it is
        taken in, or none.
      </p>
      <div class="buttons">
        <button
          ?disabled=${this.isReading}
          @click=${() => this.renderRoot.querySelector('input')?.click()}
        >
          ${this.isReading ? 'Reading…' : 'Choose a file'}
        </button>
        <input
          type="file"
          accept=".csv,.txt,.tsv,.xlsx,text/csv"
          tabindex="-1"
          aria-hidden="true"
          class="visually-hidden"
          @change=${(event: Event) => void this.#picked(event)}
        />
      </div>
      <p role="status">${this.said}</p>
      ${this.trouble === '' ? nothing : html`<p class="trouble" role="alert"><bdi>${this.trouble}</bdi> Nothing was changed.</p>`}
      ${this.opened === null ? nothing : this.#opened(this.opened)}`;
  }

  #opened(opened: Opened): TemplateResult {
    const { name, list, map, date, sheets, leftOut, confirmed } = opened;
    return html`<h3><bdi>${name}</bdi></h3>
      ${
        list.how === 'own'
          ? html`<p class="hint">A list that Ringwright wrote: its columns are known.</p>`
          : html`<details ?open=${list.how === 'guessed'}>
              <summary>${list.how === 'known' ? `Columns as set before${map.name === '' ? '' : `: ${map.name}`}` : 'Which column says what'}</summary>
              <column-map .list=${list} .map=${map} .date=${date} .sheets=${sheets.map((sheet) => sheet.name)}></column-map>
            </details>`
      }
      ${
        list.how !== 'own' && map.columns.price === undefined
          ? html`<p class="trouble">Say which column holds the price.</p>
              <button @click=${() => this.#act({ kind: 'drop' })}>Put the file away</button>`
          : html`<import-preview
              .plan=${this.#plan(list, map, { date, leftOut })}
              .confirmed=${confirmed}
              .listVat=${this.prices.vat}
            ></import-preview>`
      }`;
  }
}
customElements.define('price-import', PriceImport);
declare global {
  interface HTMLElementTagNameMap {
    'price-import': PriceImport;
  }
}
