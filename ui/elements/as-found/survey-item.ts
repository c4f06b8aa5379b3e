import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { AskField } from '#engine/survey/ask.ts';
import { isUnsettled } from '#engine/survey/fields.ts';
import { confirmAsk, putOffAsk, takeUpAsk } from '../../edits/survey.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { listed } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';
import { askField } from './ask-field.ts';
import { stateWords, waitingChecks, worthSentence } from './ask-words.ts';
import { formCss } from './form-styles.ts';
import { sectionOfThing } from './section-of-thing.ts';

const keyOf = ({ subjectId, fact }: AskField): string => `${subjectId} ${fact ?? ''}`;

/**
 * One ask of the survey, answered in place: what to do and why, its fields with how sure each is, what the price hangs on it, and
 * that it cannot be told for now.
 *
 * @fires job-edit, fact-asked
 */
export class SurveyItem extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    ask: { attribute: false },
    bare: { type: Boolean },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
      .why,
      .source,
      .worth,
      .waits {
        margin: 0 0 6px;
        font-size: 0.875rem;
      }
      .source {
        color: var(--ink-soft);
      }
      .worth {
        font-weight: 500;
      }
      .now {
        margin: 0 0 6px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .fields {
        padding-bottom: 6px;
      }
      .buttons {
        margin: 4px 0 8px;
      }
      .buttons button {
        min-height: 44px;
      }
    `,
  ];
  declare view: JobView;
  declare ask: SurveyAsk;
  /** True where whoever shows it has a button of their own to put it off. */
  declare bare: boolean;
  /** The fields that one came for: those not settled when the ask was opened, all where all are. */
  #come: ReadonlySet<string> = new Set();

  constructor() {
    super();
    this.bare = false;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('ask');
    if (!changed.has('ask') || before?.id === this.ask.id) return;
    const open = this.ask.fields.filter(isUnsettled);
    this.#come = new Set((open.length > 0 ? open : this.ask.fields).map(keyOf));
  }

  override render(): TemplateResult {
    const { ask, view } = this;
    const waiting = waitingChecks(ask, view);
    const isAssumed = ask.state === 'assumed';
    return html`${isAssumed ? this.#confirm() : nothing}
      <div class="fields">${this.#fields()}</div>
      ${this.#putOff()}
      <p class="now" role="status">${ask.state === 'open' ? nothing : stateWords[ask.state]}</p>
      ${view.scheme === null ? nothing : html`<p class="worth">${worthSentence(ask)}</p>`}
      <p class="why">${ask.why}</p>
      ${waiting.length === 0 ? nothing : html`<p class="waits">Checks wait for it: ${listed(waiting)}.</p>`}
      ${ask.source === null ? nothing : html`<p class="source">${ask.source}</p>`}`;
  }

  #fields(): readonly (TemplateResult | typeof nothing)[] {
    const { ask, view } = this;
    // What was settled before one came is not shown again; what is settled here stays, to be put right.
    const shown = ask.fields.filter((field) => isUnsettled(field) || this.#come.has(keyOf(field)));
    return shown.map((field) => askField(view, ask, field) ?? this.#formOf(field.subjectId, field.fact));
  }

  /** A way to the form of a thing whose answer is more than one field. */
  #formOf(subjectId: string, fact: string | null): TemplateResult | typeof nothing {
    const { job, estimate, scheme } = this.view;
    const worked = (estimate.schemes.find(({ id }) => id === scheme?.id) ?? estimate.asFound).worked;
    const label = labelsOf(worked)(subjectId);
    if (sectionOfThing(job, subjectId) === null) return html`<p class="now">${label}</p>`;
    const detail = { subjectId, fact };
    return html`<div class="buttons">
      <button
        @click=${() => this.dispatchEvent(new CustomEvent('fact-asked', { detail, bubbles: true, composed: true }))}
      >
        Open ${label}
      </button>
    </div>`;
  }

  /** What was assumed is right: one press for all of it; nothing where more than that is missing. */
  #confirm(): TemplateResult | typeof nothing {
    const edit = confirmAsk(this.view.job, this.ask);
    return edit === null ? nothing : this.#button('Seen: it is as assumed', edit);
  }

  #putOff(): TemplateResult | typeof nothing {
    const { ask } = this;
    if (ask.state === 'put-off') return this.#button('Ask it again', takeUpAsk(ask));
    const isOpen = ask.state === 'open' || ask.state === 'assumed';
    return isOpen && !this.bare ? this.#button('Could not check', putOffAsk(ask)) : nothing;
  }

  #button(words: string, edit: JobEdit): TemplateResult {
    return html`<div class="buttons"><button @click=${() => send(this, 'job-edit', edit)}>${words}</button></div>`;
  }
}
customElements.define('survey-item', SurveyItem);
declare global {
  interface HTMLElementTagNameMap {
    'survey-item': SurveyItem;
  }
}
