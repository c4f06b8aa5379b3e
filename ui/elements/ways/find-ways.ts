import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { labelsOf } from '#drawing/label-of.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { MovedFollower } from '../../controllers/moved-follower.ts';
import type { WaysView } from '../../controllers/way-finder.ts';
import type { Found } from '../../found-ways/search-asks.ts';
import {
  calmestWords,
  cheaperOwnWords,
  cheapestWords,
  disturbedWords,
  fallbackWords,
  firstWords,
  orderWords,
  provedWords,
} from '../../found-ways/search-words.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { counted } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/tick-field.ts';
import '../finding-card.ts';
import { controlsCss } from '../shared-styles.ts';
import './best-of-kind.ts';
import './found-chart.ts';
import './found-list.ts';
import './fused-or-ring.ts';
import { laneLine } from './lane-line.ts';
import './leg-elsewhere.ts';
import './why-not.ts';

/** The search: found ways as cards and as a chart, the best of each kind, and what can be asked about them. */
export class FindWays extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding-bottom: 12px;
        margin-bottom: 14px;
        border-bottom: 1px solid var(--line);
      }
      h3 {
        margin: 18px 0 6px;
      }
      .lane:empty {
        display: none;
      }
      .lane {
        color: var(--ink-soft);
      }
      .trouble {
        padding: 10px 12px;
        margin-bottom: 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      details {
        margin-top: 6px;
        border-top: 1px solid var(--rule);
      }
      ul.against {
        display: grid;
        gap: 6px;
        margin: 0 0 12px;
        padding: 0;
        list-style: none;
      }
      ul.left {
        margin: 0 0 8px;
        padding-left: 18px;
        font-size: 0.875rem;
      }
    `,
  ];
  declare view: JobView;
  readonly #follower = new MovedFollower(
    this,
    () => this.view.moved,
    ({ search }) => search,
  );

  constructor() {
    super();
    keepFocus(this);
  }

  override render(): TemplateResult {
    const held = this.#follower.now;
    const { search, isOfNow } = held ?? this.view.ways;
    const found = search.answer;
    return html`${found === null ? this.#begin() : nothing}
      ${laneLine(held === null ? search : quiet(search), { slow: 'Searching all ways to join the wanted points…', again: () => this.#find() })}
      ${
        found === null
          ? nothing
          : html`${isOfNow ? nothing : html`<p class="hint">The job has changed since: searching again. ${firstWords(search.first)}</p>`}
            <div aria-busy=${!isOfNow}>${guard(this.#onWhat(found), () => this.#found(found))}</div>`
      }`;
  }

  /** What the found ways are drawn from; while something moves they stay as they are, so that the hand is not held up. */
  #onWhat(found: Found): unknown[] {
    return [found, this.view.moving ? 'moving' : this.view];
  }

  #find(): void {
    send(this, 'ways-asked', { do: 'find' });
  }

  #begin(): TemplateResult {
    const wanted = this.view.job.points.filter(({ status }) => status === 'wanted').length;
    const { status } = this.view.ways.search;
    return html`<p>
        ${
          wanted === 0
            ? html`Say in <em>Wanted</em> which points are to be added; then all ways to join them can be searched.`
            : `Every way to join the ${counted(wanted, 'wanted point')}, checked by every rule and priced: the cheapest, the least disturbing, and the best of each kind.`
        }
      </p>
      <button
        class="main"
        ?disabled=${wanted === 0 || status === 'working' || status === 'slow'}
        @click=${() => this.#find()}
      >
        Find ways
      </button>`;
  }

  #found(found: Found): TemplateResult {
    const { candidates } = found;
    const tried = this.view.ways.tried?.id ?? null;
    const toCard = (event: CustomEvent<{ readonly schemeId: string }>): void =>
      this.#comeTo(event.detail.schemeId);
    const own = cheaperOwnWords(found, this.view.estimate.schemes);
    const calmest = calmestWords(found);
    const fallback = fallbackWords(found);
    // What bars every way is said; why each kind has none would only hide it.
    const isBarred = found.against.length > 0;
    const best = cheapestWords(found);
    return html`${best === null ? nothing : html`<p><strong>${best}</strong> ${calmest ?? nothing}</p>`}
      ${fallback === null ? nothing : html`<p>${fallback}</p>`} ${this.#proved(found)}
      ${this.#notSearched(found)}
      ${own === null ? nothing : html`<p>${own}</p>`} ${this.#against(found)} ${this.#cutsAssumed()}
      ${
        candidates.length === 0
          ? nothing
          : html`<found-chart .candidates=${candidates} .tried=${tried} @mark-chosen=${toCard}></found-chart>`
      }
      ${
        isBarred || found.bestOfKind.length === 0
          ? nothing
          : html`<h3>The best of each kind</h3>
            <best-of-kind
              .best=${found.bestOfKind}
              .candidates=${candidates}
              .tried=${tried}
              @mark-chosen=${toCard}
            ></best-of-kind>
            <h3>Behind one fuse, or on the ring?</h3>
            <fused-or-ring .view=${this.view} .found=${found}></fused-or-ring>`
      }
      ${
        candidates.length === 0
          ? nothing
          : html`<h3>All that was found, cheapest first</h3>
            <found-list .view=${this.view} .candidates=${candidates}></found-list>`
      }
      <details>
        <summary>Why not another way?</summary>
        <why-not .view=${this.view}></why-not>
      </details>
      <details>
        <summary>What if a leg runs elsewhere?</summary>
        <leg-elsewhere .view=${this.view}></leg-elsewhere>
      </details>
`;
  }

  /** How sure it is that nothing is better; where nothing was found it is what there is to say. */
  #proved(found: Found): TemplateResult {
    return html`<details ?open=${found.candidates.length === 0}>
      <summary>${found.optimal ? 'What is proved' : 'Not proved to be the cheapest'}</summary>
      <p>${provedWords(found)} ${orderWords(found) ?? nothing}</p>
      ${found.candidates.length === 0 ? nothing : html`<p>${disturbedWords(found) ?? nothing}</p>`}
    </details>`;
  }

  /** What the proof does not speak of, one touch from it. */
  #notSearched({ leftOut, candidates }: Found): TemplateResult | typeof nothing {
    if (leftOut.length === 0) return nothing;
    return html`<details ?open=${candidates.length === 0}>
      <summary>What is not searched (${leftOut.length})</summary>
      <ul class="left">
        ${leftOut.map((words) => html`<li>${words}</li>`)}
      </ul>
    </details>`;
  }

  #against({ against }: Found): TemplateResult | typeof nothing {
    if (against.length === 0) return nothing;
    const labelOf = labelsOf({ ...this.view.estimate.asFound.worked, job: this.view.job });
    return html`<p>Whatever way is taken, this fails. Mend it first:</p>
      <ul class="against">
        ${against.map((finding) => html`<li><finding-card .finding=${finding} .subject=${labelOf(finding.subject)}></finding-card></li>`)}
      </ul>`;
  }

  #cutsAssumed(): TemplateResult | typeof nothing {
    if (this.view.job.legs.length === 0) return nothing;
    return html`<tick-field
      label="Joints may be cut into legs whose way is only assumed: finding the cable first is priced"
      .value=${this.view.ways.cutsAssumed}
      @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
        event.stopPropagation();
        send(this, 'ways-asked', { do: 'cut-assumed', allowed: event.detail.value });
      }}
    ></tick-field>`;
  }

  /** The card of what was chosen elsewhere comes into sight and takes the focus. */
  #comeTo(schemeId: string): void {
    const list = this.renderRoot.querySelector('found-list');
    if (list === null) return;
    // Drawn first, in case it was not among the cards.
    requestAnimationFrame(() => void list.updateComplete.then(() => list.focusOn(schemeId)));
  }
}

/** While a point is under the hand the cheapest is all that is searched for: that it takes a while need not be said. */
const quiet = (search: WaysView['search']): WaysView['search'] =>
  search.status === 'slow' ? { ...search, status: 'working' } : search;
customElements.define('find-ways', FindWays);
declare global {
  interface HTMLElementTagNameMap {
    'find-ways': FindWays;
  }
}
