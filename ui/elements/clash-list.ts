import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { ClashRow } from '../differences/clash-rows.ts';
import type { Difference } from '../differences/difference-words.ts';
import type { Decisions } from '../merging/merge-jobs.ts';
import type { Side } from '../merging/three-states.ts';
import { counted } from '../written.ts';
import { clashListCss } from './clash-list-styles.ts';
import { controlsCss } from './shared-styles.ts';

const sideWords: Readonly<Record<Side, string>> = { mine: 'Mine', theirs: 'Theirs' };
const sides: readonly Side[] = ['mine', 'theirs'];

/** A decision, with what was decided between: where that is another by now, it counts no longer. */
interface Decided {
  readonly side: Side;
  readonly mine: string;
  readonly theirs: string;
}

/**
 * What two people changed unlike of one job, row by row, each to be decided as mine or theirs; under it what only one of
 * them changed, which is kept from both. Nothing is sent before every row is decided.
 *
 * @fires clashes-decided - detail: { decisions } for all rows
 */
export class ClashList extends LitElement {
  static override properties: PropertyDeclarations = {
    clashes: { attribute: false },
    differences: { attribute: false },
    decided: { state: true },
  };
  static override styles = [controlsCss, clashListCss];
  declare clashes: readonly ClashRow[];
  /** All in which the two differ; what one of them alone changed is told of it. */
  declare differences: readonly Difference[];
  declare private decided: ReadonlyMap<string, Decided>;

  constructor() {
    super();
    this.clashes = [];
    this.differences = [];
    this.decided = new Map();
  }

  override render(): TemplateResult {
    const left = this.clashes.filter((row) => this.#sideOf(row) === null).length;
    return html`
      ${this.clashes.length > 1 ? this.#all() : nothing}
      <ol>
        ${this.clashes.map((row) => html`<li>${this.#row(row)}</li>`)}
      </ol>
      <p class="save">
        <button class="main" ?disabled=${left > 0} @click=${() => this.#send()}>Save together</button>
        <span role="status">${left > 0 ? `${left} of ${this.clashes.length} still to decide` : 'All decided: what either changed is kept'}</span>
      </p>
      ${this.#keptFromBoth()}
    `;
  }

  #all(): TemplateResult {
    return html`<p class="all">
      <button @click=${() => this.#decideAll('mine')}>All mine</button>
      <button @click=${() => this.#decideAll('theirs')}>All theirs</button>
    </p>`;
  }

  #row(row: ClashRow): TemplateResult {
    const { thing, field, also } = row;
    return html`<fieldset>
      <legend>${thing}${field === '' ? nothing : html` <span>${field}</span>`}</legend>
      ${also.length === 0 ? nothing : html`<p class="also">With it: ${also.join(', ')}</p>`}
      <div class="sides">${sides.map((side) => this.#choice(row, side))}</div>
    </fieldset>`;
  }

  #choice(row: ClashRow, side: Side): TemplateResult {
    return html`<label
      ><input
        type="radio"
        name=${row.key}
        .checked=${live(this.#sideOf(row) === side)}
        @change=${() => this.#decide([row], side)}
      /><span><b>${sideWords[side]}</b> ${row[side]}</span></label
    >`;
  }

  /** What only one of the two changed: it is kept, whatever is decided. */
  #keptFromBoth(): TemplateResult | typeof nothing {
    const rowed = new Set(this.clashes.map(({ thing, field }) => `${thing} ${field}`));
    const kept = this.differences.filter(
      ({ thing, field, by }) => by !== 'both' && !rowed.has(`${thing} ${field}`),
    );
    if (kept.length === 0) return nothing;
    return html`<details>
      <summary>What only one of you changed: ${counted(kept.length, 'thing')}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Mine</th>
            <th scope="col">Theirs</th>
          </tr>
        </thead>
        <tbody>
          ${kept.map(
            ({ thing, field, mine, theirs, by }) => html`<tr>
              <th scope="row">${thing}${field === '' ? nothing : html`<span>${field}</span>`}</th>
              <td data-whose="Mine">${mine}${by === 'them' ? nothing : html`<small>changed here</small>`}</td>
              <td data-whose="Theirs">${theirs}${by === 'me' ? nothing : html`<small>changed there</small>`}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </details>`;
  }

  #sideOf({ key, mine, theirs }: ClashRow): Side | null {
    const decided = this.decided.get(key);
    return decided !== undefined && decided.mine === mine && decided.theirs === theirs ? decided.side : null;
  }

  #decide(rows: readonly ClashRow[], side: Side): void {
    const now = rows.map(({ key, mine, theirs }) => [key, { side, mine, theirs }] as const);
    this.decided = new Map([...this.decided, ...now]);
  }

  #decideAll(side: Side): void {
    this.#decide(this.clashes, side);
  }

  #send(): void {
    const decisions: Decisions = new Map(
      this.clashes.flatMap((row) => {
        const side = this.#sideOf(row);
        return side === null ? [] : [[row.key, side] as const];
      }),
    );
    this.dispatchEvent(
      new CustomEvent('clashes-decided', { detail: { decisions }, bubbles: true, composed: true }),
    );
  }
}
customElements.define('clash-list', ClashList);
declare global {
  interface HTMLElementTagNameMap {
    'clash-list': ClashList;
  }
  interface HTMLElementEventMap {
    'clashes-decided': CustomEvent<{ readonly decisions: Decisions }>;
  }
}
