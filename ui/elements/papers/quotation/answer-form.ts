import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { saidHowWords } from '#engine/quotation/said-how.ts';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { type Answer, answerDrafts } from '../../../quotations/answer-drafts.ts';
import type { Choice } from '../../fields/choice-field.ts';
import '../../fields/choice-field.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/text-field.ts';
import '../../fields/yes-no-field.ts';
import { controlsCss } from '../../shared-styles.ts';

const howChoices: readonly Choice[] = Object.entries(saidHowWords).map(([value, label]) => ({
  value,
  label,
}));

/** Event of this element. */
export interface AnswerGiven {
  readonly answer: Answer;
}

/**
 * Asks who said yes or no, how and when; which scheme, where there are several; and whether work was asked to begin early.
 * What is typed stays on this device until it is recorded or dropped.
 *
 * @fires answer-given - detail: { answer }
 * @fires answer-dropped
 */
export class AnswerForm extends LitElement {
  static override properties: PropertyDeclarations = {
    jobId: { type: String },
    draft: { type: String },
    name: { type: String },
    today: { type: String },
    schemes: { attribute: false },
    asksEarlyStart: { attribute: false },
    act: { type: String },
    busy: { attribute: false },
    answer: { state: true },
    tried: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      form {
        display: grid;
        gap: 10px;
        margin: 10px 0;
        padding: 12px;
        background: var(--paper);
        border: 1px solid var(--rule);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      .missing {
        margin: 0;
        padding-left: 8px;
        border-left: 4px solid var(--fail);
      }
      p {
        margin: 0;
      }
    `,
  ];
  declare jobId: string;
  /** What its answer is kept by while it is typed, of that job. */
  declare draft: string;
  /** Who is put there at first: the customer. */
  declare name: string;
  declare today: string;
  declare schemes: readonly Choice[];
  declare asksEarlyStart: boolean;
  /** What the button does: "Record the acceptance". */
  declare act: string;
  declare busy: boolean;
  declare private answer: Answer | null;
  declare private tried: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.jobId = '';
    this.draft = '';
    this.name = '';
    this.today = '';
    this.schemes = [];
    this.asksEarlyStart = false;
    this.act = 'Record it';
    this.busy = false;
    this.answer = null;
    this.tried = false;
  }

  override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('jobId') || changed.has('draft')) this.answer = answerDrafts.of(this.jobId, this.draft);
  }

  /** Begins with the customer, today, and the first scheme; what is typed stands until it was sent. */
  get #now(): Answer {
    return (
      this.answer ?? {
        by: this.name,
        how: 'message',
        on: this.today,
        schemeId: this.schemes[0]?.value ?? null,
        earlyStart: null,
      }
    );
  }

  #set(part: Partial<Answer>): void {
    this.answer = { ...this.#now, ...part };
    answerDrafts.keep(this.jobId, this.draft, this.answer);
  }

  override render(): TemplateResult {
    const { by, how, on, schemeId, earlyStart } = this.#now;
    const set =
      <K extends keyof Answer>(key: K) =>
      (event: CustomEvent<FieldChange<Answer[K]>>) => {
        event.stopPropagation();
        this.#set({ [key]: event.detail.value });
      };
    const needsName = this.tried && by.trim() === '';
    return html`<form @submit=${(event: Event) => event.preventDefault()}>
      ${
        this.schemes.length < 2
          ? nothing
          : html`<choice-field label="Which way was chosen" .options=${this.schemes} .value=${schemeId} .empty=${null} @field-change=${set('schemeId')}></choice-field>`
      }
      <text-field label="Who said so" .value=${by} @field-change=${set('by')}></text-field>
      ${needsName ? html`<p class="missing" role="alert">Name who said so: without a name it is worth nothing.</p>` : nothing}
      <choice-field label="How" .options=${howChoices} .value=${how} .empty=${null} @field-change=${set('how')}></choice-field>
      <text-field label="On which day" kind="date" .value=${on} @field-change=${set('on')}></text-field>
      ${
        this.asksEarlyStart
          ? html`<yes-no-field
              label="Asked in writing that work begins within the 14 days to cancel"
              .value=${earlyStart}
              @field-change=${set('earlyStart')}
            ></yes-no-field>`
          : nothing
      }
      <div class="acts">
        <button class="main" type="button" ?disabled=${this.busy} @click=${() => this.#give()}>${this.act}</button>
        <button type="button" @click=${() => this.#drop()}>Not now</button>
      </div>
    </form>`;
  }

  #give(): void {
    const answer = this.#now;
    this.tried = true;
    if (answer.by.trim() === '' || answer.on === '') return;
    const detail: AnswerGiven = { answer };
    this.dispatchEvent(new CustomEvent('answer-given', { detail }));
  }

  #drop(): void {
    answerDrafts.keep(this.jobId, this.draft, null);
    this.dispatchEvent(new CustomEvent('answer-dropped'));
  }
}
customElements.define('answer-form', AnswerForm);
declare global {
  interface HTMLElementTagNameMap {
    'answer-form': AnswerForm;
  }
}
