import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { JobView } from '../../job-view.ts';
import { counted, wholePounds } from '../../written.ts';
import { withVatWords } from '../price/vat-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { isUnanswered, isUnsettledAsk, surveyOf, worthShort } from './ask-words.ts';

const byWorth = (a: SurveyAsk, b: SurveyAsk): number =>
  (b.worth?.rangePence ?? 0) - (a.worth?.rangePence ?? 0);

/** What a quoting visit comes to: the price from and to, what was not asked, and what waits for the first day. */
export class VisitSummary extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      h3 {
        margin: 4px 0 8px;
        font-size: 1.0625rem;
      }
      h4 {
        margin: 12px 0 4px;
        font: 600 0.9375rem / 1.3 var(--drawing-font);
      }
      .price {
        font-weight: 600;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 12px;
        padding: 6px 0;
        border-top: 1px solid var(--rule);
      }
      b {
        font-weight: 600;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const asks = surveyOf(this.view).filter(isUnsettledAsk);
    const waits = asks.filter(({ when, state }) => when === 'isolated' || state === 'put-off');
    const others = asks.filter((ask) => !waits.includes(ask));
    const unasked = others.filter(isUnanswered);
    const assumed = others.filter((ask) => !isUnanswered(ask));
    return html`<h3 tabindex="-1">The visit in short</h3>
      ${this.#price()} ${this.#listed('Waits for the first day', waits)}
      ${this.#listed('Only assumed so far', assumed)} ${this.#listed('Could have been told, and was not', unasked)}
      ${asks.length === 0 ? html`<p>Nothing is left open.</p>` : nothing}`;
  }

  #price(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null)
      return html`<p>No price yet: place what is wanted, then find ways to join it. The answers are kept for it.</p>`;
    const { range, price, totals, name } = scheme;
    return html`<p class="price">
        From ${wholePounds(range.lowPence)} to ${wholePounds(range.highPence)}, ${wholePounds(totals.grossPence)} as
        priced, ${withVatWords(price)}
      </p>
      <p>${name}</p>`;
  }

  #listed(title: string, asks: readonly SurveyAsk[]): TemplateResult | typeof nothing {
    if (asks.length === 0) return nothing;
    return html`<h4>${title}: ${counted(asks.length, 'thing')}</h4>
      <ul>
        ${asks.toSorted(byWorth).map((ask) => html`<li><span>${ask.words}</span><b>${worthShort(ask)}</b></li>`)}
      </ul>`;
  }
}
customElements.define('visit-summary', VisitSummary);
declare global {
  interface HTMLElementTagNameMap {
    'visit-summary': VisitSummary;
  }
}
