import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { sharedWayWords } from '#drawing/ways/shared-way-words.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import { controlsCss } from '../shared-styles.ts';
import { runWithLength } from './run-name.ts';

/** How new cables run, step by step: by which walls and voids, with the holes, chases and boards of each. Nothing where none has a way. */
export class RunSteps extends LitElement {
  static override properties: PropertyDeclarations = {
    worked: { attribute: false },
    runs: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      details {
        margin-top: 6px;
      }
      ol,
      ul {
        margin: 4px 0 2px;
        padding-left: 1.4em;
      }
      p {
        margin: 8px 0 0;
        font-weight: 600;
      }
      li {
        margin: 2px 0;
      }
    `,
  ];
  /** What the cables are of: their ends are named from it. */
  declare worked: Worked;
  declare runs: readonly Run[];

  constructor() {
    super();
    this.runs = [];
  }

  override render(): TemplateResult | typeof nothing {
    const drawn = this.runs.filter(({ steps }) => steps.length > 0);
    if (drawn.length === 0) return nothing;
    return html`<details>
      <summary>${drawn.length === 1 ? 'How the cable runs' : 'How the cables run'}</summary>
      ${drawn.map((run) => html`${drawn.length > 1 ? html`<p>${runWithLength(this.worked, run)}</p>` : nothing}<ol>${run.steps.map((step) => html`<li>${step}</li>`)}</ol>${this.#shared(run)}`)}
    </details>`;
  }

  /** What it has in common with other new cables. */
  #shared(run: Run): TemplateResult | typeof nothing {
    const words = sharedWayWords(this.worked, run);
    return words.length === 0 ? nothing : html`<ul>${words.map((each) => html`<li>${each}</li>`)}</ul>`;
  }
}
customElements.define('run-steps', RunSteps);
declare global {
  interface HTMLElementTagNameMap {
    'run-steps': RunSteps;
  }
}
