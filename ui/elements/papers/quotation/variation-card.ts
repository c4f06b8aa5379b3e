import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { dayWords } from '#engine/quotation/said.ts';
import { saidHowWords } from '#engine/quotation/said-how.ts';
import type { QuotationNote } from '#model/quotation-notes.ts';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { send } from '../../../job-events.ts';
import { answerDrafts } from '../../../quotations/answer-drafts.ts';
import type { VariationRecord } from '../../../quotations/quotation-record.ts';
import { pounds, poundsMore } from '../../../written.ts';
import { controlsCss } from '../../shared-styles.ts';
import type { AnswerGiven } from './answer-form.ts';
import './answer-form.ts';
import { variationWords } from './status-words.ts';
import { workLines } from './work-lines.ts';

type Asking = 'nothing' | 'agreed' | 'refused';

/** One change of accepted work: before, after, difference, why, photos, and the customer's yes or no. */
export class VariationCard extends LitElement {
  static override properties: PropertyDeclarations = {
    variation: { attribute: false },
    jobId: { type: String },
    quotationId: { type: String },
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
        margin-top: 10px;
        padding: 10px 12px;
        border-left: 4px solid var(--ask);
      }
      :host([status='agreed']) {
        border-left: 4px double var(--pass);
      }
      :host([status='refused']),
      :host([status='withdrawn']) {
        border-left: 4px dashed var(--ink-faint);
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 12px;
        justify-content: space-between;
      }
      .acts,
      .photos {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 8px;
      }
      .photos a {
        display: block;
      }
      img {
        display: block;
        width: 88px;
        height: 88px;
        object-fit: cover;
        border: 1px solid var(--rule);
      }
      p {
        margin: 4px 0;
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare variation: VariationRecord;
  declare jobId: string;
  declare quotationId: string;
  declare customer: string;
  declare today: string;
  declare busy: boolean;
  declare private asking: Asking;

  constructor() {
    super();
    keepFocus(this);
    this.jobId = '';
    this.quotationId = '';
    this.customer = '';
    this.today = '';
    this.busy = false;
    this.asking = 'nothing';
  }

  override willUpdate(changed: Map<string, unknown>): void {
    this.setAttribute('status', this.variation.status);
    const before = changed.get('variation') as VariationRecord | undefined;
    if (!changed.has('variation') || before?.status === this.variation.status) return;
    // What was asked for is done, or what was being typed goes on.
    this.asking = 'nothing';
    for (const kind of ['agreed', 'refused'] as const) {
      const draft = this.#draft(kind);
      if (this.variation.status !== 'offered') answerDrafts.keep(this.jobId, draft, null);
      else if (answerDrafts.of(this.jobId, draft) !== null) this.asking = kind;
    }
  }

  override render(): TemplateResult {
    const { number, status, reason, beforePence, afterPence, parts, work, photos, decision } = this.variation;
    return html`<div class="head">
        <strong>Variation ${number}: ${poundsMore(afterPence - beforePence)}</strong>
        <span>${variationWords[status]}</span>
      </div>
      <p>${reason}</p>
      <p class="hint">
        To pay before it ${pounds(beforePence)}, with it ${pounds(afterPence)}.
        ${parts.map(({ words, pence }) => `${words} ${poundsMore(pence)}`).join('; ')}
      </p>
      ${work === null ? nothing : workLines(work)}
      ${
        photos.length === 0
          ? nothing
          : html`<div class="photos">
              ${photos.map((id, index) => html`<a href=${`/api/assets/${id}`} download><img src=${`/api/assets/${id}`} alt=${`Photo ${index + 1} of variation ${number}`} /></a>`)}
            </div>`
      }
      ${decision === null ? nothing : html`<p>By ${decision.by}, ${dayWords(decision.on)}. ${saidHowWords[decision.how]}.</p>`}
      <div class="acts">
        <a class="button" download href=${this.#href}>PDF for the customer<span class="visually-hidden">: variation ${number}</span></a>
      </div>
      ${status === 'offered' ? this.#answer() : nothing}`;
  }

  /** What an answer to it is kept by while it is typed. */
  #draft(kind: Exclude<Asking, 'nothing'>): string {
    return `${this.quotationId}/${this.variation.id}/${kind}`;
  }

  get #href(): string {
    const { quotationId, variation } = this;
    return `/api/jobs/${encodeURIComponent(this.jobId)}/quotations/${quotationId}/variations/${variation.id}/variation.pdf`;
  }

  #answer(): TemplateResult {
    const ask = (asking: Asking) => () => {
      this.asking = asking;
    };
    if (this.asking === 'nothing')
      return html`<div class="acts">
        <button class="main" ?disabled=${this.busy} @click=${ask('agreed')}>The customer agrees</button>
        <button ?disabled=${this.busy} @click=${ask('refused')}>The customer refuses</button>
        <button ?disabled=${this.busy} @click=${() => this.#note({ kind: 'variation-withdrawn', variationId: this.variation.id, on: this.today })}>
          Withdraw it
        </button>
      </div>`;
    const kind = this.asking === 'agreed' ? 'variation-agreed' : 'variation-refused';
    return html`<answer-form
      .jobId=${this.jobId}
      .draft=${this.#draft(this.asking)}
      .name=${this.customer}
      .today=${this.today}
      .busy=${this.busy}
      .act=${kind === 'variation-agreed' ? 'Record: agreed' : 'Record: refused'}
      @answer-given=${(event: CustomEvent<AnswerGiven>) => {
        const { by, how, on } = event.detail.answer;
        this.#note({ kind, variationId: this.variation.id, by: by.trim(), how, on });
      }}
      @answer-dropped=${ask('nothing')}
    ></answer-form>`;
  }

  #note(note: QuotationNote): void {
    send(this, 'quotation-asked', { do: 'note', quotationId: this.quotationId, note });
  }
}
customElements.define('variation-card', VariationCard);
declare global {
  interface HTMLElementTagNameMap {
    'variation-card': VariationCard;
  }
}
