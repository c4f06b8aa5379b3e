import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type Step, stepNames, steps } from '../job-view.ts';
import { controlsCss } from './shared-styles.ts';

/** The six steps as six points on one run of cable, copper as far as the job has got: the way through a job. */
export class StepRun extends LitElement {
  static override properties: PropertyDeclarations = {
    step: { type: String },
    done: { attribute: false },
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
        gap: 3px;
        min-height: 44px;
        padding: 4px 2px 2px;
        font: 500 0.875rem/1.2 var(--drawing-font);
        color: var(--ink-soft);
        text-decoration: none;
      }
      a::before {
        content: '';
        width: 15px;
        height: 15px;
        margin: 2px;
        background: var(--sheet);
        border: 2px solid var(--line);
        border-radius: 50%;
      }
      li + li::before {
        content: '';
        position: absolute;
        top: 12px;
        right: 50%;
        width: 100%;
        height: 3px;
        background: var(--line);
      }
      li.fed + li.fed::before,
      li.fed + li.next::before {
        background: var(--copper);
      }
      li.done a::before {
        background: var(--copper);
        border-color: var(--copper);
      }
      a[aria-current='step'] {
        font-weight: 600;
        color: var(--ink);
      }
      a[aria-current='step']::before {
        width: 19px;
        height: 19px;
        margin: 0;
        background: var(--sheet);
        border: 4px solid var(--copper);
      }
      li.done a[aria-current='step']::before {
        background: var(--copper);
        border-color: var(--ink);
        border-width: 3px;
      }
      @media (max-width: 700px) {
        li {
          flex-basis: 0;
        }
        a {
          min-height: 52px;
          padding-top: 7px;
          font-size: 0.8125rem;
        }
        li + li::before {
          top: 15px;
        }
      }
    `,
  ];
  declare step: Step;
  declare done: ReadonlySet<Step>;
  declare hrefs: Readonly<Record<Step, string>>;

  override render(): TemplateResult {
    const firstOpen = steps.find((step) => !this.done.has(step));
    return html`<nav aria-label="Steps of the job">
      <ol>
        ${steps.map((step) => {
          const done = this.done.has(step);
          const place = done ? 'done fed' : step === firstOpen ? 'next' : '';
          return html`<li class=${place}>
            <a href=${this.hrefs[step]} aria-current=${step === this.step ? 'step' : 'false'}
              >${stepNames[step]}${done ? html`<span class="visually-hidden">, done</span>` : ''}</a
            >
          </li>`;
        })}
      </ol>
    </nav>`;
  }
}
customElements.define('step-run', StepRun);
declare global {
  interface HTMLElementTagNameMap {
    'step-run': StepRun;
  }
}
