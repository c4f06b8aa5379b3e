import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { forgetRefusal } from '#engine/quotation/erasure.ts';
import { keepFocus } from '../../../controllers/keep-focus.ts';
import { send } from '../../../job-events.ts';
import type { JobView } from '../../../job-view.ts';
import type { QuotationRecord } from '../../../quotations/quotation-record.ts';
import type { OfferMoved, QuotationsView } from '../../../quotations/quotations-view.ts';
import { isOwner, mayChange } from '../../../rights.ts';
import { pounds } from '../../../written.ts';
import { controlsCss } from '../../shared-styles.ts';
import { paperDialogCss } from './paper-dialog.ts';
import './money-moved.ts';
import './quotation-card.ts';
import './quotation-view.ts';
import { dearer } from './status-words.ts';
import './variation-card.ts';
import './variation-form.ts';

/** What was issued to the customer and what became of it; issuing the next; what has moved since; variations on site. */
export class IssuedQuotations extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    quotations: { attribute: false },
    confirming: { state: true },
    forgetting: { state: true },
  };
  static override styles = [
    controlsCss,
    paperDialogCss,
    css`
      :host {
        display: block;
        margin-top: 20px;
      }
      h4 {
        margin: 14px 0 4px;
        font: 600 0.9375rem / 1.3 var(--drawing-font);
      }
      quotation-card {
        margin-top: 10px;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 8px;
      }
      .trouble {
        padding: 8px 10px;
        background: var(--fail-wash);
        border-left: 4px solid var(--fail);
      }
      .moved {
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  declare view: JobView;
  declare quotations: QuotationsView;
  declare private confirming: boolean;
  declare private forgetting: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.confirming = false;
    this.forgetting = false;
  }

  override willUpdate(changed: Map<string, unknown>): void {
    const before = changed.get('quotations') as QuotationsView | undefined;
    if (before !== undefined && before.quotations.length < this.quotations.quotations.length)
      this.confirming = false;
  }

  override updated(): void {
    const { read } = this.quotations;
    if (read !== null && this.#dialog?.open === false) this.#dialog.showModal();
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  get #newest(): QuotationRecord | null {
    return this.quotations.quotations.at(-1) ?? null;
  }

  get #hasDraft(): boolean {
    const { reason, photos } = this.quotations;
    return reason.trim() !== '' || photos.length > 0;
  }

  override render(): TemplateResult {
    const { state, trouble, read } = this.quotations;
    return html`<h3>What the customer has from you</h3>
      ${
        trouble === ''
          ? nothing
          : html`<div class="trouble" role="alert">
              <p>${trouble}</p>
              <button @click=${() => send(this, 'quotation-asked', { do: 'look-again' })}>Look again</button>
            </div>`
      }
      ${state === 'fetching' ? html`<p class="hint">Fetching what was issued…</p>` : nothing}
      ${state === 'not-reached' && this.#hasDraft ? html`<p class="hint">What you began of a variation is on this device, with its photos: it stands here again once the server is reached.</p>` : nothing}
      ${state === 'there' ? html`${this.#there()} ${isOwner() ? this.#forget() : nothing}` : nothing}
      <dialog aria-label="As it was issued" @close=${() => send(this, 'quotation-asked', { do: 'read', quotationId: null })}>
        <header><button class="main" @click=${() => this.#dialog?.close()}>Put it away</button></header>
        ${read === null ? nothing : html`<quotation-view .paper=${read.paper} .drawings=${read.drawings}></quotation-view>`}
      </dialog>`;
  }

  #there(): TemplateResult {
    const newest = this.#newest;
    const earlier = this.quotations.quotations.slice(0, -1).toReversed();
    return html`${newest === null ? html`<p class="hint">Nothing is issued yet.</p>` : this.#card(newest)}
      ${newest === null ? nothing : this.#movedSince(newest)}
      ${newest?.status === 'accepted' ? this.#site(newest) : mayChange() ? this.#issue(newest) : nothing}
      ${
        earlier.length === 0
          ? nothing
          : html`<details>
              <summary>Earlier: ${earlier.length}</summary>
              ${earlier.map((one) => this.#card(one))}
            </details>`
      }`;
  }

  #card(quotation: QuotationRecord): TemplateResult {
    const { job, date } = this.view;
    return html`<quotation-card
      .quotation=${quotation}
      .jobId=${job.id}
      .customer=${job.site.customer}
      .today=${date}
      .busy=${this.quotations.busy}
    ></quotation-card>`;
  }

  /** Issuing asks first: it cannot be undone. */
  #issue(newest: QuotationRecord | null): TemplateResult {
    const revision = (newest?.revision ?? 0) + 1;
    const words = newest === null ? 'Issue it to the customer' : `Issue revision ${revision}`;
    if (!this.confirming)
      return html`<div class="acts">
        <button
          class="main"
          ?disabled=${this.quotations.busy}
          @click=${() => {
            this.confirming = true;
          }}
        >
          ${words}
        </button>
      </div>`;
    return html`<p>
        It is kept as it is now, with its prices and with the job as it stands, and cannot be changed or taken away any
        more: only answered, withdrawn, or replaced by another revision; then it can be erased.
        ${newest?.status === 'issued' ? `Revision ${newest.revision} then counts as replaced.` : ''}
      </p>
      <div class="acts">
        <button class="main" ?disabled=${this.quotations.busy} @click=${() => send(this, 'quotation-asked', { do: 'issue' })}>
          ${`Yes: ${words.charAt(0).toLowerCase()}${words.slice(1)}`}
        </button>
        <button
          @click=${() => {
            this.confirming = false;
          }}
        >
          Not yet
        </button>
      </div>`;
  }

  /** What a customer may ask for, and what it costs the firm: asked twice, since nothing brings it back. */
  #forget(): TemplateResult {
    const ask = (forgetting: boolean) => () => {
      this.forgetting = forgetting;
    };
    const refusal = forgetRefusal(this.quotations.quotations);
    if (!this.forgetting)
      return html`<div class="acts"><button class="small" @click=${ask(true)}>Erase the customer’s data</button></div>`;
    return html`<h4>Erase the customer’s data?</h4>
      <p>
        Name, address, title, notes, remarks, photos and plans that were sent go out of this job, out of every state of it that
        is kept, out of its quotations and variations, and out of what was recorded of them. Nobody can bring them back, and undo ends
        here. House, circuits and every figure stay. Look yourself through the names of rooms and points, through the words of work not on the drawing, and through the files that
        you fetched or sent.
      </p>
      <p class="hint">
        Before you do: an agreement without the name is hard to prove. Records for tax are commonly kept for six years, and claims from
        a contract can be brought for about as long; the law lets you keep what it obliges you to keep. How long you keep it is your
        decision; ask whoever advises you.
      </p>
      ${refusal === null ? nothing : html`<p class="trouble">${refusal}</p>`}
      <div class="acts">
        <button
          class="main"
          ?disabled=${this.quotations.busy || refusal !== null}
          @click=${() => {
            this.forgetting = false;
            send(this, 'quotation-asked', { do: 'forget' });
          }}
        >
          Yes: erase it for good
        </button>
        <button @click=${ask(false)}>Not now</button>
      </div>`;
  }

  #movedSince({ status, offers, lessened }: QuotationRecord): TemplateResult | typeof nothing {
    const { moved, working } = this.quotations;
    if (status === 'accepted' || lessened?.what === 'whole') return nothing;
    if (moved === null) return working ? html`<p class="hint">Looking what has changed since…</p>` : nothing;
    const lines = moved.map((one) => this.#offerMoved(one, offers)).filter((line) => line !== nothing);
    return lines.length === 0
      ? html`<p class="hint">Nothing has changed since it was issued that moves its price.</p>`
      : html`<div class="moved">${lines}</div>`;
  }

  #offerMoved(
    { schemeId, moved }: OfferMoved,
    offers: QuotationRecord['offers'],
  ): TemplateResult | typeof nothing {
    const name = offers.find((one) => one.schemeId === schemeId)?.name ?? schemeId;
    if (moved === null) return html`<p>“${name}” is not in the job any more.</p>`;
    if (moved.parts.length === 0) return nothing;
    const { beforePence, afterPence } = moved;
    return html`<p>
        The job or your prices have changed since: “${name}” is now
        <strong>${dearer(afterPence - beforePence, pounds)}</strong>, ${pounds(afterPence)} instead of ${pounds(beforePence)}.
      </p>
      <details>
        <summary>Why, line by line<span class="visually-hidden">: ${name}</span></summary>
        <money-moved .moved=${moved}></money-moved>
      </details>`;
  }

  #site(quotation: QuotationRecord): TemplateResult {
    const { job, date } = this.view;
    return html`${quotation.variations.map(
      (variation) => html`<variation-card
        .variation=${variation}
        .jobId=${job.id}
        .quotationId=${quotation.id}
        .customer=${job.site.customer}
        .today=${date}
        .busy=${this.quotations.busy}
      ></variation-card>`,
    )}
      <variation-form .view=${this.view} .quotation=${quotation} .quotations=${this.quotations}></variation-form>`;
  }
}
customElements.define('issued-quotations', IssuedQuotations);
declare global {
  interface HTMLElementTagNameMap {
    'issued-quotations': IssuedQuotations;
  }
}
