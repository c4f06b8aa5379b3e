import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { heldUp, type ImportPlan, type PriceChange, type RowFault } from '#engine/price/list/import-plan.ts';
import type { ColumnMap } from '#model/library.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { counted, listed } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/tick-field.ts';
import '../outcome-mark.ts';
import { controlsCss } from '../shared-styles.ts';
import { sendImportAct } from './import-events.ts';
import { movedWords, roleWords, shownPrice } from './import-words.ts';
import './unmatched-rows.ts';

/** Rows that are told singly: a list with more faults is not read as it should be. */
const MOST_TOLD = 40;

/** What a merchant's list would do to the price list: changes, what has to be settled first, and the rest. */
export class ImportPreview extends LitElement {
  static override properties: PropertyDeclarations = {
    plan: { attribute: false },
    confirmed: { attribute: false },
    listVat: { attribute: false },
    unfolded: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      h4 {
        display: flex;
        gap: 8px;
        align-items: center;
        margin: 14px 0 4px;
        font: 600 0.9375rem / 1.25 var(--drawing-font);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 12px;
        align-items: center;
        padding: 6px 0;
        border-top: 1px solid var(--rule);
      }
      li > span {
        flex: 1 1 16rem;
        min-width: 0;
        overflow-wrap: anywhere;
      }
      .hold {
        padding: 4px 12px 8px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      .bad {
        padding: 4px 12px 8px;
        background: var(--fail-wash);
        border-left: 4px solid var(--fail);
      }
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        align-items: center;
        margin-top: 14px;
      }
      td {
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare plan: ImportPlan;
  /** Rows whose far price a person has said is right. */
  declare confirmed: ReadonlySet<number>;
  declare listVat: ColumnMap['vat'];
  /** Lists that are unfolded, by their words: what is folded is not worked out. */
  declare private unfolded: ReadonlySet<string>;

  constructor() {
    super();
    this.unfolded = new Set();
    keepFocus(this);
  }

  override render(): TemplateResult {
    const { changes, unmatched, faults } = this.plan;
    const held = heldUp(this.plan, this.confirmed);
    const elsewhere = faults.filter(({ item }) => item === null);
    return html`<p role="status">${this.#summary()}</p>
      ${this.#faults(held.faults)} ${this.#asked(changes.filter(({ isAsked }) => isAsked))} ${this.#leftOut()}
      ${this.#changes(changes.filter(({ isNewPrice }) => isNewPrice))}
      ${this.#folded(
        elsewhere.length,
        'row about nothing of yours cannot be read',
        'rows about nothing of yours cannot be read',
        () => this.#faultList(elsewhere, false),
      )}
      ${this.#folded(
        unmatched.length,
        'row is about no item that is known',
        'rows are about no item that is known',
        () => html`<unmatched-rows .rows=${unmatched}></unmatched-rows>`,
      )}
      ${this.#buttons(held.faults.length, held.asked.length)}`;
  }

  #summary(): string {
    const { changes, same, headings, vatChanged } = this.plan;
    const moved = changes.filter(({ isNewPrice }) => isNewPrice).length;
    const rounded = changes.filter(({ isRounded }) => isRounded).length;
    const parts = [
      counted(moved, 'new price'),
      ...(changes.length > moved ? [`${changes.length - moved} as before, with a new day or number`] : []),
      ...(same > 0 ? [`${same} the same in everything`] : []),
      ...(headings > 0 ? [`${counted(headings, 'row')} without a price`] : []),
    ];
    const vat =
      vatChanged === 0
        ? ''
        : ` VAT at 20 % was ${this.listVat === 'excluded' ? 'taken off' : 'put on'} ${counted(vatChanged, 'price')}, since your list is ${this.listVat === 'excluded' ? 'without' : 'with'} it.`;
    const half =
      rounded === 0 ? '' : ` ${counted(rounded, 'price is', 'prices are')} rounded to a penny, half up.`;
    return `${listed(parts)}.${vat}${half}`;
  }

  #faults(faults: readonly RowFault[]): TemplateResult | typeof nothing {
    if (faults.length === 0) return nothing;
    return html`<div class="bad">
      <h4>
        <outcome-mark outcome="fails"></outcome-mark>${counted(faults.length, 'row about your items cannot', 'rows about your items cannot')} be read
      </h4>
      <p>
        Nothing is taken in while they stand. Put them right in the file and choose it again, set the columns above, or leave them
        out.
      </p>
      ${this.#faultList(faults, true)}
      ${
        faults.length > 1
          ? html`<button @click=${() =>
              this.#leave(
                faults.map(({ row }) => row),
                true,
              )}>
              Leave all ${faults.length} of them out
            </button>`
          : nothing
      }
    </div>`;
  }

  #faultList(faults: readonly RowFault[], mayLeave: boolean): TemplateResult {
    const more = faults.length - MOST_TOLD;
    return html`<ul>
      ${faults.slice(0, MOST_TOLD).map(
        ({ row, role, message, remedy, item, words }) => html`<li>
          <span>
            <strong>Row ${row}</strong>${item === null ? nothing : html`, ${item.description}`}${words === '' ? nothing : html` (<bdi>${words}</bdi>)`}:
            ${role === null ? nothing : html`${roleWords[role]}: `}<bdi>${message}</bdi>. ${remedy}.
          </span>
          ${
            mayLeave
              ? html`<button class="small" aria-label=${`Leave out row ${row}`} @click=${() => this.#leave([row], true)}>
                  Leave out
                </button>`
              : nothing
          }
        </li>`,
      )}
      ${more > 0 ? html`<li><span>and ${counted(more, 'more row')}.</span></li>` : nothing}
    </ul>`;
  }

  #leave(rows: readonly number[], out: boolean): void {
    sendImportAct(this, { kind: 'leave-out', rows, out });
  }

  #leftOut(): TemplateResult | typeof nothing {
    const { leftOut } = this.plan;
    if (leftOut.length === 0) return nothing;
    const shown = leftOut.slice(0, 12).map(String);
    const rest = leftOut.length > shown.length ? [`${leftOut.length - shown.length} more`] : [];
    return html`<p>
      Left out: ${leftOut.length === 1 ? 'row' : 'rows'} ${listed([...shown, ...rest])}.
      <button class="small" @click=${() => this.#leave(leftOut, false)}>Put back</button>
    </p>`;
  }

  #asked(asked: readonly PriceChange[]): TemplateResult | typeof nothing {
    if (asked.length === 0) return nothing;
    return html`<div class="hold">
      <h4>
        <outcome-mark outcome="decide"></outcome-mark>${counted(asked.length, 'price is', 'prices are')} far from what it was
      </h4>
      <p>More than twenty times as much, or as little. Is it the price of a hundred, read as the price of one? Then say above what a price is for.</p>
      <ul>
        ${asked.map(
          (change) => html`<li>
            <span><strong>Row ${change.row}</strong>, ${change.item.description}: ${this.#beforeAfter(change)}, ${movedWords(change)}</span>
            <tick-field
              .label=${`The price of row ${change.row} is right`}
              .value=${this.confirmed.has(change.row)}
              @field-change=${(event: CustomEvent<FieldChange<boolean>>) =>
                sendImportAct(this, { kind: 'confirm', row: change.row, isRight: event.detail.value })}
            ></tick-field>
          </li>`,
        )}
      </ul>
    </div>`;
  }

  #beforeAfter({ before, after, item }: PriceChange): string {
    const now = shownPrice(after, item.unit);
    return before === null ? now : `${shownPrice(before, item.unit)} → ${now}`;
  }

  #changes(changes: readonly PriceChange[]): TemplateResult | typeof nothing {
    if (changes.length === 0) return nothing;
    return html`<details open>
      <summary>${counted(changes.length, 'new price')}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">Item</th>
            <th scope="col">Old → new</th>
          </tr>
        </thead>
        <tbody>
          ${changes.map(
            (change) => html`<tr>
              <td>${change.row}</td>
              <td>${change.item.description}${change.place === 'also-sold' ? html` <span class="hint">further size</span>` : nothing}</td>
              <td>${this.#beforeAfter(change)} <span class="hint">${movedWords(change)}</span></td>
            </tr>`,
          )}
        </tbody>
      </table>
    </details>`;
  }

  #folded(
    count: number,
    one: string,
    many: string,
    inside: () => TemplateResult,
  ): TemplateResult | typeof nothing {
    if (count === 0) return nothing;
    return html`<details ?open=${this.unfolded.has(one)} @toggle=${(event: Event) => this.#unfold(event, one)}>
      <summary>${counted(count, one, many)}</summary>
      ${this.unfolded.has(one) ? inside() : nothing}
    </details>`;
  }

  #unfold(event: Event, name: string): void {
    if (!(event.target instanceof HTMLDetailsElement)) return;
    const others = [...this.unfolded].filter((one) => one !== name);
    this.unfolded = new Set(event.target.open ? [...others, name] : others);
  }

  #buttons(faults: number, asked: number): TemplateResult {
    const { changes } = this.plan;
    const reasons = [
      ...(faults > 0 ? [`${counted(faults, 'row')} that cannot be read`] : []),
      ...(asked > 0 ? [`${counted(asked, 'price')} to be looked at`] : []),
    ];
    const isHeld = reasons.length > 0 || changes.length === 0;
    return html`<div class="buttons">
      <button
        class="main"
        ?disabled=${isHeld}
        aria-describedby=${isHeld ? 'why' : nothing}
        @click=${() => sendImportAct(this, { kind: 'take-in' })}
      >
        Take in ${counted(changes.length, 'price')}
      </button>
      <button @click=${() => sendImportAct(this, { kind: 'drop' })}>Put the file away</button>
      ${
        isHeld
          ? html`<span id="why" class="hint">${reasons.length > 0 ? `Waits for ${listed(reasons)}.` : 'It would change nothing.'}</span>`
          : nothing
      }
    </div>`;
  }
}
customElements.define('import-preview', ImportPreview);
declare global {
  interface HTMLElementTagNameMap {
    'import-preview': ImportPreview;
  }
}
