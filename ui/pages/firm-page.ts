import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Library } from '#model/library.ts';
import { ApiClient, ServerRefusal } from '../controllers/api-client.ts';
import { DocumentSession } from '../controllers/document-session.ts';
import '../elements/firm/firm-details.ts';
import '../elements/firm/labour-norms.ts';
import '../elements/firm/price-list.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import type { LibraryEdit } from '../library-events.ts';

const keepingWords = {
  kept: 'kept',
  keeping: 'being kept…',
  'not-kept': 'not kept yet',
  'changed-elsewhere': 'changed elsewhere',
} as const;

/** The firm's own page: its details, usual terms, limits, price list and labour norms, kept as they are edited. */
export class FirmPage extends LitElement {
  static override properties: PropertyDeclarations = { version: { state: true }, trouble: { state: true } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        min-height: 100vh;
        padding-bottom: 40px;
      }
      header {
        position: sticky;
        z-index: 2;
        top: 0;
        display: flex;
        flex-wrap: wrap;
        gap: 8px 16px;
        align-items: center;
        padding: 10px 20px;
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      h1 {
        margin: 0 auto 0 0;
        font: 600 20px/1.2 var(--drawing-font);
      }
      main {
        max-width: 1080px;
        margin: 0 auto;
        padding: 20px;
      }
      section {
        padding: 18px 20px;
        margin-bottom: 16px;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      .keeping {
        min-width: 92px;
        font-size: 13px;
        color: var(--ink-soft);
      }
      .warning {
        padding: 10px 12px;
        margin-bottom: 16px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
      @media (max-width: 700px) {
        header {
          padding: 8px 12px;
        }
        main {
          padding: 12px;
        }
        section {
          padding: 14px 12px;
        }
      }
    `,
  ];
  /** Counts changes, so that each is drawn. */
  declare private version: number;
  declare private trouble: string | null;
  #session: DocumentSession<Library> | null = null;
  readonly #api = new ApiClient();

  constructor() {
    super();
    this.version = 0;
    this.trouble = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeunload', this.#leaving);
    addEventListener('keydown', this.#keyed);
    this.addEventListener('library-edit', this.#edited);
    void this.#load();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeunload', this.#leaving);
    removeEventListener('keydown', this.#keyed);
    this.removeEventListener('library-edit', this.#edited);
    void this.#session?.keep('autosave');
    this.#session?.stop();
  }

  async #load(): Promise<void> {
    try {
      const start = await this.#api.readLibrary();
      const keeper = {
        read: () => this.#api.readLibrary(),
        save: (library: Library, base: number) => this.#api.saveLibrary(library, base),
      };
      this.#session = new DocumentSession(start, keeper, () => {
        this.version++;
      });
      this.trouble = null;
    } catch (error) {
      this.trouble = error instanceof ServerRefusal ? error.message : String(error);
    }
    this.version++;
  }

  readonly #edited = (event: CustomEvent<LibraryEdit>): void => this.#session?.edit(event.detail);

  readonly #leaving = (event: BeforeUnloadEvent): void => {
    if (this.#session?.unkept === true) event.preventDefault();
  };

  readonly #keyed = (event: KeyboardEvent): void => {
    const typing = event.composedPath()[0] instanceof HTMLInputElement;
    if (!(event.ctrlKey || event.metaKey) || typing) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.#session?.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.#session?.redo();
    else return;
    event.preventDefault();
  };

  override render(): TemplateResult {
    const session = this.#session;
    return html`<header>
        <h1 tabindex="-1">Firm, prices and norms</h1>
        <span class="keeping" role="status">${session === null ? nothing : keepingWords[session.keeping]}</span>
        <button
          ?disabled=${session?.undoLabel == null}
          @click=${() => session?.undo()}
          aria-label=${`Undo${session?.undoLabel == null ? '' : `: ${session.undoLabel}`}`}
        >
          Undo
        </button>
        <button
          ?disabled=${session?.redoLabel == null}
          @click=${() => session?.redo()}
          aria-label=${`Redo${session?.redoLabel == null ? '' : `: ${session.redoLabel}`}`}
        >
          Redo
        </button>
        <a class="button" href="/">All jobs</a>
      </header>
      <main>${session === null ? this.#waiting() : this.#parts(session)}</main>`;
  }

  #waiting(): TemplateResult {
    if (this.trouble === null) return html`<p class="hint">Fetching the firm’s library…</p>`;
    return html`<p class="warning" role="alert">${this.trouble}</p>
      <button @click=${() => void this.#load()}>Try again</button>`;
  }

  #parts(session: DocumentSession<Library>): TemplateResult {
    const library = session.now;
    return html`${this.#notice(session)}
      <section><firm-details .library=${library}></firm-details></section>
      <section><price-list .prices=${library.prices}></price-list></section>
      <section><labour-norms .norms=${library.norms}></labour-norms></section>`;
  }

  #notice(session: DocumentSession<Library>): TemplateResult | typeof nothing {
    if (session.keeping === 'changed-elsewhere')
      return html`<div class="warning" role="alert">
        <p>The firm’s library was changed elsewhere in the meantime. Which one is to count?</p>
        <button @click=${() => void session.putMineOver()}>Mine: lay it over theirs</button>
        <button @click=${() => void session.takeTheirs()}>Theirs: drop what I changed here</button>
      </div>`;
    if (session.trouble === null) return nothing;
    return html`<p class="warning" role="alert">Not kept yet: ${session.trouble} It is tried again by itself.</p>`;
  }
}
customElements.define('firm-page', FirmPage);
declare global {
  interface HTMLElementTagNameMap {
    'firm-page': FirmPage;
  }
}
