import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { NO_CONNECTION } from '../controllers/api-client.ts';
import type { Settlement } from '../controllers/settle-job.ts';
import type { Difference } from '../differences/difference-words.ts';
import type { Keeping } from '../job-view.ts';
import { whenWords } from '../when-words.ts';
import { counted } from '../written.ts';
import './outcome-mark.ts';
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
    differences: { attribute: false },
    triesAgain: { type: Boolean },
    here: { type: Boolean },
    waiting: { type: Number },
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
      table {
        order: 1;
        flex: 1 0 100%;
        max-width: 60rem;
        background: var(--sheet);
      }
      caption {
        padding: 4px 0;
        font-weight: 600;
        text-align: left;
      }
      tbody th {
        color: var(--ink);
        border-top: 1px solid var(--rule);
      }
      th span {
        display: block;
        font-weight: 400;
        color: var(--ink-soft);
      }
      th,
      td {
        overflow-wrap: anywhere;
      }
      @media (max-width: 700px) {
        div {
          padding: 8px 12px;
        }
        /* One line: the plan needs the room, and it is tried again by itself. */
        div.here button {
          display: none;
        }
        /* Three columns would break words apart: each thing is a line of a list, with mine and theirs under it. */
        table,
        tbody,
        tr,
        tbody th,
        td {
          display: block;
        }
        thead {
          position: absolute;
          width: 1px;
          height: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        caption {
          display: block;
        }
        tr {
          padding: 6px 8px;
          border-top: 1px solid var(--rule);
        }
        tbody th,
        td {
          padding: 1px 0;
          border: 0;
        }
        td::before {
          color: var(--ink-soft);
          content: attr(data-whose) ': ';
        }
        td small {
          display: inline;
          margin-left: 6px;
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
  /** What differs between the two that were changed; none where it is not worked out. */
  declare differences: readonly Difference[];
  /** True when it is tried again without being asked. */
  declare triesAgain: boolean;
  /** True where it is kept on the device, and waits for the connection. */
  declare here: boolean;
  /** How many jobs wait to be sent, this one among them. */
  declare waiting: number;
  declare about: Kept;

  constructor() {
    super();
    this.keeping = 'kept';
    this.trouble = null;
    this.theirSavedAt = null;
    this.unkept = false;
    this.differences = [];
    this.triesAgain = true;
    this.here = false;
    this.waiting = 0;
    this.about = 'job';
  }

  override render(): TemplateResult | typeof nothing {
    if (this.keeping === 'changed-elsewhere') return this.#elsewhere();
    if (this.keeping === 'gone') return this.#deleted();
    if (this.trouble === null) return nothing;
    return this.here ? this.#waits(this.trouble) : this.#notKept(this.trouble);
  }

  #waits(trouble: string): TemplateResult {
    const others = this.waiting > 1 ? ` ${this.waiting} jobs wait.` : '';
    const words =
      trouble === NO_CONNECTION
        ? `No connection: kept on this device, sent when there is one.${others}`
        : `${trouble} Kept on this device; sent by itself.${others}`;
    return html`<div class="here" role="status">
      <p>${words}</p>
      <button class="small" @click=${() => this.#tell('keep-asked')}>Try now</button>
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
        Which is to count?
      </p>
      ${this.#whatDiffers()}${choices[this.about].map(([how, words, consequence]) => this.#choice(how, words, consequence))}
    </div>`;
  }

  #whatDiffers(): TemplateResult | typeof nothing {
    if (this.differences.length === 0) return nothing;
    return html`<table>
      <caption>
        What differs: ${counted(this.differences.length, 'thing')}
      </caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Mine</th>
          <th scope="col">Theirs</th>
        </tr>
      </thead>
      <tbody>
        ${this.differences.map(
          ({ thing, field, mine, theirs, by }) => html`<tr>
            <th scope="row">${thing}${field === '' ? nothing : html`<span>${field}</span>`}</th>
            <td data-whose="Mine">${mine}${by === 'them' ? nothing : html`<small>changed here</small>`}</td>
            <td data-whose="Theirs">${theirs}${by === 'me' ? nothing : html`<small>changed there</small>`}</td>
          </tr>`,
        )}
      </tbody>
    </table>`;
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
