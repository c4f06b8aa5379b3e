import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { ListedJob } from '../controllers/api-client.ts';
import { mayChange } from '../rights.ts';
import { whenWords } from '../when-words.ts';
import { controlsCss } from './shared-styles.ts';

/**
 * The jobs that were deleted, folded, each with a way back; nothing where there is none.
 *
 * @fires job-wanted-back - detail: { job }
 */
export class DeletedJobs extends LitElement {
  static override properties: PropertyDeclarations = {
    jobs: { attribute: false },
    now: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin-top: 20px;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        gap: 4px 16px;
        align-items: center;
        padding: 8px 16px;
        border-top: 1px solid var(--rule);
      }
      li > div {
        flex: 1;
        min-width: 0;
        overflow-wrap: anywhere;
      }
      button {
        flex: none;
      }
      @media (max-width: 700px) {
        summary {
          padding: 10px 0;
        }
        li {
          padding: 8px 0;
        }
      }
    `,
  ];
  declare jobs: readonly ListedJob[];
  declare now: Date;

  constructor() {
    super();
    this.jobs = [];
    this.now = new Date();
  }

  override render(): TemplateResult | typeof nothing {
    if (this.jobs.length === 0) return nothing;
    return html`<details>
      <summary>Deleted jobs (${this.jobs.length})</summary>
      <ul>
        ${repeat(
          this.jobs,
          ({ id }) => id,
          (job) => this.#row(job),
        )}
      </ul>
    </details>`;
  }

  #row(job: ListedJob): TemplateResult {
    const title = job.title === '' ? 'Job without a title' : job.title;
    const facts = [
      job.reference,
      job.customer,
      `deleted ${whenWords(job.removedAt ?? job.savedAt, this.now)}`,
    ];
    return html`<li>
      <div>
        ${title}
        <div class="hint">${facts.filter((fact) => fact !== '').join(' · ')}</div>
      </div>
      ${
        mayChange()
          ? html`<button
        class="small"
        aria-label=${`Bring back ${title}`}
        @click=${() =>
          this.dispatchEvent(
            new CustomEvent('job-wanted-back', { detail: { job }, bubbles: true, composed: true }),
          )}
      >
        Bring back
      </button>`
          : nothing
      }
    </li>`;
  }
}
customElements.define('deleted-jobs', DeletedJobs);
declare global {
  interface HTMLElementTagNameMap {
    'deleted-jobs': DeletedJobs;
  }
  interface HTMLElementEventMap {
    'job-wanted-back': CustomEvent<{ readonly job: ListedJob }>;
  }
}
