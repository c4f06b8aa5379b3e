import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Sheet } from '#engine/price/list/sheet.ts';
import type { Library } from '#model/library.ts';
import type { DocumentSession } from '../controllers/document-session.ts';
import { isTyping, sendTyped } from '../controllers/focus.ts';
import type { OpenLibrary } from '../controllers/open-library.ts';
import { today } from '../controllers/today.ts';
import { demoLeft } from '../elements/firm/demo-left.ts';
import { errorWords } from '../error-words.ts';
import '../elements/firm/firm-details.ts';
import '../elements/firm/firm-limits.ts';
import '../elements/firm/own-box-depths.ts';
import '../elements/firm/own-counts.ts';
import '../elements/firm/own-heights.ts';
import '../elements/firm/own-sold.ts';
import '../elements/firm/firm-terms.ts';
import { LabourNorms } from '../elements/firm/labour-norms.ts';
import '../elements/firm/library-file.ts';
import '../elements/firm/price-import.ts';
import '../elements/firm/price-list.ts';
import '../elements/keeping-line.ts';
import '../elements/keeping-notice.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import type { LibraryEdit } from '../library-events.ts';

/** The parts of the page, as its address names them and as people do. */
const parts = [
  ['firm', 'The firm'],
  ['labour', 'Hourly rate and norms'],
  ['terms', 'Usual terms'],
  ['prices', 'Price list'],
  ['import', 'A merchant’s list'],
  ['limits', 'Own limits'],
  ['file', 'As a file'],
] as const;
type Part = (typeof parts)[number][0];

/** The way back to a job. */
export interface WayBack {
  readonly href: string;
  /** Null where it is not known, as after the page was loaded again. */
  readonly title: string | null;
}

/** The firm's own page: its details, usual terms, limits, price list and labour norms, saved as they are edited. */
export class FirmPage extends LitElement {
  static override properties: PropertyDeclarations = {
    library: { attribute: false },
    back: { attribute: false },
    version: { state: true },
    trouble: { state: true },
  };
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
        font: 600 1.25rem/1.2 var(--drawing-font);
      }
      .back {
        min-width: 0;
        max-width: 22rem;
      }
      .back span {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
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
      section {
        scroll-margin-top: 72px;
      }
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-bottom: 16px;
      }
      .warning p,
      .warning ul {
        margin: 0;
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
  /** The firm's library as this window has it. */
  declare library: OpenLibrary;
  /** The job that one came from; null where it was none. */
  declare back: WayBack | null;
  /** Counts changes, so that each is drawn. */
  declare private version: number;
  declare private trouble: string | null;
  #endWatch = (): void => {};

  constructor() {
    super();
    this.version = 0;
    this.back = null;
    this.trouble = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.#keyed);
    this.addEventListener('library-edit', this.#edited);
    this.addEventListener('keep-asked', this.#keepNow);
    this.addEventListener('keeping-settled', this.#settled);
    this.addEventListener('price-book-wanted', this.#fetchBook);
    this.#endWatch = this.library.listen(() => {
      this.version++;
    });
    void this.#load();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.#keyed);
    this.removeEventListener('library-edit', this.#edited);
    this.removeEventListener('keep-asked', this.#keepNow);
    this.removeEventListener('keeping-settled', this.#settled);
    this.removeEventListener('price-book-wanted', this.#fetchBook);
    this.#endWatch();
    void this.library.keep();
  }

  async #load(): Promise<void> {
    try {
      await this.library.open();
      this.trouble = null;
    } catch (error) {
      this.trouble = errorWords(error);
    }
    this.version++;
    await this.#goToAsked();
  }

  readonly #edited = (event: CustomEvent<LibraryEdit>): void => this.library.session?.edit(event.detail);

  readonly #readFile = (file: File): Promise<readonly Sheet[]> => this.library.readSheets(file);

  /** The server makes the workbook of what it has: what is edited here goes there first. */
  readonly #fetchBook = (): void => {
    void this.library.keep().then(() => location.assign('/api/library/exports/price-list.xlsx'));
  };

  readonly #keepNow = (): void => void this.library.session?.keep('by-hand');

  readonly #settled = (event: HTMLElementEventMap['keeping-settled']): void => {
    void this.#settle(event.detail.how);
  };

  async #settle(how: HTMLElementEventMap['keeping-settled']['detail']['how']): Promise<void> {
    const { session } = this.library;
    if (session === null) return;
    try {
      if (how === 'take-theirs') await session.takeTheirs();
      else await session.putMineOver(await session.readTheirs());
      this.trouble = null;
    } catch (error) {
      this.trouble = errorWords(error);
    }
  }

  readonly #keyed = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const { session } = this.library;
    const key = event.key.toLowerCase();
    if (key === 's') {
      sendTyped();
      void session?.keep('by-hand');
    } else if (isTyping(event)) return;
    else if (key === 'z' && !event.shiftKey) session?.undo();
    else if (key === 'y' || key === 'z') session?.redo();
    else return;
    event.preventDefault();
  };

  override render(): TemplateResult {
    const { session } = this.library;
    return html`<header>
        <h1 tabindex="-1">Firm, prices and norms</h1>
        <keeping-line .keeping=${session?.keeping ?? 'kept'} .here=${session?.waitsHere ?? false}></keeping-line>
        <button
          ?disabled=${session?.undoLabel == null}
          title=${session?.undoLabel == null ? 'Nothing to undo yet' : `Undo: ${session.undoLabel}`}
          @click=${() => session?.undo()}
          aria-label=${`Undo${session?.undoLabel == null ? '' : `: ${session.undoLabel}`}`}
        >
          Undo
        </button>
        <button
          ?disabled=${session?.redoLabel == null}
          title=${session?.redoLabel == null ? 'Nothing to do again' : `Redo: ${session.redoLabel}`}
          @click=${() => session?.redo()}
          aria-label=${`Redo${session?.redoLabel == null ? '' : `: ${session.redoLabel}`}`}
        >
          Redo
        </button>
        ${this.#wayBack()}<a class="button" href="/">All jobs</a>
      </header>
      <main>${session === null ? this.#waiting() : this.#parts(session)}</main>`;
  }

  #wayBack(): TemplateResult | typeof nothing {
    if (this.back === null) return nothing;
    const { href, title } = this.back;
    const name = title === null ? 'the job' : title || 'the job without a title';
    return html`<a class="button main back" href=${href}><span>Back to ${name}</span></a>`;
  }

  /** Goes to the part that the address names, such as the hourly rate; otherwise stays. */
  async #goToAsked(): Promise<void> {
    const asked = new URLSearchParams(location.search).get('part');
    await this.updateComplete;
    const known = parts.find(([part]) => part === asked);
    if (known !== undefined) this.#goTo(known[0]);
  }

  #goTo(part: Part): void {
    const section = this.renderRoot.querySelector(`section[data-part='${part}']`);
    section?.scrollIntoView();
    const [content] = section?.children ?? [];
    if (content instanceof LabourNorms) content.focus({ preventScroll: true });
    else if (content instanceof HTMLElement) {
      content.tabIndex = -1;
      content.focus({ preventScroll: true });
    }
  }

  #demoLeft(library: Library): TemplateResult | typeof nothing {
    const left = demoLeft(library);
    if (left.length === 0) return nothing;
    return html`<div class="warning">
      <p><strong>Parts of the invented demo firm are left here; papers say so until you put in your own:</strong></p>
      <ul>
        ${left.map((words) => html`<li>${words}</li>`)}
      </ul>
    </div>`;
  }

  #waiting(): TemplateResult {
    if (this.trouble === null) return html`<p class="hint">Fetching the firm’s library…</p>`;
    return html`<p class="warning" role="alert">${this.trouble}</p>
      <button @click=${() => void this.#load()}>Try again</button>`;
  }

  #parts(session: DocumentSession<Library>): TemplateResult {
    const library = session.now;
    return html`<keeping-notice
        about="library"
        .keeping=${session.keeping}
        .trouble=${session.trouble}
        .theirSavedAt=${session.theirs?.savedAt ?? null}
        .triesAgain=${session.triesAgain}
        .here=${session.waitsHere}
      ></keeping-notice>
      ${this.trouble === null ? nothing : html`<p class="warning" role="alert">${this.trouble}</p>`}
      ${this.#demoLeft(library)}
      <nav aria-label="Parts of this page">
        ${parts.map(
          ([part, words]) =>
            html`<a
              class="button"
              href=${`/firm?part=${part}`}
              @click=${(event: Event) => {
                event.preventDefault();
                history.replaceState(history.state, '', `/firm?part=${part}`);
                this.#goTo(part);
              }}
              >${words}</a
            >`,
        )}
      </nav>
      <section data-part="firm"><firm-details .library=${library}></firm-details></section>
      <section data-part="labour">
        <labour-norms .norms=${library.norms}></labour-norms>
        <own-counts .counts=${library.norms.counts ?? {}}></own-counts>
        <own-sold .sold=${library.norms.sold ?? {}}></own-sold>
        <own-box-depths .depths=${library.norms.boxDepths ?? {}}></own-box-depths>
      </section>
      <section data-part="terms">
        <firm-terms .library=${library}></firm-terms>
        <own-heights .heights=${library.terms.heights ?? {}}></own-heights>
      </section>
      <section data-part="prices"><price-list .prices=${library.prices} .today=${today()}></price-list></section>
      <section data-part="import">
        <price-import .prices=${library.prices} .today=${today()} .readFile=${this.#readFile}></price-import>
      </section>
      <section data-part="limits"><firm-limits .limits=${library.limits}></firm-limits></section>
      <section data-part="file"><library-file .library=${library}></library-file></section>`;
  }
}
customElements.define('firm-page', FirmPage);
declare global {
  interface HTMLElementTagNameMap {
    'firm-page': FirmPage;
  }
}
