import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { JobLine, JobStand } from '../controllers/job-list.ts';
import { jobHref } from '../controllers/router.ts';
import { NEVER_SENT } from '../device/kept-copy.ts';
import { mayChange } from '../rights.ts';
import { whenWords } from '../when-words.ts';
import { counted } from '../written.ts';
import { controlsCss } from './shared-styles.ts';

/** How a job stands to this device, in words; nothing where all is as usual. */
const standWords: Readonly<Record<JobStand, string>> = {
  sent: '',
  waits: 'Kept on this device, not sent yet',
  absent: 'Not on this device: needs a connection',
};

/**
 * A job as a line of the list.
 *
 * @fires job-copied - detail: { job }
 * @fires job-removed - detail: { job }
 */
export class JobRow extends LitElement {
  static override properties: PropertyDeclarations = {
    job: { attribute: false },
    now: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        position: relative;
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 2px 20px;
        align-items: center;
        padding: 13px 16px;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      :host(:hover) {
        border-color: var(--ink-faint);
      }
      h2 {
        font-size: 1.0625rem;
      }
      a {
        color: var(--ink);
        text-decoration: none;
      }
      /* The whole line leads to the job; its buttons lie above. */
      a::after {
        content: '';
        position: absolute;
        inset: 0;
      }
      a:focus-visible {
        outline: none;
      }
      a:focus-visible::after {
        outline: 2px solid var(--copper);
        outline-offset: 2px;
      }
      .who {
        color: var(--ink-soft);
        font-size: 0.875rem;
      }
      .stand {
        font-weight: 600;
        color: var(--ink);
      }
      .facts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 14px;
        color: var(--ink-soft);
        font-size: 0.875rem;
      }
      .acts {
        position: relative;
        z-index: 1;
        display: flex;
        grid-row: 1 / span 3;
        grid-column: 2;
        gap: 6px;
      }
      @media (max-width: 700px) {
        :host {
          grid-template-columns: minmax(0, 1fr);
          padding: 12px;
        }
        .acts {
          grid-row: auto;
          grid-column: 1;
          margin-top: 8px;
        }
      }
    `,
  ];
  declare job: JobLine;
  declare now: Date;

  /** Moves the focus to the way into the job. */
  override focus(): void {
    this.renderRoot.querySelector('a')?.focus();
  }

  override render(): TemplateResult {
    const { job } = this;
    const who = [job.reference, job.customer].filter((part) => part !== '').join(' · ');
    return html`<h2><a href=${jobHref(job.id)}>${job.title === '' ? 'Job without a title' : job.title}</a></h2>
      <div class="who">${who === '' ? 'No reference and no customer yet' : who}</div>
      <div class="facts">
        <span>${job.wantedPoints === 0 ? 'nothing wanted yet' : counted(job.wantedPoints, 'wanted point')}</span>
        <span>${job.schemes === 0 ? 'no scheme yet' : counted(job.schemes, 'scheme')}</span>
        ${job.etag === NEVER_SENT ? nothing : html`<span>saved ${whenWords(job.savedAt, this.now)}</span>`}
        ${job.stand === 'sent' ? nothing : html`<span class="stand">${standWords[job.stand]}</span>`}
      </div>
      ${job.etag === NEVER_SENT || job.stand === 'absent' || !mayChange() ? nothing : this.#acts()}`;
  }

  /** What the server does: of a job that it was never given, or cannot be reached for, there is nothing to be done. */
  #acts(): TemplateResult {
    const { job } = this;
    return html`<div class="acts">
        <button class="small" aria-label=${`Copy ${job.title}`} @click=${() => this.#tell('job-copied')}>Copy</button>
        <button class="small quiet" aria-label=${`Delete ${job.title}`} @click=${() => this.#tell('job-removed')}>
          Delete
        </button>
      </div>`;
  }

  #tell(name: 'job-copied' | 'job-removed'): void {
    this.dispatchEvent(new CustomEvent(name, { detail: { job: this.job }, bubbles: true, composed: true }));
  }
}
customElements.define('job-row', JobRow);
declare global {
  interface HTMLElementTagNameMap {
    'job-row': JobRow;
  }
  interface HTMLElementEventMap {
    'job-copied': CustomEvent<{ readonly job: JobLine }>;
    'job-removed': CustomEvent<{ readonly job: JobLine }>;
  }
}
