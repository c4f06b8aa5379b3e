import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { countWords } from '#drawing/count-words.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { kindWords } from '../../found-ways/made-of.ts';
import { pounds } from '../../written.ts';
import '../outcome-mark.ts';
import { withVatWords } from '../price/vat-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { figuresOf, openOutcomes } from './candidate-words.ts';

/** What a found scheme is like, as the inside of a card. */
export class FoundCard extends LitElement {
  static override properties: PropertyDeclarations = {
    candidate: { attribute: false },
    number: { type: Number },
    made: { type: String },
    rests: { attribute: false },
    keptAs: { attribute: false },
    locked: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        gap: 3px;
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 10px;
        align-items: baseline;
        justify-content: space-between;
        font: 600 1.0625rem/1.25 var(--drawing-font);
      }
      .number {
        color: var(--ink-soft);
        font-weight: 500;
      }
      .head small {
        font: 400 0.875rem/1.3 var(--text-font);
        color: var(--ink-soft);
      }
      .made {
        font-size: 0.875rem;
        line-height: 1.35;
      }
      .figures,
      .tags {
        display: flex;
        flex-wrap: wrap;
        gap: 0 12px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .checks {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 12px;
        font: 500 0.875rem/1.4 var(--drawing-font);
      }
      .caution {
        padding: 4px 8px;
        font-size: 0.875rem;
        background: var(--ask-wash);
      }
      .tags {
        font-weight: 600;
        color: var(--copper-ink);
      }
      .tags svg {
        width: 11px;
        height: 11px;
        margin-right: 4px;
        fill: var(--copper);
      }
    `,
  ];
  declare candidate: Candidate;
  declare number: number;
  /** What it is made of, in one line. */
  declare made: string;
  /** What it rests on, in words; null where on nothing that is only assumed. */
  declare rests: string | null;
  /** The name under which it is in the job; null where it was not kept. */
  declare keptAs: string | null;
  /** What of it was kept as it is, in words. */
  declare locked: readonly string[];

  constructor() {
    super();
    this.number = 1;
    this.made = '';
    this.rests = null;
    this.keptAs = null;
    this.locked = [];
  }

  override render(): TemplateResult {
    const { candidate } = this;
    const { checks, totals } = candidate;
    const open = openOutcomes.filter((outcome) => checks[outcome] > 0);
    return html`<span class="head"
        ><span><span class="number">${this.number}.</span> ${pounds(totals.grossPence)} <small>${withVatWords(candidate)}</small></span
        ><small>${kindWords[candidate.kind]}</small></span
      >
      <span class="made">${this.made}</span>
      <span class="figures">${figuresOf(candidate).map((words) => html`<span>${words}</span> `)}</span>
      <span class="checks"
        >${
          open.length === 0
            ? html`<span><outcome-mark .outcome=${'passes'}></outcome-mark> passes every check made</span>`
            : open.map(
                (outcome) =>
                  html`<span><outcome-mark .outcome=${outcome}></outcome-mark> ${countWords(outcome, checks[outcome])}</span> `,
              )
        }</span
      >
      ${[candidate.cautions, this.rests ?? []]
        .flat()
        .map(
          (words) =>
            html`<span class="caution"><outcome-mark .outcome=${'decide'}></outcome-mark> ${words}</span>`,
        )}
      ${this.#tags()}`;
  }

  #tags(): TemplateResult | typeof nothing {
    const { candidate, keptAs, locked } = this;
    if (!candidate.efficient && !candidate.calmest && keptAs === null && locked.length === 0) return nothing;
    return html`<span class="tags"
      >${candidate.calmest ? html`<span>Least disturbing</span> ` : nothing}${
        candidate.efficient
          ? html`<span><svg viewBox="0 0 10 10" aria-hidden="true"><path d="M5 0l5 5-5 5-5-5z"/></svg>Efficient</span> `
          : nothing
      }${keptAs === null ? nothing : html`<span>Kept as “${keptAs}”</span> `}${locked.map(
        (words) => html`<span>Held fast: ${words}</span> `,
      )}</span
    >`;
  }
}
customElements.define('found-card', FoundCard);
declare global {
  interface HTMLElementTagNameMap {
    'found-card': FoundCard;
  }
}
