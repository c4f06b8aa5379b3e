import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import '../elements/papers/quotation/quotation-view.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import { handOut } from '../fetch-as-file.ts';
import { dayWords } from '../written.ts';

/** What the server gives by a link. */
interface Shared {
  readonly document: QuotationDocument;
  readonly drawings: QuotationDrawings;
  readonly status: 'issued' | 'accepted' | 'declined' | 'withdrawn' | 'replaced';
  readonly expiresAt: string;
}

const statusNotes: Readonly<Record<Shared['status'], string>> = {
  issued: '',
  accepted: 'You have accepted it.',
  declined: 'It is recorded as declined. Tell whoever sent it if you think otherwise.',
  withdrawn: 'It was withdrawn: it is no offer any more. Ask whoever sent it.',
  replaced: 'A later one has taken its place. Ask whoever sent it for that one.',
};

/** What is told where there is nothing to show; null: a link shows nothing. */
type Trouble = 'no-link' | 'too-many' | 'not-reached';

const troubleWords: Readonly<Record<Trouble, readonly [string, string]>> = {
  'no-link': [
    'This link shows nothing, or nothing any longer',
    'It may be incomplete, too old, or taken back. Ask whoever sent it for another.',
  ],
  'too-many': ['Too many attempts', 'Wait a few minutes, then open the link again.'],
  'not-reached': ['The server is not reached', 'Look whether you are online, then try again.'],
};

/** The one page that a customer sees through a link: the quotation as it was issued, and nothing of the firm beside it. */
export class SharedQuotation extends LitElement {
  static override properties: PropertyDeclarations = {
    shared: { state: true },
    trouble: { state: true },
    busy: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      main {
        max-width: 860px;
        margin: 0 auto;
        padding: 16px 20px 64px;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 16px;
        align-items: center;
        margin-bottom: 12px;
      }
      header p {
        flex: 1;
        margin: 0;
      }
      h1 {
        font: 600 1.5rem / 1.25 var(--drawing-font);
      }
      .note {
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      @media (max-width: 700px) {
        main {
          padding: 12px 12px 48px;
        }
      }
      @media print {
        header {
          display: none;
        }
      }
    `,
  ];
  declare private shared: Shared | null;
  declare private trouble: Trouble | null;
  declare private busy: boolean;

  constructor() {
    super();
    this.shared = null;
    this.trouble = null;
    this.busy = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('hashchange', this.#look);
    void this.#look();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('hashchange', this.#look);
  }

  /** What stands behind the hash is sent in no address: it goes within the request, to be logged nowhere. */
  async #ask(path: string): Promise<Response | null> {
    const body = JSON.stringify({ token: location.hash.slice(1) });
    const headers = { 'content-type': 'application/json' };
    try {
      const answer = await fetch(path, { method: 'POST', headers, body });
      if (answer.ok) return answer;
      // Its words are for programs; unread, it would be held open.
      await answer.body?.cancel();
      this.trouble = answer.status === 429 ? 'too-many' : answer.status >= 500 ? 'not-reached' : 'no-link';
    } catch {
      this.trouble = 'not-reached';
    }
    return null;
  }

  readonly #look = async (): Promise<void> => {
    this.trouble = null;
    this.shared = null;
    const answer = await this.#ask('/api/shared-quotation');
    if (answer === null) return;
    this.shared = (await answer.json()) as Shared;
    document.title = `${this.shared.document.title} ${this.shared.document.reference}`;
  };

  async #fetchPdf(): Promise<void> {
    this.busy = true;
    const answer = await this.#ask('/api/shared-quotation/quotation.pdf');
    if (answer !== null) handOut('quotation.pdf', await answer.blob());
    this.busy = false;
  }

  override render(): TemplateResult {
    const { shared, trouble } = this;
    if (trouble !== null) return this.#sorry(trouble);
    if (shared === null) return html`<main><p>Fetching the quotation…</p></main>`;
    const note = statusNotes[shared.status];
    const { title, reference } = shared.document;
    return html`<main>
      <h1 class="visually-hidden">${title} ${reference}</h1>
      <header>
        <p class="hint">This page can be seen until ${dayWords(shared.expiresAt.slice(0, 10))}. Keep the PDF.</p>
        <button class="main" ?disabled=${this.busy} @click=${() => void this.#fetchPdf()}>Save as PDF</button>
      </header>
      ${note === '' ? nothing : html`<p class="note" role="status">${note}</p>`}
      <quotation-view .paper=${shared.document} .drawings=${shared.drawings}></quotation-view>
    </main>`;
  }

  #sorry(trouble: Trouble): TemplateResult {
    const [title, words] = troubleWords[trouble];
    return html`<main>
      <h1>${title}</h1>
      <p>${words}</p>
      ${trouble === 'no-link' ? nothing : html`<button @click=${() => void this.#look()}>Try again</button>`}
    </main>`;
  }
}
customElements.define('shared-quotation', SharedQuotation);
declare global {
  interface HTMLElementTagNameMap {
    'shared-quotation': SharedQuotation;
  }
}
