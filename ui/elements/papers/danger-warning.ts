import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import type { JobView } from '../../job-view.ts';
import '../outcome-mark.ts';
import { controlsCss } from '../shared-styles.ts';

/** Over all papers: what was found dangerous, with the letter to the customer; nothing where no stop gate is shut by something found. */
export class DangerWarning extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      section {
        margin: 10px 0;
        padding: 8px 12px 12px;
        background: var(--fail-wash);
        border-left: 4px solid var(--fail);
      }
      h3 {
        margin: 0 0 4px;
      }
      outcome-mark {
        margin-right: 6px;
      }
      p,
      ul {
        margin: 4px 0;
      }
      ul {
        padding-left: 20px;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult | typeof nothing {
    const { job, library, estimate, date } = this.view;
    const letter = warnOfDanger(job, library, estimate);
    if (letter === null) return nothing;
    const query = new URLSearchParams({ date });
    return html`<section aria-labelledby="danger">
      <h3 id="danger"><outcome-mark outcome="fails"></outcome-mark>Dangerous as found: tell the customer in writing</h3>
      <ul>
        ${letter.dangers.map(({ heading }) => html`<li>${heading}</li>`)}
      </ul>
      <p>
        Stop, and add nothing before it is put right. The letter says in plain words what was found, what it can do, what
        must not be done, and what is to be done by whom; it has room for what you did on the spot and for a receipt.
      </p>
      <a
        class="button"
        download
        href=${`/api/jobs/${encodeURIComponent(job.id)}/exports/dangerous-condition.pdf?${query}`}
        aria-label="Fetch PDF: letter on the dangerous condition"
        >Fetch PDF</a
      >
    </section>`;
  }
}
customElements.define('danger-warning', DangerWarning);
declare global {
  interface HTMLElementTagNameMap {
    'danger-warning': DangerWarning;
  }
}
