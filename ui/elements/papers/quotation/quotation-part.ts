import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { type QuotationDrawings, quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { BeforeSending, QuotationDocument } from '#engine/quotation/document.ts';
import { quote } from '#engine/quote.ts';
import { hrefOf } from '../../../controllers/router.ts';
import type { JobView } from '../../../job-view.ts';
import { controlsCss } from '../../shared-styles.ts';
import { paperDialogCss } from './paper-dialog.ts';
import './quotation-offer.ts';
import './quotation-view.ts';

/** The pages on which what is missing is put right, as people know them. */
const places: Readonly<Record<Exclude<BeforeSending['where'], 'papers'>, string>> = {
  'as-found': 'As found',
  wanted: 'Wanted',
  ways: 'Ways',
  price: 'Price',
  firm: 'The firm’s page',
};

/** The customer's paper in the step Papers: what it offers, what to see to first, and the paper itself to read or fetch. */
export class QuotationPart extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    revision: { attribute: false },
    isOpen: { state: true },
  };
  static override styles = [
    controlsCss,
    paperDialogCss,
    css`
      :host {
        display: block;
        margin: 12px 0 20px;
      }
      h3 {
        margin-bottom: 6px;
      }
      ul {
        margin: 0 0 10px;
        padding-left: 1.2em;
      }
      li {
        padding: 3px 0;
      }
      .before {
        padding: 8px 12px;
        margin-bottom: 12px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      .before h4 {
        margin: 0 0 4px;
        font: 600 0.9375rem / 1.3 var(--drawing-font);
      }
      .files {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-bottom: 12px;
      }
    `,
  ];
  declare view: JobView;
  /** The number that this paper gets when it goes out. */
  declare revision: number;
  declare private isOpen: boolean;
  #paper: QuotationDocument | null = null;
  #drawings: QuotationDrawings | null = null;

  constructor() {
    super();
    this.revision = 1;
    this.isOpen = false;
  }

  override willUpdate(changed: PropertyValues): void {
    const before = changed.get('view') as JobView | undefined;
    const { job, library, estimate } = this.view;
    const isSame =
      this.#paper !== null &&
      !changed.has('revision') &&
      (before === undefined ||
        (before.job === job && before.library === library && before.estimate === estimate));
    if (isSame) return;
    this.#paper = quote(job, library, estimate, this.revision);
    this.#drawings = null;
  }

  override render(): TemplateResult {
    const paper = this.#paper;
    if (paper === null) return html``;
    return html`<h3>For the customer: ${paper.title.toLowerCase()}</h3>
      <quotation-offer .view=${this.view}></quotation-offer>
      ${this.#before(paper)}
      <div class="files">
        <a class="button" download href=${this.#href}>Fetch PDF<span class="visually-hidden">: ${paper.title.toLowerCase()}</span></a>
        <button @click=${() => this.#open()}>Read it as the customer does</button>
      </div>
      <dialog
        aria-label=${`${paper.title} as the customer reads it`}
        @close=${() => {
          this.isOpen = false;
        }}
      >
        <header><button class="main" @click=${() => this.#dialog?.close()}>Put it away</button></header>
        ${this.isOpen ? html`<quotation-view .paper=${paper} .drawings=${this.#drawn(paper)}></quotation-view>` : nothing}
      </dialog>`;
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  /** A page of its own over everything: to be read, or handed over with the phone. */
  #open(): void {
    this.isOpen = true;
    this.#dialog?.showModal();
  }

  /** Drawn when first read, and not before: it takes a moment. */
  #drawn(paper: QuotationDocument): QuotationDrawings {
    this.#drawings ??= quotationDrawings(paper, this.view.estimate);
    return this.#drawings;
  }

  get #href(): string {
    const { job, date } = this.view;
    return `/api/jobs/${encodeURIComponent(job.id)}/exports/quotation.pdf?${new URLSearchParams({ date })}`;
  }

  #before({ beforeSending }: QuotationDocument): TemplateResult | typeof nothing {
    const of = (weight: BeforeSending['weight']): readonly BeforeSending[] =>
      beforeSending.filter((one) => one.weight === weight);
    if (beforeSending.length === 0) return nothing;
    return html`<div class="before">
      ${this.#list('Before you send this: it is a draft until', of('must'))}
      ${this.#list('Better said before you send it', of('should'))}
      <p class="hint">This list is not printed.</p>
    </div>`;
  }

  #list(title: string, of: readonly BeforeSending[]): TemplateResult | typeof nothing {
    if (of.length === 0) return nothing;
    return html`<h4>${title}</h4>
      <ul>
        ${of.map(({ words, where }) => html`<li>${words} ${this.#link(where)}</li>`)}
      </ul>`;
  }

  #link(where: BeforeSending['where']): TemplateResult | typeof nothing {
    if (where === 'papers') return nothing;
    const { job, scheme, storeyId } = this.view;
    const looked = { scheme: scheme?.id ?? null, storey: storeyId === '' ? null : storeyId, on: null };
    const href =
      where === 'firm'
        ? '/firm?part=firm'
        : hrefOf({ jobId: job.id, step: where, compare: false, a: null, b: null, ...looked });
    return html`<a href=${href}>${places[where]}</a>`;
  }
}
customElements.define('quotation-part', QuotationPart);
declare global {
  interface HTMLElementTagNameMap {
    'quotation-part': QuotationPart;
  }
}
