import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { OpenQuestion, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { areLit } from '../../lit-things.ts';
import { pounds } from '../../written.ts';
import { worthWords } from '../price/vat-words.ts';
import { controlsCss } from '../shared-styles.ts';
import { otherQuestions } from './other-questions.ts';
import { sectionOfThing } from './section-of-thing.ts';

/** The shown scheme, worked out in full. */
const wholeScheme = ({
  scheme,
  estimate,
}: Pick<JobView, 'scheme' | 'estimate'>): SchemeEstimate | undefined =>
  estimate.schemes.find(({ id }) => id === scheme?.id);

/** What would narrow the price of the shown scheme, dearest first; while something moves, as it was before. */
export function openQuestions(view: JobView): readonly OpenQuestion[] {
  return (wholeScheme(view)?.openQuestions ?? []).toSorted((a, b) => b.worthPence - a.worthPence);
}

/** The field that answers a question, by the name of its fact; what is not here has no single field. */
const askedFacts: Readonly<Record<string, string>> = {
  'box-depths': 'boxDepthMm',
  'rcd-found': 'upstreamRcd',
  'rcbo-available': 'rcboAvailable',
  'boards-liftable': 'liftable',
};

/** What is worth finding out, with what of the price's range each answer accounts for. */
export class OpenQuestions extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 0 0 8px;
        padding: 0;
        list-style: none;
      }
      li {
        border-top: 1px solid var(--rule);
      }
      .subjects {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
        padding: 6px 0 8px;
      }
      .row {
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 12px;
        width: 100%;
        min-height: 40px;
        padding: 6px;
        font-weight: 400;
        line-height: 1.35;
        text-align: left;
        justify-content: stretch;
        border-color: transparent;
        background: none;
      }
      .worth {
        font-weight: 600;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    return html`${this.#priced()} ${this.#others()}`;
  }

  #priced(): TemplateResult {
    const open = openQuestions(this.view);
    const whole = wholeScheme(this.view);
    if (this.view.scheme === null)
      return html`<p class="hint">
        Once there is a scheme, this tells what each thing that is not known yet is worth in the price.
      </p>`;
    if (whole === undefined || open.length === 0)
      return html`<p class="hint">Nothing that is open in the survey makes the price of this scheme wider.</p>`;
    return html`<p class="hint">${worthWords(whole.price)}</p>
      <ul>
        ${open.map((question) => this.#row(question))}
      </ul>`;
  }

  /** What checks wait for, whatever it is worth. */
  #others(): TemplateResult | typeof nothing {
    const others = otherQuestions(this.view.job);
    if (others.length === 0) return nothing;
    return html`<p class="hint">Checks wait for these, whatever the price.</p>
      <ul>
        ${others.map(
          ({ words, subjectId, fact }) =>
            html`<li>
              <button class="row" @click=${() => this.#askFor(subjectId, fact)}><span>${words}</span></button>
            </li>`,
        )}
      </ul>`;
  }

  #row(question: OpenQuestion): TemplateResult {
    const lit = areLit(this.view.lit, question.subjects);
    return html`<li>
      <button class="row" aria-pressed=${question.subjects.length < 2 ? nothing : lit} @click=${() => this.#look(question, lit)}>
        <span>${question.words}</span><span class="worth">${pounds(question.worthPence)}</span>
      </button>
      ${lit && question.subjects.length > 1 ? this.#subjects(question) : nothing}
    </li>`;
  }

  /** The things that a question is about, each opening its form; cables that are not laid yet have none. */
  #subjects({ question, subjects }: OpenQuestion): TemplateResult | typeof nothing {
    const { job, estimate } = this.view;
    const labelOf = labelsOf(estimate.asFound.worked);
    const known = subjects.filter((id) => sectionOfThing(job, id) !== null);
    if (known.length === 0) return nothing;
    return html`<div class="subjects">
      ${known.map(
        (id) => html`<button class="small" @click=${() => this.#ask(question, id)}>${labelOf(id)}</button>`,
      )}
    </div>`;
  }

  #ask(question: string, subjectId: string): void {
    this.#askFor(subjectId, askedFacts[question] ?? null);
  }

  #askFor(subjectId: string, fact: string | null): void {
    const detail = { subjectId, fact };
    this.dispatchEvent(new CustomEvent('fact-asked', { detail, bubbles: true, composed: true }));
  }

  /** Lights what the question is about; of one thing it opens the form, each time it is asked. */
  #look({ question, subjects }: OpenQuestion, lit: boolean): void {
    const [only, ...others] = subjects;
    const isOne = only !== undefined && others.length === 0;
    send(this, 'things-lit', { subjectIds: lit && !isOne ? [] : subjects });
    if (isOne) this.#ask(question, only);
  }
}
customElements.define('open-questions', OpenQuestions);
declare global {
  interface HTMLElementTagNameMap {
    'open-questions': OpenQuestions;
  }
  interface HTMLElementEventMap {
    'fact-asked': CustomEvent<{ readonly subjectId: string; readonly fact: string | null }>;
  }
}
