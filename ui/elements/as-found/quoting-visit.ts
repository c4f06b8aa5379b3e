import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import { putOffAsk } from '../../edits/survey.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';
import { isUnsettledAsk, stageTitles, surveyOf } from './ask-words.ts';
import './survey-item.ts';
import './visit-summary.ts';

/**
 * The quoting visit: with the power on and nothing opened, one ask after another in the order of the walk, by one thumb; at its
 * end what the price is from and to, and what waits for the first day.
 *
 * @fires job-edit, visit-ended
 */
export class QuotingVisit extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    at: { state: true },
    ids: { state: true },
  };
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
      .progress {
        margin: 0 0 2px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      nav {
        position: sticky;
        bottom: 0;
        display: grid;
        grid-template-columns: auto 1fr 1fr;
        gap: 8px;
        margin: 8px 0 0;
        padding: 6px 0;
        background: var(--sheet);
        border-top: 1px solid var(--line);
      }
      nav button {
        min-height: 52px;
      }
    `,
  ];
  declare view: JobView;
  /** Where in the visit one is; past the last ask: at its summary. */
  declare private at: number;
  /** What is asked on this visit, in order: settled at its start, so that no answer moves what comes next. */
  declare private ids: readonly string[] | null;

  constructor() {
    super();
    this.at = 0;
    this.ids = null;
  }

  override willUpdate(): void {
    this.ids ??= surveyOf(this.view)
      .filter((ask) => ask.when === 'visit' && isUnsettledAsk(ask))
      .map(({ id }) => id);
  }

  override render(): TemplateResult {
    const asks = surveyOf(this.view);
    const ids = this.ids ?? [];
    const ask = asks.find(({ id }) => id === ids[this.at]);
    return html`${this.at < ids.length ? this.#asked(ask, ids.length) : html`<visit-summary .view=${this.view}></visit-summary>`}
      ${this.#buttons(ids.length, ask)}`;
  }

  #asked(ask: SurveyAsk | undefined, count: number): TemplateResult {
    return html`<p class="progress" role="status">
        ${ask === undefined ? 'Quoting visit' : stageTitles[ask.stage]}: ${this.at + 1} of ${count}
      </p>
      ${
        ask === undefined
          ? html`<h3 tabindex="-1">This is not asked any more</h3>`
          : html`<h3 tabindex="-1">${ask.words}</h3>
            <survey-item .view=${this.view} .ask=${ask} .bare=${true}></survey-item>`
      }`;
  }

  #buttons(count: number, ask: SurveyAsk | undefined): TemplateResult {
    const isEnd = this.at >= count;
    const next = this.at + 1 >= count ? 'To the summary' : 'Next';
    const waits = ask !== undefined && (ask.state === 'open' || ask.state === 'assumed');
    return html`<nav aria-label="Quoting visit">
      <button @click=${() => (this.at === 0 ? this.#end() : this.#go(this.at - 1))}>${this.at === 0 ? 'Leave' : 'Back'}</button>
      ${waits ? html`<button @click=${() => send(this, 'job-edit', putOffAsk(ask))}>Could not check</button>` : html`<span></span>`}
      ${isEnd ? html`<button class="main" @click=${() => this.#end()}>Done</button>` : html`<button class="main" @click=${() => this.#go(this.at + 1)}>${next}</button>`}
    </nav>`;
  }

  /** The button that began it stands far below its head. */
  override firstUpdated(): void {
    void this.#go(this.at);
  }

  /** Lights on the plan what is asked of. */
  #light(): void {
    const id = this.ids?.[this.at];
    const ask = surveyOf(this.view).find((one) => one.id === id);
    send(this, 'things-lit', { subjectIds: ask?.subjects ?? [] });
  }

  /** Goes on, and to the head of what is asked then: for a screen reader, and into sight. */
  async #go(at: number): Promise<void> {
    this.at = at;
    this.#light();
    await this.updateComplete;
    const summary = this.renderRoot.querySelector('visit-summary');
    await summary?.updateComplete;
    const head = (summary?.renderRoot ?? this.renderRoot).querySelector<HTMLElement>('h3');
    head?.focus({ preventScroll: true });
    this.scrollIntoView({ block: 'start' });
  }

  #end(): void {
    send(this, 'things-lit', { subjectIds: [] });
    this.dispatchEvent(new CustomEvent('visit-ended', { bubbles: true, composed: true }));
  }
}
customElements.define('quoting-visit', QuotingVisit);
declare global {
  interface HTMLElementTagNameMap {
    'quoting-visit': QuotingVisit;
  }
}
