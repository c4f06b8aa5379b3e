import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { NO_CONNECTION } from '../controllers/api-client.ts';
import type { ChangedTwice } from '../controllers/changed-twice.ts';
import type { Settlement } from '../controllers/settle-job.ts';
import type { Keeping } from '../job-view.ts';
import { whenWords } from '../when-words.ts';
import './clash-list.ts';
import './outcome-mark.ts';
import { counted } from '../written.ts';
import { controlsCss } from './shared-styles.ts';

/** What is kept: a job, or the firm's library, of which no copy can be made. */
type Kept = 'job' | 'library';

const names: Readonly<Record<Kept, string>> = { job: 'This job', library: 'The firm’s library' };

/** What can be done with two changed ones, in words, and what becomes of the other. */
const choices: Readonly<Record<Kept, readonly (readonly [Settlement, string, string])[]>> = {
  job: [
    ['take-theirs', 'Take theirs', 'mine goes on the list as a copy first'],
    ['mine-as-copy', 'Save mine as a copy', 'and go on with that'],
    ['mine-over-theirs', 'Put mine over theirs', 'theirs goes on the list as a copy first'],
  ],
  library: [
    ['take-theirs', 'Take theirs', 'what I changed here is dropped'],
    ['mine-over-theirs', 'Put mine over theirs', 'what was changed there is replaced'],
  ],
};

/**
 * Says what keeps the job or the firm's library from being kept, and what can be done; nothing while all is well.
 *
 * @fires keep-asked - try to keep it now
 * @fires job-back-asked - put a deleted job back
 * @fires keeping-settled - detail: { how } of two changed jobs
 */
export class KeepingNotice extends LitElement {
  static override properties: PropertyDeclarations = {
    keeping: { type: String },
    trouble: { attribute: false },
    theirSavedAt: { attribute: false },
    unkept: { type: Boolean },
    changedTwice: { attribute: false },
    triesAgain: { type: Boolean },
    here: { type: Boolean },
    waiting: { type: Number },
    photos: { type: Number },
    about: { type: String },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      div {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 12px;
        align-items: center;
        padding: 8px 20px;
        background: var(--ask-wash);
        border-bottom: 1px solid var(--ask);
      }
      div.here {
        flex-wrap: nowrap;
        padding-block: 4px;
        font-size: 0.875rem;
      }
      div.here p {
        flex: 1;
      }
      div.elsewhere {
        background: var(--fail-wash);
        border-color: var(--fail);
      }
      small {
        display: block;
        font-size: 0.875rem;
        font-weight: 400;
        color: var(--ink-soft);
      }
      p {
        flex: 1 1 320px;
        margin: 0;
      }
      clash-list {
        flex: 1 0 100%;
        max-width: 60rem;
      }
      @media (max-width: 700px) {
        div {
          padding: 8px 12px;
        }
        /* One line: the plan needs the room, and it is tried again by itself. */
        div.here button {
          display: none;
        }
      }
    `,
  ];
  declare keeping: Keeping;
  /** Why the last save did not get through; null when it did. */
  declare trouble: string | null;
  /** ISO; null where it is not told. */
  declare theirSavedAt: string | null;
  /** True when there are changes that nothing has kept. */
  declare unkept: boolean;
  /** The two that were changed, to be decided row by row; null where it can only be decided as a whole. */
  declare changedTwice: Pick<ChangedTwice, 'clashes' | 'differences'> | null;
  /** True when it is tried again without being asked. */
  declare triesAgain: boolean;
  /** True where it is kept on the device, and waits for the connection. */
  declare here: boolean;
  /** How many jobs wait to be sent, this one among them. */
  declare waiting: number;
  /** How many photos wait to be sent. */
  declare photos: number;
  declare about: Kept;

  constructor() {
    super();
    this.keeping = 'kept';
    this.trouble = null;
    this.theirSavedAt = null;
    this.unkept = false;
    this.changedTwice = null;
    this.triesAgain = true;
    this.here = false;
    this.waiting = 0;
    this.photos = 0;
    this.about = 'job';
  }

  override render(): TemplateResult | typeof nothing {
    if (this.keeping === 'changed-elsewhere') return this.#elsewhere();
    if (this.keeping === 'gone') return this.#deleted();
    if (this.trouble === null) return this.photos === 0 ? nothing : this.#photosWait();
    return this.here ? this.#waits(this.trouble) : this.#notKept(this.trouble);
  }

  #waits(trouble: string): TemplateResult {
    const jobs = this.waiting > 1 ? ` ${this.waiting} jobs wait.` : '';
    const others = this.photos > 0 ? `${jobs} ${counted(this.photos, 'photo')} with it.` : jobs;
    const words =
      trouble === NO_CONNECTION
        ? `No connection: kept on this device, sent when there is one.${others}`
        : `${trouble} Kept on this device; sent by itself.${others}`;
    return html`<div class="here" role="status">
      <p>${words}</p>
      <button class="small" @click=${() => this.#tell('keep-asked')}>Try now</button>
    </div>`;
  }

  /** The job is sent and its photos are not: the server was there for a moment, or is short of something. */
  #photosWait(): TemplateResult {
    return html`<div class="here" role="status">
      <p>${counted(this.photos, 'photo')} kept on this device and not sent yet: sent by itself when there is a connection.</p>
    </div>`;
  }

  #notKept(trouble: string): TemplateResult {
    return html`<div role="alert">
      <outcome-mark outcome="decide"></outcome-mark>
      <p>
        <strong>Your last changes are not saved yet.</strong> ${trouble} Leave this page open: nothing is lost${
          this.triesAgain
            ? ', and it is tried again by itself.'
            : '. It is not tried again by itself: mend what is named here first, or undo it; your next change is tried at once.'
        }
      </p>
      <button @click=${() => this.#tell('keep-asked')}>Try now</button>
    </div>`;
  }

  #deleted(): TemplateResult {
    return html`<div class="elsewhere" role="alert">
      <outcome-mark outcome="fails"></outcome-mark>
      <p>
        <strong>This job was deleted.</strong> It is off the list of jobs${
          this.unkept
            ? ', and your last changes are here and nowhere else.'
            : '; what you see is what it was.'
        }
        What you change now is not saved until you choose.
      </p>
      <button @click=${() => this.#tell('job-back-asked')}>
        <span>Restore<small>${this.unkept ? 'the same job, with my changes' : 'the same job, on the list again'}</small></span>
      </button>
      ${this.#choice('mine-as-copy', 'Keep a copy', 'as a new job; the old one stays deleted')}
    </div>`;
  }

  #tell(name: 'keep-asked' | 'job-back-asked'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }));
  }

  #elsewhere(): TemplateResult {
    const when = this.theirSavedAt === null ? '' : ` (saved ${whenWords(this.theirSavedAt, new Date())})`;
    return html`<div class="elsewhere" role="alert">
      <outcome-mark outcome="fails"></outcome-mark>
      <p>
        <strong>${names[this.about]} was changed elsewhere${when} while you changed it here.</strong> Both are there still.
        ${this.changedTwice === null ? 'Which is to count?' : 'Decide row by row what is to count, or keep one of the two whole.'}
      </p>
      ${
        this.changedTwice === null
          ? nothing
          : html`<clash-list
              .clashes=${this.changedTwice.clashes}
              .differences=${this.changedTwice.differences}
            ></clash-list>`
      }${choices[this.about].map(([how, words, consequence]) => this.#choice(how, words, consequence))}
    </div>`;
  }

  #choice(how: Settlement, words: string, consequence: string): TemplateResult {
    return html`<button
      @click=${() =>
        this.dispatchEvent(
          new CustomEvent('keeping-settled', { detail: { how }, bubbles: true, composed: true }),
        )}
    >
      <span>${words}<small>${consequence}</small></span>
    </button>`;
  }
}
customElements.define('keeping-notice', KeepingNotice);
declare global {
  interface HTMLElementTagNameMap {
    'keeping-notice': KeepingNotice;
  }
  interface HTMLElementEventMap {
    'keep-asked': CustomEvent;
    'job-back-asked': CustomEvent;
    'keeping-settled': CustomEvent<{ readonly how: Settlement }>;
  }
}
