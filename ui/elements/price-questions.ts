import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { OpenQuestion } from '#engine/schemes/estimate-result.ts';
import { send } from '../job-events.ts';
import type { JobView } from '../job-view.ts';
import { areLit } from '../lit-things.ts';
import { wholePounds } from '../written.ts';
import { controlsCss } from './shared-styles.ts';

/** How many open questions are shown: the dearest. */
const MOST_QUESTIONS = 3;

/** What would narrow the price's range most, under the price: it may scroll away, which the price itself never does. */
export class PriceQuestions extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 0 18px 12px;
        color: var(--block-ink);
        background: var(--block);
      }
      h2 {
        margin: 0 0 2px;
        font: 500 0.8125rem / 1.3 var(--text-font);
        color: var(--block-soft);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      button,
      button[aria-pressed='true'] {
        justify-content: space-between;
        gap: 12px;
        min-height: 32px;
        padding: 4px 6px;
        margin: 0 -6px;
        width: calc(100% + 12px);
        font: 400 0.875rem / 1.3 var(--text-font);
        text-align: left;
        color: var(--block-ink);
        background: none;
        border-color: transparent;
      }
      button:hover {
        border-color: var(--block-soft);
      }
      button[aria-pressed='true'] {
        border-color: #d9854c;
      }
      button b {
        flex: none;
        font: 600 0.875rem / 1.3 var(--drawing-font);
      }
    `,
  ];
  declare view: JobView;

  /** While something moves, what the questions are worth is that of before. */
  override render(): TemplateResult | typeof nothing {
    const { scheme, moving, estimate } = this.view;
    const before = estimate.schemes.find(({ id }) => id === scheme?.id);
    const questions = ((moving ? (before ?? scheme) : scheme)?.openQuestions ?? []).slice(0, MOST_QUESTIONS);
    if (questions.length === 0) return nothing;
    return html`<h2>To narrow the range</h2>
      <ul>
        ${questions.map((question) => html`<li>${this.#question(question)}</li>`)}
      </ul>`;
  }

  #question({ words, worthPence, subjects }: OpenQuestion): TemplateResult {
    const lit = areLit(this.view.lit, subjects);
    return html`<button
      aria-pressed=${lit}
      @click=${() => send(this, 'things-lit', { subjectIds: lit ? [] : subjects })}
    >
      <span>${words}</span><b>by ${wholePounds(worthPence)}</b>
    </button>`;
  }
}
customElements.define('price-questions', PriceQuestions);
declare global {
  interface HTMLElementTagNameMap {
    'price-questions': PriceQuestions;
  }
}
