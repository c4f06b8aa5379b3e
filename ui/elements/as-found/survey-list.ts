import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import { type AskStage, askStages } from '#engine/survey/ask.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { counted } from '../../written.ts';
import { worthWords } from '../price/vat-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { isUnsettledAsk, progressWords, stageTitles, stateWords, surveyOf, worthShort } from './ask-words.ts';
import { formCss } from './form-styles.ts';
import './survey-item.ts';

/**
 * All that the survey asks, in the order of the walk through the house: what is open first in each stage, with what the price
 * hangs on it; each opens into its answer.
 *
 * @fires visit-begun, things-lit
 */
export class SurveyList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    asked: { attribute: false },
    stages: { state: true },
    opened: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
        margin: 0 0 14px;
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 12px;
        align-items: center;
        justify-content: space-between;
        margin: 0 0 6px;
      }
      .progress {
        margin: 0;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .stage {
        border-top: 1px solid var(--line);
      }
      .stage > summary {
        display: flex;
        gap: 8px;
        justify-content: space-between;
        align-items: baseline;
      }
      .stage > summary .title::before {
        display: inline-block;
        margin-right: 8px;
        border: 4px solid transparent;
        border-right-width: 0;
        border-left: 5px solid var(--ink-soft);
        content: '';
      }
      .stage[open] > summary .title::before {
        transform: rotate(90deg);
      }
      .row.ask {
        grid-template-columns: minmax(0, 1fr) auto;
      }
      .row .worth {
        font-weight: 600;
      }
      .row .state {
        grid-column: 1 / -1;
      }
      .row .state.open-ask {
        font-weight: 500;
        color: var(--ask);
      }
      .begin {
        min-height: 44px;
      }
    `,
  ];
  declare view: JobView;
  /** The ask that is to be answered first; null for none. */
  declare asked: string | null;
  /** The stages that are unfolded. */
  declare private stages: ReadonlySet<AskStage>;
  /** The ask that is open; null for none. */
  declare private opened: string | null;

  constructor() {
    super();
    keepFocus(this);
    this.stages = new Set();
    this.opened = null;
    this.asked = null;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const ask = changed.has('asked') ? surveyOf(this.view).find(({ id }) => id === this.asked) : undefined;
    if (ask === undefined) return;
    this.stages = new Set([...this.stages, ask.stage]);
    this.opened = ask.id;
  }

  override updated(changed: PropertyValues<this>): void {
    if (!changed.has('asked') || this.asked === null) return;
    this.renderRoot
      .querySelector(`[data-ask="${CSS.escape(this.asked)}"]`)
      ?.scrollIntoView({ block: 'center' });
  }

  override render(): TemplateResult {
    const asks = surveyOf(this.view);
    const { scheme, estimate } = this.view;
    const whole = estimate.schemes.find(({ id }) => id === scheme?.id);
    return html`<div class="head">
        <h3>Worth finding out</h3>
        <p class="progress">${progressWords(asks)}</p>
        <button class="begin" @click=${() => this.#begin()}>Quoting visit</button>
      </div>
      <p class="hint">
        ${whole === undefined ? 'Once there is a scheme, this tells what each thing that is not known yet is worth in the price.' : worthWords(whole.price)}
      </p>
      ${askStages.map((stage) =>
        this.#stage(
          stage,
          asks.filter((ask) => ask.stage === stage),
        ),
      )}`;
  }

  #begin(): void {
    this.dispatchEvent(new CustomEvent('visit-begun', { bubbles: true, composed: true }));
  }

  #stage(stage: AskStage, asks: readonly SurveyAsk[]): TemplateResult | typeof nothing {
    if (asks.length === 0) return nothing;
    const open = asks.filter(isUnsettledAsk);
    // What is being answered stays where it is until it is shut.
    const isShown = (ask: SurveyAsk): boolean => isUnsettledAsk(ask) || ask.id === this.opened;
    const isOpen = this.stages.has(stage);
    return html`<details class="stage" data-stage=${stage} ?open=${isOpen} @toggle=${(event: Event) => this.#toggle(stage, event)}>
      <summary>
        <span class="title">${stageTitles[stage]}</span>
        <span class=${open.length === 0 ? 'state' : 'state missing'}>${open.length === 0 ? 'All answered' : `${open.length} left`}</span>
      </summary>
      ${
        isOpen
          ? this.#asks(
              asks.filter(isShown),
              asks.filter((ask) => !isShown(ask)),
            )
          : nothing
      }
    </details>`;
  }

  #asks(shown: readonly SurveyAsk[], settled: readonly SurveyAsk[]): TemplateResult {
    return html`<ul class="list">${shown.map((ask) => this.#ask(ask))}</ul>
      ${
        settled.length === 0
          ? nothing
          : html`<details class="less">
              <summary>${counted(settled.length, 'answer')} so far</summary>
              <ul class="list">${settled.map((ask) => this.#ask(ask))}</ul>
            </details>`
      }`;
  }

  #ask(ask: SurveyAsk): TemplateResult {
    const isOpen = this.opened === ask.id;
    return html`<li data-ask=${ask.id}>
      <button class="row ask" aria-expanded=${isOpen} @click=${() => this.#open(ask, isOpen)}>
        <span>${ask.words}</span><span class="worth">${worthShort(ask)}</span>
        <span class=${ask.state === 'open' ? 'state open-ask' : 'state'}>${stateWords[ask.state]}${ask.when === 'isolated' && isUnsettledAsk(ask) ? ', waits until it is dead and opened' : ''}</span>
      </button>
      ${isOpen ? html`<div class="open"><survey-item .view=${this.view} .ask=${ask}></survey-item></div>` : nothing}
    </li>`;
  }

  /** Opens an ask, and lights on the plan what it is about. */
  #open({ id, subjects }: SurveyAsk, isOpen: boolean): void {
    this.opened = isOpen ? null : id;
    send(this, 'things-lit', { subjectIds: isOpen ? [] : subjects });
  }

  #toggle(stage: AskStage, event: Event): void {
    if (!(event.currentTarget instanceof HTMLDetailsElement)) return;
    const { open } = event.currentTarget;
    if (open === this.stages.has(stage)) return;
    const stages = new Set(this.stages);
    if (open) stages.add(stage);
    else stages.delete(stage);
    this.stages = stages;
  }
}
customElements.define('survey-list', SurveyList);
declare global {
  interface HTMLElementTagNameMap {
    'survey-list': SurveyList;
  }
  interface HTMLElementEventMap {
    'visit-begun': CustomEvent<null>;
    'visit-ended': CustomEvent<null>;
    'fact-asked': CustomEvent<{ readonly subjectId: string; readonly fact: string | null }>;
  }
}
