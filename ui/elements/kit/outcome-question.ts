import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { kitWords } from '#drawing/shopping/kit-words.ts';
import type { OutcomeChoice, OutcomeQuestion } from '#engine/schemes/outcomes/outcome-plan.ts';
import { packForOutcome } from '../../edits/pack-for.ts';
import { send } from '../../job-events.ts';
import { poundsMore } from '../../written.ts';
import '../fields/tick-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';

/** One open question with its outcomes: which of them are bought for, what each takes, what having it too costs. */
export class OutcomeQuestionRow extends LitElement {
  static override properties: PropertyDeclarations = {
    question: { attribute: false },
    lit: { type: Boolean },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 10px 0 4px;
        border-top: 1px solid var(--rule);
      }
      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-width: 0;
      }
      legend {
        display: flex;
        gap: 10px;
        align-items: center;
        justify-content: space-between;
        width: 100%;
        padding: 0;
        font: 600 0.9375rem / 1.3 var(--text-font);
      }
      ul {
        margin: 4px 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 10px;
        align-items: center;
        padding: 2px 0;
      }
      .pence {
        white-space: nowrap;
        font: 500 0.9375rem / 1.3 var(--drawing-font);
        text-align: right;
      }
      .kit {
        grid-column: 1 / -1;
        margin: 0 0 6px;
        padding-left: 30px;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      button[aria-pressed='true'] {
        border-color: var(--copper);
        background: var(--copper-wash);
      }
      @media (pointer: coarse) {
        tick-field {
          min-height: 44px;
        }
      }
    `,
  ];
  declare question: OutcomeQuestion;
  /** Whether what it is about is lit on the plan. */
  declare lit: boolean;

  constructor() {
    super();
    this.lit = false;
  }

  override render(): TemplateResult {
    const { words, outcomes, subjects } = this.question;
    return html`<fieldset>
      <legend>
        <span>${words}</span>
        ${
          subjects.length === 0
            ? nothing
            : html`<button
                class="small"
                aria-pressed=${this.lit}
                aria-label=${`Show on the plan: ${words}`}
                @click=${() => send(this, 'things-lit', { subjectIds: this.lit ? [] : subjects })}
              >
                Show
              </button>`
        }
      </legend>
      <ul>
        ${outcomes.map((outcome, i) => this.#outcome(outcome, i === 0))}
      </ul>
    </fieldset>`;
  }

  #outcome(outcome: OutcomeChoice, isCounted: boolean): TemplateResult {
    const { words, kit, isServed, addsPence } = outcome;
    const { more, less } = kitWords(kit);
    const isOnly = isServed && addsPence === null;
    return html`<li>
      <tick-field
        .label=${words}
        .value=${isServed}
        .disabled=${isOnly}
        @field-change=${(event: CustomEvent<FieldChange<boolean>>) => this.#changed(event, outcome)}
      ></tick-field>
      <span class="pence">${penceWords(outcome, isCounted)}</span>
      ${
        more === '' && less === ''
          ? nothing
          : html`<p class="kit">
              ${more === '' ? nothing : html`More: ${more}.`} ${less === '' ? nothing : html`Less: ${less}.`}
            </p>`
      }
    </li>`;
  }

  #changed(event: CustomEvent<FieldChange<boolean>>, { id }: OutcomeChoice): void {
    event.stopPropagation();
    const served = this.question.outcomes.filter((one) => one.isServed).map((one) => one.id);
    const now = event.detail.value ? [...served, id] : served.filter((one) => one !== id);
    send(this, 'job-edit', packForOutcome(this.question, now));
  }
}

/** What an outcome costs beside the others that are bought for. */
function penceWords({ isServed, addsPence }: OutcomeChoice, isCounted: boolean): string {
  if (addsPence === null) return isCounted ? 'as counted' : 'this only';
  if (addsPence === 0) return isServed ? 'costs no more' : 'no more to buy';
  return isServed ? `${poundsMore(addsPence)} in it` : poundsMore(addsPence);
}
customElements.define('outcome-question', OutcomeQuestionRow);
declare global {
  interface HTMLElementTagNameMap {
    'outcome-question': OutcomeQuestionRow;
  }
}
