import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { LinksAsk, LinksSeen, QuotationLink } from '../../../quotations/quotation-links.ts';
import { mayChange } from '../../../rights.ts';
import { dayWords } from '../../../written.ts';
import '../../people/link-once.ts';
import { controlsCss } from '../../shared-styles.ts';

/** Links by which the customer sees one quotation: made, shown once, withdrawn. */
export class CustomerLink extends LitElement {
  static override properties: PropertyDeclarations = {
    jobId: { type: String },
    quotationId: { type: String },
    seen: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin-top: 8px;
      }
      p {
        margin: 4px 0;
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 12px;
        align-items: center;
        margin-top: 6px;
      }
    `,
  ];
  declare jobId: string;
  declare quotationId: string;
  /** Null until it is known. */
  declare private seen: LinksSeen | null;

  constructor() {
    super();
    this.jobId = '';
    this.quotationId = '';
    this.seen = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // Its properties are there once it is drawn.
    void this.updateComplete.then(() => this.#ask({ do: 'list' }));
  }

  #ask(ask: LinksAsk['ask']): void {
    const { jobId, quotationId } = this;
    const show = (seen: LinksSeen): void => {
      this.seen = seen;
    };
    const detail: LinksAsk = { jobId, quotationId, ask, show };
    this.dispatchEvent(new CustomEvent('quotation-links-asked', { detail, bubbles: true, composed: true }));
  }

  override render(): TemplateResult | typeof nothing {
    const { seen } = this;
    if (seen === null || !seen.isReached) return nothing;
    const now = new Date().toISOString();
    const going = seen.links.filter(({ withdrawnAt, expiresAt }) => withdrawnAt === null && expiresAt > now);
    return html`${seen.trouble === '' ? nothing : html`<p role="alert">${seen.trouble}</p>`}
      ${seen.made === null ? nothing : html`<link-once .href=${seen.made.href} .words=${`By this link the customer reads this quotation, and nothing else, until ${dayWords(seen.made.expiresAt.slice(0, 10))}.`}></link-once>`}
      ${going.map((link) => this.#going(link))}
      ${mayChange() ? html`<div class="line"><button @click=${() => this.#ask({ do: 'make' })}>Link for the customer</button></div>` : nothing}`;
  }

  #going({ id, madeAt, expiresAt }: QuotationLink): TemplateResult {
    const made = dayWords(madeAt.slice(0, 10));
    return html`<div class="line">
      <span class="hint">A link of ${made} goes until ${dayWords(expiresAt.slice(0, 10))}.</span>
      ${mayChange() ? html`<button class="small" @click=${() => this.#ask({ do: 'withdraw', linkId: id })}>Withdraw the link<span class="visually-hidden"> of ${made}</span></button>` : nothing}
    </div>`;
  }
}
customElements.define('customer-link', CustomerLink);
declare global {
  interface HTMLElementTagNameMap {
    'customer-link': CustomerLink;
  }
}
