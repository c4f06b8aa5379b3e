import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import type { Answer } from '#model/job.ts';
import { setAnswer, setAnswerCertainty } from '../../edits/answers.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';
import { choiceFact, numberFact } from './fact-fields.ts';
import { formCss } from './form-styles.ts';

const stages: readonly { readonly stage: Question['stage']; readonly words: string }[] = [
  { stage: 'quoting', words: 'With nothing opened' },
  { stage: 'opened', words: 'With the board and the plates open' },
];

/** The questions that no drawing and no reading answers. */
export class AnswerList extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const questions: readonly Question[] = checklist;
    return html`${stages.map(
      ({ stage, words }) => html`<h4>${words}</h4>
        <div class="fields">
          ${questions.filter((question) => question.stage === stage).map((question) => this.#field(question))}
        </div>`,
    )}`;
  }

  #field(question: Question): TemplateResult {
    const answer = this.view.job.answers.find((known) => known.question === question.id);
    const about = {
      set: (_: 'answer', value: string | number | null) => setAnswer(question, value),
      certainty: answer === undefined ? undefined : { answer: answer.certainty },
      sure: (_: 'answer', certainty: Answer['certainty']) => setAnswerCertainty(question, certainty),
    };
    const value = answer?.value;
    if (question.unit !== null)
      return numberFact(
        { ...about, thing: { answer: typeof value === 'number' ? value : undefined } },
        'answer',
        {
          label: question.words,
          unit: question.unit,
          max: 10_000,
        },
      );
    return choiceFact(
      { ...about, thing: { answer: typeof value === 'string' ? value : undefined } },
      'answer',
      {
        label: question.words,
        options: question.answers.map(({ value: word, words }) => ({ value: word, label: words })),
        empty: 'Not answered',
      },
    );
  }
}
customElements.define('answer-list', AnswerList);
declare global {
  interface HTMLElementTagNameMap {
    'answer-list': AnswerList;
  }
}
