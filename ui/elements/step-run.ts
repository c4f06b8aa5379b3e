import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type Step, stepNames, steps } from '../job-view.ts';
import type { StepMark, StepState } from '../steps-done.ts';
import { controlsCss } from './shared-styles.ts';

const markWords: Readonly<Record<StepMark, string>> = {
  done: 'done',
  'in-part': 'in part',
  'to-do': 'to do',
  waits: 'waits',
  ready: 'ready',
};

/** What each mark means, in a sentence. */
const legend: Readonly<Record<StepMark, string>> = {
  done: 'A tick: nothing lacks here.',
  'in-part': 'Three dots: enough to go on with, but not all is known or decided.',
  'to-do': 'An empty ring: something lacks here.',
  waits: 'A bar: nothing lacks here, but a step before it is open.',
  ready: 'A dot: everything before it is done.',
};

/** What stands in each mark's ring, so that it is told without its colour. */
const paths: Readonly<Record<StepMark, string>> = {
  done: 'm6 10.5 2.8 2.8L14 7.5',
  'in-part': 'M6 10h.1M10 10h.1M14 10h.1',
  'to-do': '',
  waits: 'M7 10h6',
  ready: 'M10 9.9v.2',
};

/** The six steps as six points on one run of cable, copper as far as the job has got, each with a mark and a word for how far it is. */
export class StepRun extends LitElement {
  static override properties: PropertyDeclarations = {
    step: { type: String },
    states: { attribute: false },
    hrefs: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ol {
        display: flex;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        position: relative;
        flex: 1 1 104px;
        min-width: 0;
      }
      a {
        position: relative;
        z-index: 1;
        display: grid;
        justify-items: center;
        min-height: 44px;
        padding: 2px;
        font: 500 0.875rem/1.2 var(--drawing-font);
        color: var(--ink-soft);
        text-decoration: none;
      }
      svg {
        width: 20px;
        height: 20px;
        overflow: visible;
        stroke-width: 2;
      }
      circle {
        fill: var(--sheet);
        stroke: var(--field-line);
      }
      path {
        fill: none;
        stroke: var(--ink-soft);
        stroke-linecap: round;
      }
      small {
        font: 500 0.875rem/1.1 var(--drawing-font);
        white-space: nowrap;
      }
      li.to-do small {
        color: var(--ask);
        font-weight: 600;
      }
      li + li::before {
        content: '';
        position: absolute;
        top: 11px;
        right: 50%;
        width: 100%;
        height: 3px;
        background: var(--line);
      }
      /* Copper as far as the job has got. */
      li.done + li::before,
      li.in-part + li::before {
        background: var(--copper);
      }
      li.done circle {
        fill: var(--copper);
        stroke: var(--copper);
      }
      li.in-part circle {
        stroke: var(--copper);
      }
      li.in-part path {
        stroke: var(--copper);
      }
      li.done path {
        stroke: var(--sheet);
      }
      a[aria-current='step'] {
        font-weight: 600;
        color: var(--ink);
      }
      a[aria-current='step'] > span:first-of-type {
        text-decoration: underline 2px var(--copper);
        text-underline-offset: 3px;
      }
      a[aria-current='step'] circle {
        stroke: var(--ink);
        stroke-width: 3;
      }
      @media (max-width: 700px) {
        li {
          flex-basis: 0;
        }
        a {
          min-height: 52px;
          padding-top: 4px;
          font-size: 0.875rem;
        }
        li + li::before {
          top: 13px;
        }
      }
    `,
  ];
  declare step: Step;
  declare states: Readonly<Record<Step, StepState>>;
  declare hrefs: Readonly<Record<Step, string>>;

  override render(): TemplateResult {
    return html`<nav aria-label="Steps of the job">
      <ol>
        ${steps.map((step) => this.#step(step))}
      </ol>
    </nav>`;
  }

  #step(step: Step): TemplateResult {
    const { mark, lacks } = this.states[step];
    const words = lacks === '' ? markWords[mark] : `${markWords[mark]}: ${lacks}`;
    return html`<li class=${mark}>
      <a
        href=${this.hrefs[step]}
        title=${`${stepNames[step]} – ${words}. ${legend[mark]}`}
        aria-current=${step === this.step ? 'step' : 'false'}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="8"></circle><path d=${paths[mark]}></path></svg>
        <span>${stepNames[step]}<span class="visually-hidden">, </span></span>
        <small>${markWords[mark]}</small>${
          lacks === '' ? nothing : html`<span class="visually-hidden">: ${lacks}</span>`
        }
      </a>
    </li>`;
  }
}
customElements.define('step-run', StepRun);
declare global {
  interface HTMLElementTagNameMap {
    'step-run': StepRun;
  }
}
