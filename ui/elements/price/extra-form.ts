import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Extra } from '#model/extra.ts';
import { addExtra, type ExtraFacts } from '../../edits/extras.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { minutesOfTask, taskChoices, wordsOfTask } from './extra-choices.ts';
import { extraFields } from './extra-fields.ts';

/** Work as it is typed, before it is in the job. */
type Draft = Omit<Extra, 'id'>;
const nothingYet: Draft = { words: '' };

/** What was added, in its words. */
export interface ExtraAdded {
  readonly words: string;
}

/**
 * A form that adds work which is not on the drawing: in words, and what it takes.
 *
 * @fires job-edit
 * @fires extra-added - detail: { words }
 * @fires extra-dropped - nothing is to be added after all.
 */
export class ExtraForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    suggested: { type: String },
    draft: { state: true },
    tried: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
        gap: 12px;
        padding: 12px;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      .wide {
        grid-column: 1 / -1;
        margin: 0;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      .missing {
        padding-left: 8px;
        border-left: 4px solid var(--fail);
      }
    `,
  ];
  declare view: JobView;
  /** Words that stand for those that nobody types: what was found. */
  declare suggested: string;
  declare private draft: Draft;
  declare private tried: boolean;

  constructor() {
    super();
    this.suggested = '';
    this.draft = nothingYet;
    this.tried = false;
  }

  get #words(): string {
    const typed = this.draft.words.trim();
    return (typed === '' ? this.suggested.trim() : typed).slice(0, 500);
  }

  /** Why it cannot be added yet; empty: it can. */
  get #missing(): string {
    if ([...this.renderRoot.querySelectorAll('number-field')].some(({ isUnread }) => isUnread))
      return 'A figure cannot be read: mend it first.';
    if (this.#words === '') return 'Say what is to be done: the customer reads it.';
    const { typicalMin = 0, materialsPence = 0 } = this.draft;
    return typicalMin === 0 && materialsPence === 0
      ? 'Give minutes of work, or what its materials cost.'
      : '';
  }

  override render(): TemplateResult {
    const { job, library } = this.view;
    return html`<choice-field
        class="wide"
        label="Begin from"
        .value=${this.draft.task ?? null}
        .options=${taskChoices(library)}
        .empty=${'My own words and figures'}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => this.#begin(event)}
      ></choice-field>
      <text-field
        class="wide"
        label="What is done, in words for the customer"
        .value=${this.draft.words}
        .help=${this.suggested.trim() === '' ? '' : `Empty: “${this.suggested.trim()}”`}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          this.draft = { ...this.draft, words: event.detail.value };
        }}
      ></text-field>
      ${extraFields({ extra: this.draft, job, library, set: (facts) => this.#set(facts) })}
      ${this.tried && this.#missing !== '' ? html`<p class="wide missing" role="alert">${this.#missing}</p>` : nothing}
      <div class="wide acts">
        <button class="main" @click=${() => this.#add()}>Add it to the price</button>
        <button @click=${() => this.#drop()}>Not now</button>
      </div>`;
  }

  #begin(event: CustomEvent<FieldChange<string | null>>): void {
    event.stopPropagation();
    const task = event.detail.value;
    const { words, task: before, ...others } = this.draft;
    if (task === null) {
      this.draft = { ...others, words };
      return;
    }
    // What somebody typed stays; the words of the task before it do not.
    const typed = before !== undefined && words === wordsOfTask(before) ? '' : words;
    const { lowMin: _low, highMin: _high, ...rest } = others;
    this.draft = {
      ...rest,
      ...minutesOfTask(task, this.view.library.norms),
      task,
      words: typed.trim() === '' ? wordsOfTask(task) : typed,
    };
  }

  #set(facts: ExtraFacts): void {
    const all = Object.entries({ ...this.draft, ...facts }).filter(([, value]) => value !== null);
    this.draft = Object.fromEntries(all) as Draft;
  }

  #drop(): void {
    this.draft = nothingYet;
    this.tried = false;
    this.dispatchEvent(new CustomEvent('extra-dropped'));
  }

  #add(): void {
    this.tried = true;
    if (this.#missing !== '') return;
    const words = this.#words;
    send(this, 'job-edit', addExtra({ ...this.draft, id: newId(), words }));
    this.draft = nothingYet;
    this.tried = false;
    const detail: ExtraAdded = { words };
    this.dispatchEvent(new CustomEvent('extra-added', { detail }));
  }
}
customElements.define('extra-form', ExtraForm);
declare global {
  interface HTMLElementTagNameMap {
    'extra-form': ExtraForm;
  }
}
