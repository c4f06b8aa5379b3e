import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { entryMarks } from '#drawing/shopping/entry-marks.ts';
import {
  entriesOf,
  type ShoppingSheet,
  shoppingSheetOf,
  UNCOUNTED_TITLE,
} from '#drawing/shopping/shopping-sheet.ts';
import { demoMarksOf, demoNotice } from '#engine/demo-marks.ts';
import type { ShoppingEntry, ShoppingGroup } from '#engine/price/shopping/shopping-list.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { OutcomePlan } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Packing } from '#engine/schemes/outcomes/packing.ts';
import { stateTag } from '#engine/state-tag.ts';
import { setTookInstead } from '../../edits/actuals.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { KeptTicks } from '../../shopping/kept-ticks.ts';
import { hadKeys, strays, strayWords, tickState } from '../../shopping/ticks.ts';
import '../fields/tick-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import '../toast-line.ts';
import { shoppingListCss } from './shopping-list-styles.ts';
import './shopping-out.ts';
import './shopping-paper.ts';
import { shoppingRow } from './shopping-row.ts';
import './took-instead.ts';
import type { Taken } from './took-instead.ts';

/**
 * What to take along and to buy, counter by counter, to be ticked with one thumb. Ticks are the shopper's, not the job's: they
 * stay on this device. What is asked for otherwise than when it was ticked is to be had again, and says so.
 */
export class ShoppingListView extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
    packing: { attribute: false },
    open: { attribute: false },
    asking: { state: true },
    onlyLeft: { state: true },
    said: { state: true },
  };
  static override styles = [controlsCss, shoppingListCss];
  declare view: JobView;
  declare scheme: SchemeEstimate;
  /** What is bought while things are open; null: what is counted. */
  declare packing: Packing | null;
  /** What is open of it; null while that is not worked out. */
  declare open: OutcomePlan | null;
  /** The key of the entry of which it is asked what was taken instead; empty: of none. */
  declare private asking: string;
  /** True where what is had is left out of sight. */
  declare private onlyLeft: boolean;
  /** What was done last, as long as nobody has put the line away. */
  declare private said: string;
  #kept: KeptTicks | null = null;

  constructor() {
    super();
    this.packing = null;
    this.open = null;
    this.asking = '';
    this.onlyLeft = false;
    this.said = '';
    this.addEventListener('toast-action', (event) => {
      event.stopPropagation();
      this.#ticks.undo();
      this.said = '';
      this.requestUpdate();
    });
    this.addEventListener('toast-closed', (event) => {
      event.stopPropagation();
      this.said = '';
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('storage', this.#storeChanged);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('storage', this.#storeChanged);
  }

  /** Another window of this device ticks the same list. */
  readonly #storeChanged = ({ key }: StorageEvent): void => {
    if (this.#kept?.isOf(key) !== true) return;
    this.#kept.lookAgain();
    this.said = '';
    this.requestUpdate();
  };

  get #ticks(): KeptTicks {
    const { id } = this.view.job;
    if (this.#kept?.jobId !== id) this.#kept = new KeptTicks(id);
    return this.#kept;
  }

  #do(change: (kept: KeptTicks) => void): void {
    change(this.#ticks);
    this.said = this.#ticks.undoLabel ?? '';
    this.requestUpdate();
  }

  get #sheet(): ShoppingSheet {
    const { job, library, date } = this.view;
    return shoppingSheetOf({
      reference: job.reference,
      title: job.title,
      scheme: this.scheme,
      packing: this.packing,
      open: this.open,
      taken: job.actuals?.instead,
      notInStock: this.#ticks.notInStock,
      prices: library.prices,
      date,
      state: stateTag(job),
      demoNote: demoNotice(demoMarksOf([this.scheme], library)),
    });
  }

  override render(): TemplateResult {
    const sheet = this.#sheet;
    const had = new Set([...hadKeys(sheet.list, this.#ticks.ticks), ...sheet.instead.byKey.keys()]);
    return html`<div class="screen">${this.#screen(sheet, had)}</div>
      <shopping-paper .sheet=${sheet} .had=${had}></shopping-paper>`;
  }

  #screen(sheet: ShoppingSheet, had: ReadonlySet<string>): TemplateResult {
    const count = entriesOf(sheet.list).length;
    return html`<div class="over">
        <p role="status">${count === 0 ? 'Nothing to buy' : `${had.size} of ${count} ticked`}</p>
        <tick-field
          label="Only what is left"
          .value=${this.onlyLeft}
          @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
            event.stopPropagation();
            this.onlyLeft = event.detail.value;
          }}
        ></tick-field>
      </div>
      ${this.#strays(sheet)} ${sheet.list.groups.map((group) => this.#group(group, sheet, had))}
      ${this.#uncounted(sheet)} ${this.#goesBack(sheet)}
      ${this.#insteads(sheet)}
      <p class="none hint">${sheet.costWords} What the job is charged stands in the bill: of some packs only what it uses.</p>
      <shopping-out .sheet=${sheet} .had=${had}></shopping-out>
      <div class="tools">
        <button ?disabled=${this.#ticks.ticks.length + this.#ticks.notInStock.size === 0} @click=${() => this.#do((kept) => kept.clear())}>Clear ticks</button>
      </div>
      <p class="hint">Ticks, and what was not in stock, stay on this device, need no signal, and change nothing of the job. What was taken instead is
        kept with the job, in what it took; no price hangs on it.</p>
      <toast-line .words=${this.said} action="Take back"></toast-line>`;
  }

  #uncounted({ uncounted }: ShoppingSheet): TemplateResult | typeof nothing {
    if (uncounted.length === 0) return nothing;
    return html`<section class="uncounted" aria-label=${UNCOUNTED_TITLE}>
      <h3>${UNCOUNTED_TITLE}</h3>
      ${uncounted.map((line) => html`<p class="hint">${line}</p>`)}
    </section>`;
  }

  #group(group: ShoppingGroup, sheet: ShoppingSheet, had: ReadonlySet<string>): TemplateResult {
    const done = group.entries.filter(({ key }) => had.has(key)).length;
    const isAll = done === group.entries.length;
    const shown = this.onlyLeft ? group.entries.filter(({ key }) => !had.has(key)) : group.entries;
    return html`<section aria-label=${group.title} class=${isAll ? 'all' : ''}>
      <h3>
        ${group.title}
        <span class="count"
          >${isAll ? html`<svg viewBox="0 0 16 16" aria-hidden="true"><path d="M2 8.5 6.5 13 14 3.5" /></svg>` : nothing}${
            isAll ? 'all ticked' : `${done} of ${group.entries.length}`
          }</span
        >
      </h3>
      <ul>
        ${shown.map((entry) => this.#entry(entry, sheet))}
      </ul>
    </section>`;
  }

  #entry(entry: ShoppingEntry, sheet: ShoppingSheet): TemplateResult {
    const taken = sheet.instead.byKey.get(entry.key)?.took ?? null;
    return shoppingRow(
      {
        entry,
        state: tickState(entry, this.#ticks.ticks),
        forWords: sheet.forWords.get(entry.key) ?? '',
        marks: entryMarks(entry, sheet),
        isInstead: taken !== null,
        form: this.asking === entry.key ? this.#asked(entry, taken) : nothing,
      },
      {
        tick: (of, is) => this.#do((kept) => kept.tick(of, is)),
        notInStock: (of) => this.#askInstead(of),
      },
    );
  }

  /** Marked at once: whoever stands at the counter may have no time for more. */
  #askInstead(entry: ShoppingEntry): void {
    if (!this.#ticks.notInStock.has(entry.key)) this.#do((kept) => kept.markNotInStock(entry, true));
    this.asking = this.asking === entry.key ? '' : entry.key;
  }

  #asked(entry: ShoppingEntry, taken: Taken): TemplateResult {
    const away = (): void => {
      this.asking = '';
    };
    return html`<took-instead
      .entry=${entry}
      .prices=${this.view.library.prices}
      .taken=${taken}
      @took-instead=${(event: CustomEvent<Taken>) => {
        send(this, 'job-edit', setTookInstead(entry.key, entry.description, event.detail));
        // The way back of a record is the job's.
        this.said = '';
        away();
      }}
      @in-stock=${() => {
        this.#do((kept) => kept.markNotInStock(entry, false));
        away();
      }}
      @closed=${away}
    ></took-instead>`;
  }

  /** What was taken instead came to in all, and what of it is for things no longer on the list. */
  #insteads({ instead: { strays: left, sumWords } }: ShoppingSheet): TemplateResult {
    return html`${left.map(
      ({ words, took }) => html`<div class="stray">
        <span>No longer on the list. ${words}</span>
        <button @click=${() => send(this, 'job-edit', setTookInstead(took.entry, took.took, null))}>Put away</button>
      </div>`,
    )}
    ${sumWords === '' ? nothing : html`<p class="instead" role="status">${sumWords}</p>`}`;
  }

  /** What goes back unopened, outcome by outcome. */
  #goesBack({ inCase: { goesBack } }: ShoppingSheet): TemplateResult | typeof nothing {
    if (goesBack.length === 0) return nothing;
    return html`<section aria-label="What can go back unopened">
      <h3>What can go back unopened</h3>
      ${goesBack.map(
        ({ title, lines }) => html`<p class="turned">${title}</p>
          <ul class="back">
            ${lines.map((line) => html`<li>${line}</li>`)}
          </ul>`,
      )}
    </section>`;
  }

  /** What is in the basket though the list wants it no longer. */
  #strays({ list }: ShoppingSheet): TemplateResult | typeof nothing {
    const left = strays(list, this.#ticks.ticks);
    if (left.length === 0) return nothing;
    return html`<section aria-label="Ticked, and no longer on the list">
      <h3>Ticked, and no longer on the list</h3>
      <ul>
        ${left.map(
          (tick) => html`<li class="stray">
            <span>${strayWords(tick)}</span>
            <button @click=${() => this.#do((kept) => kept.forget(tick.key))}>Put away</button>
          </li>`,
        )}
      </ul>
    </section>`;
  }
}
customElements.define('shopping-list', ShoppingListView);
declare global {
  interface HTMLElementTagNameMap {
    'shopping-list': ShoppingListView;
  }
}
