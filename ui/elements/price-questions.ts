import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { OpenQuestion } from '#engine/schemes/estimate-result.ts';
import { hrefOf } from '../controllers/router.ts';
import { send } from '../job-events.ts';
import type { JobView, Step } from '../job-view.ts';
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
        font: 500 0.875rem / 1.3 var(--text-font);
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
      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: 0 16px;
        margin: 4px 0 0;
        font-size: 0.875rem;
      }
      .ways a {
        display: inline-flex;
        align-items: center;
        min-height: 32px;
        color: var(--block-ink);
      }
      @media (max-width: 700px) {
        button,
        .ways a {
          min-height: 44px;
        }
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
    if (scheme === null) return nothing;
    const { openQuestions, range } =
      (moving ? estimate.schemes.find(({ id }) => id === scheme.id) : null) ?? scheme;
    if (range.highPence <= range.lowPence) return nothing;
    const shown = openQuestions.slice(0, MOST_QUESTIONS);
    const more = openQuestions.length - shown.length;
    return html`<h2>
        ${
          shown.length === 0
            ? 'Nothing left to answer narrows it: the rest is pace of work and quantities'
            : 'To narrow the range, find out'
        }
      </h2>
      <ul>
        ${shown.map((question) => html`<li>${this.#question(question)}</li>`)}
      </ul>
      <p class="ways">
        ${openQuestions.some(({ question }) => question !== 'places') ? this.#link('as-found', more > 0 ? `Answer these and ${more} more` : 'Answer in As found') : nothing}
        ${this.#placeLink(openQuestions)} ${this.#link('price', 'What the range is made of')}
      </p>`;
  }

  #placeLink(questions: readonly OpenQuestion[]): TemplateResult | typeof nothing {
    const asked = questions.find(({ question }) => question === 'places')?.subjects ?? [];
    const points = this.view.job.points.filter(({ id }) => asked.includes(id));
    const point = points.find(({ status }) => status === 'wanted') ?? points[0];
    if (point === undefined) return nothing;
    return this.#link(point.status === 'wanted' ? 'wanted' : 'as-found', `Place ${point.label}`, {
      on: point.id,
    });
  }

  #link(
    step: Step,
    words: string,
    { on = null, ask = null }: { readonly on?: string | null; readonly ask?: string | null } = {},
  ): TemplateResult | typeof nothing {
    const { job, scheme, storeyId } = this.view;
    if (this.view.step === step && on === null && ask === null) return nothing;
    const looked = { scheme: scheme?.id ?? null, storey: storeyId === '' ? null : storeyId, on };
    const href = hrefOf({ jobId: job.id, step, compare: false, a: null, b: null, ask, ...looked });
    return html`<a href=${href}>${words}</a>`;
  }

  /** Touched, it lights what it is about and leads to where it is answered. */
  #question({ question, words, worthPence, subjects }: OpenQuestion): TemplateResult {
    const lit = areLit(this.view.lit, subjects);
    return html`<button
      aria-pressed=${lit}
      @click=${() => send(this, 'things-lit', { subjectIds: lit ? [] : subjects })}
    >
      <span>${words}</span><b>by ${wholePounds(worthPence)}</b>
    </button>
    ${lit && question !== 'places' ? html`<p class="ways">${this.#link('as-found', 'Answer it', { ask: question })}</p>` : nothing}`;
  }
}
customElements.define('price-questions', PriceQuestions);
declare global {
  interface HTMLElementTagNameMap {
    'price-questions': PriceQuestions;
  }
}
