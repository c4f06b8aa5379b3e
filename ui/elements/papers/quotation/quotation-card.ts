import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { eraseRefusal } from '#engine/quotation/erasure.ts';
import { dayWords } from '#engine/quotation/said.ts';
import { saidHowWords } from '#engine/quotation/said-how.ts';
import type { QuotationNote } from '#model/quotation-notes.ts';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { send } from '../../../job-events.ts';
import { type Answer, answerDrafts } from '../../../quotations/answer-drafts.ts';
import type { QuotationRecord } from '../../../quotations/quotation-record.ts';
import { isOwner, mayChange } from '../../../rights.ts';
import { pounds } from '../../../written.ts';
import { controlsCss } from '../../shared-styles.ts';
import type { AnswerGiven } from './answer-form.ts';
import './answer-form.ts';
import './customer-link.ts';
import { statusWords } from './status-words.ts';

/** What is being asked on the card. */
type Asking = 'nothing' | 'acceptance' | 'declined' | 'withdrawn' | 'erase';

/** One issued quotation: what it offers, how it stands, and what can be recorded of it. */
export class QuotationCard extends LitElement {
  static override properties: PropertyDeclarations = {
    quotation: { attribute: false },
    jobId: { type: String },
    customer: { type: String },
    today: { type: String },
    busy: { attribute: false },
    asking: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 10px 12px;
        border-left: 4px solid var(--ink);
      }
      :host([status='accepted']) {
        border-left: 4px double var(--pass);
      }
      :host([status='declined']),
      :host([status='withdrawn']),
      :host([status='replaced']) {
        border-left: 4px dashed var(--ink-faint);
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 12px;
        justify-content: space-between;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 8px;
      }
      ul {
        margin: 4px 0;
        padding: 0;
        list-style: none;
      }
      p {
        margin: 4px 0;
      }
      .late {
        padding-left: 8px;
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  declare quotation: QuotationRecord;
  declare jobId: string;
  declare customer: string;
  declare today: string;
  declare busy: boolean;
  declare private asking: Asking;

  constructor() {
    super();
    keepFocus(this);
    this.jobId = '';
    this.customer = '';
    this.today = '';
    this.busy = false;
    this.asking = 'nothing';
  }

  override willUpdate(changed: Map<string, unknown>): void {
    this.setAttribute('status', this.quotation.status);
    const before = changed.get('quotation') as QuotationRecord | undefined;
    if (!changed.has('quotation')) return;
    if (before?.status === this.quotation.status && before.lessened?.what === this.quotation.lessened?.what)
      return;
    // What was asked for is done, or what was being typed goes on.
    this.asking = 'nothing';
    if (!this.#mayAccept) answerDrafts.keep(this.jobId, this.#draft, null);
    else if (answerDrafts.of(this.jobId, this.#draft) !== null) this.asking = 'acceptance';
  }

  /** What an acceptance of it is kept by while it is typed. */
  get #draft(): string {
    return `${this.quotation.id}/accepted`;
  }

  /** Who said no may think again. */
  get #mayAccept(): boolean {
    return this.quotation.status === 'issued' || this.quotation.status === 'declined';
  }

  get #name(): string {
    const { heading, revision } = this.quotation;
    return `${heading === 'estimate' ? 'Estimate' : 'Quotation'}, revision ${revision}`;
  }

  override render(): TemplateResult {
    const { status, date, offers, contractPence, validUntil, lessened } = this.quotation;
    if (lessened?.what === 'whole') return this.#erased(lessened.at);
    const isLate = status === 'issued' && validUntil !== null && validUntil < this.today;
    return html`<div class="head">
        <strong>${this.#name}</strong>
        <span>${statusWords[status]}</span>
      </div>
      <p class="hint">
        ${dayWords(date)}${validUntil === null ? '' : `, holds until ${dayWords(validUntil)}`}
      </p>
      <ul>
        ${offers.map(({ name, grossPence }) => html`<li>${name}: <strong>${pounds(grossPence)}</strong> to pay</li>`)}
      </ul>
      ${isLate ? html`<p class="late">Its time is over: the price need not hold any more. Issue it anew, or say that it still does.</p>` : nothing}
      ${this.#acceptance()}
      ${contractPence === null ? nothing : html`<p>The work agreed comes to <strong class="contract">${pounds(contractPence)}</strong>, to pay in all.</p>`}
      <div class="acts">
        <a class="button" download href=${`/api/jobs/${encodeURIComponent(this.jobId)}/quotations/${this.quotation.id}/quotation.pdf`}
          >PDF as issued<span class="visually-hidden">: ${this.#name}</span></a
        >
        ${this.#button('Read it as issued', () => send(this, 'quotation-asked', { do: 'read', quotationId: this.quotation.id }))}
        ${this.#acts()}
      </div>
      ${this.#asked()}
      ${lessened === null ? html`<customer-link .jobId=${this.jobId} .quotationId=${this.quotation.id}></customer-link>` : nothing}`;
  }

  /** Of what was erased only that it was there. */
  #erased(at: string): TemplateResult {
    return html`<div class="head">
        <strong>${this.#name}</strong>
        <span>Erased</span>
      </div>
      <p class="hint">Of ${dayWords(this.quotation.date)}, ${statusWords[this.quotation.status].toLowerCase()}. What it said was erased on ${dayWords(at.slice(0, 10))}.</p>`;
  }

  #acceptance(): TemplateResult | typeof nothing {
    const { acceptance, offers } = this.quotation;
    if (acceptance === null) return nothing;
    const { by, how, on, schemeId, earlyStart } = acceptance;
    const name = offers.find((one) => one.schemeId === schemeId)?.name ?? schemeId;
    return html`<p>
      “${name}”, by ${by}, ${dayWords(on)}. ${saidHowWords[how]}.
      ${
        earlyStart === true
          ? 'Asked that work begins within the 14 days to cancel.'
          : 'No request to begin early is recorded: with a right to cancel, wait for the 14 days.'
      }
    </p>`;
  }

  #button(words: string, then: () => void): TemplateResult {
    return html`<button ?disabled=${this.busy} @click=${then}>
      ${words}<span class="visually-hidden">: ${this.#name}</span>
    </button>`;
  }

  #acts(): TemplateResult | typeof nothing {
    const { status, mayTakeBack } = this.quotation;
    const ask = (asking: Asking) => () => {
      this.asking = asking;
    };
    if (this.asking !== 'nothing' || !mayChange()) return nothing;
    const isOpen = status === 'issued';
    return html`${this.#mayAccept ? this.#button('Record an acceptance', ask('acceptance')) : nothing}
      ${isOpen ? this.#button('Declined', ask('declined')) : nothing}
      ${isOpen ? this.#button('Withdraw', ask('withdrawn')) : nothing}
      ${isOwner() && eraseRefusal(status) === null ? this.#button('Erase it', ask('erase')) : nothing}
      ${
        mayTakeBack === null
          ? nothing
          : this.#button('Take back what was recorded last', () =>
              this.#note({ kind: 'taken-back', of: mayTakeBack }),
            )
      }`;
  }

  #asked(): TemplateResult | typeof nothing {
    const { offers } = this.quotation;
    const put = (): void => {
      this.asking = 'nothing';
    };
    if (this.asking === 'nothing') return nothing;
    if (this.asking === 'acceptance')
      return html`<answer-form
        .jobId=${this.jobId}
        .draft=${this.#draft}
        .name=${this.customer}
        .today=${this.today}
        .schemes=${offers.map(({ schemeId, name, grossPence }) => ({ value: schemeId, label: `${name}, ${pounds(grossPence)}` }))}
        .asksEarlyStart=${true}
        .busy=${this.busy}
        act="Record the acceptance"
        @answer-given=${(event: CustomEvent<AnswerGiven>) => this.#accept(event.detail.answer)}
        @answer-dropped=${put}
      ></answer-form>`;
    if (this.asking === 'erase') return this.#eraseAsked(put);
    const kind = this.asking;
    const words =
      kind === 'declined'
        ? 'Record that the customer declined it? It can be taken back, and accepted after all.'
        : 'Record that you withdraw it? Tell the customer first: an offer holds until they hear of it.';
    return html`<p>${words}</p>
      <div class="acts">
        <button class="main" ?disabled=${this.busy} @click=${() => this.#note({ kind, on: this.today })}>
          ${kind === 'declined' ? 'Record: declined' : 'Record: withdrawn'}
        </button>
        <button @click=${put}>Not now</button>
      </div>`;
  }

  #eraseAsked(put: () => void): TemplateResult {
    return html`<p>
        Erase it for good? The paper, its drawings, its prices and the job as it was quoted go, with the names and words of
        what was recorded, and nobody can bring them back. That it was there stays: its number, its day, how it ended. The job itself
        stays as it is.
      </p>
      <div class="acts">
        <button class="main" ?disabled=${this.busy} @click=${() => send(this, 'quotation-asked', { do: 'erase', quotationId: this.quotation.id })}>
          Yes: erase it for good
        </button>
        <button @click=${put}>Not now</button>
      </div>`;
  }

  #accept({ by, how, on, schemeId, earlyStart }: Answer): void {
    const chosen = schemeId ?? this.quotation.offers[0]?.schemeId ?? '';
    const early = earlyStart === null ? {} : { earlyStart };
    this.#note({ kind: 'accepted', schemeId: chosen, by: by.trim(), how, on, ...early });
  }

  #note(note: QuotationNote): void {
    send(this, 'quotation-asked', { do: 'note', quotationId: this.quotation.id, note });
  }
}
customElements.define('quotation-card', QuotationCard);
declare global {
  interface HTMLElementTagNameMap {
    'quotation-card': QuotationCard;
  }
}
