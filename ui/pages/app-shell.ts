import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { ApiClient } from '../controllers/api-client.ts';
import { DraftPhotos } from '../controllers/draft-photos.ts';
import { focusHeadingOf, HeadingFocus, sendTyped } from '../controllers/focus.ts';
import { JobList } from '../controllers/job-list.ts';
import { OpenJobs } from '../controllers/open-jobs.ts';
import { OpenLibrary } from '../controllers/open-library.ts';
import { OtherWindows } from '../controllers/other-windows.ts';
import { PeopleClient } from '../controllers/people-client.ts';
import { PictureClient } from '../controllers/picture-client.ts';
import { Pictures } from '../controllers/pictures.ts';
import { hrefOf, type Route, Router } from '../controllers/router.ts';
import { ScreenParts } from '../controllers/screen-parts.ts';
import type { WhoIsHere } from '../controllers/who-is-here.ts';
import { AskedToLast } from '../device/asked-to-last.ts';
import { Copies } from '../device/copies.ts';
import { openDeviceStore } from '../device/indexed-store.ts';
import { thisTab } from '../device/this-tab.ts';
import { deviceNameOf } from '../device/who-was-here.ts';
import { type UnreadEntry, unreadEntries } from '../elements/fields/unread-entries.ts';
import '../elements/part-coming.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import { AppUpdate } from '../offline/app-update.ts';
import { appShellCss } from './app-shell-styles.ts';
import type { WayBack } from './firm-page.ts';
import './job-list-page.ts';
import './missing-page.ts';
import { isPart, partLoads, partOf } from './part-loads.ts';

/** Only what was built is kept for opening without a connection: the developers' server changes its files as it goes. */
const IS_BUILT = (import.meta as { readonly env?: { readonly PROD?: boolean } }).env?.PROD === true;

/** The product's frame: it follows addresses, shows their page, and is there when something breaks. */
export class AppShell extends LitElement {
  static override properties: PropertyDeclarations = {
    route: { state: true },
    broken: { state: true },
    dropped: { state: true },
  };
  static override styles = [controlsCss, appShellCss];
  declare private route: Route;
  /** What broke in the page itself; empty while nothing did. */
  declare private broken: string;
  /** Entries that could not be read and went with the page that they stood on. */
  declare private dropped: readonly UnreadEntry[];
  /** Entries that could not be read when the page was left. */
  #unreadAtLeaving: readonly UnreadEntry[] = [];
  readonly #parts = new ScreenParts(partLoads);
  readonly #here: WhoIsHere;
  readonly #api: ApiClient;
  readonly #people: PeopleClient;
  readonly #copies: Copies;
  readonly #jobs: OpenJobs;
  readonly #library: OpenLibrary;
  readonly #pictures: Pictures;
  readonly #photos: DraftPhotos;
  readonly #list: JobList;
  readonly #toLast = new AskedToLast();
  readonly #update = new AppUpdate({
    changed: () => this.requestUpdate(),
    reload: () => void this.#loadAnew(),
  });
  readonly #otherWindows = new OtherWindows(() => void this.#jobs.lookAgain());
  #endLibraryWatch = (): void => {};
  #endJobsWatch = (): void => {};
  #endPartsWatch = (): void => {};
  readonly #heading = new HeadingFocus();
  readonly #router = new Router((route) => {
    this.#unreadAtLeaving = unreadEntries();
    this.route = route;
  });

  /** @param here whose jobs are shown; nobody else's are on this page. */
  constructor(here: WhoIsHere) {
    super();
    this.#here = here;
    this.#api = new ApiClient(here.fetch);
    this.#people = new PeopleClient(this.#api);
    this.#copies = new Copies(openDeviceStore(deviceNameOf(here.firm)), thisTab());
    this.#jobs = new OpenJobs(this.#api, undefined, this.#copies);
    this.#library = new OpenLibrary(this.#api, undefined, this.#copies);
    this.#pictures = new Pictures({ store: this.#copies.store, client: new PictureClient(this.#api) });
    this.#photos = new DraftPhotos(this.#copies.store, this.#pictures);
    const parts = { api: this.#api, jobs: this.#jobs, copies: this.#copies, photos: this.#photos };
    const heard = (): void => {
      void this.#pictures.sweep();
      // What is looked at is there by now: the rest of the screen comes meanwhile.
      void this.#parts.rest();
    };
    this.#list = new JobList({ ...parts, heard });
    this.route = this.#router.route;
    this.broken = '';
    this.dropped = [];
    this.addEventListener('page-asked', (event) => this.#router.go(event.detail.href));
    this.addEventListener('list-changed', () => this.#otherWindows.tell());
    this.addEventListener('picture-asked', ({ detail: { assetId, show } }) => {
      void this.#pictures.see(assetId).then(show);
    });
    this.addEventListener('update-asked', () => void this.#update.take());
    this.addEventListener('parts-asked', () => this.#parts.again());
    this.addEventListener('reload-asked', () => void this.#loadAnew());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#router.start();
    this.#otherWindows.start();
    addEventListener('beforeunload', this.#leaving);
    addEventListener('online', this.#isConnected);
    this.#endLibraryWatch = this.#library.listen(() => this.requestUpdate());
    this.#endJobsWatch = this.#jobs.watch(() => this.#toLast.ask(this.#jobs.unkept));
    this.#endPartsWatch = this.#parts.watch(() => this.requestUpdate());
    if (IS_BUILT) void this.#update.start();
    void this.#takeUp();
    document.addEventListener('visibilitychange', this.#lookedAt);
    addEventListener('focus', this.#cameBack);
    addEventListener('error', this.#failed);
    addEventListener('unhandledrejection', this.#failed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#router.stop();
    this.#otherWindows.stop();
    removeEventListener('beforeunload', this.#leaving);
    removeEventListener('online', this.#isConnected);
    this.#endLibraryWatch();
    this.#endJobsWatch();
    this.#endPartsWatch();
    this.#update.stop();
    this.#pictures.stop();
    document.removeEventListener('visibilitychange', this.#lookedAt);
    removeEventListener('focus', this.#cameBack);
    removeEventListener('error', this.#failed);
    removeEventListener('unhandledrejection', this.#failed);
  }

  readonly #leaving = (event: BeforeUnloadEvent): void => {
    // What is being typed counts too: a field sends it when it is left.
    sendTyped();
    this.#keepAll();
    const kept = [this.#jobs, this.#library, this.#pictures];
    if (kept.some(({ wouldBeLost }) => wouldBeLost) || unreadEntries().length > 0) event.preventDefault();
  };

  /** What an earlier page left unsent is sent, and what was erased elsewhere goes here too. */
  async #takeUp(): Promise<void> {
    await Promise.all([this.#jobs.resume(), this.#library.resume(), this.#pictures.send()]);
    // The list's own page hears it by itself.
    if (this.route.page !== 'jobs') await this.#list.load().catch(() => {});
  }

  readonly #isConnected = (): void => {
    this.#parts.again();
    this.#keepAll();
    void this.#takeUp();
  };

  /** Loads the page anew once all is on the device, or cannot be put there. */
  async #loadAnew(): Promise<void> {
    sendTyped();
    await Promise.all([this.#jobs.allWritten(), this.#library.allWritten()]);
    location.reload();
  }

  /** A window that is left keeps what it has; one that is come back to looks what has changed meanwhile. */
  readonly #lookedAt = (): void => {
    if (document.visibilityState === 'hidden') {
      sendTyped();
      this.#keepAll();
    } else {
      void this.#library.refresh();
      void this.#jobs.lookAgain();
    }
  };

  /** Of two windows side by side neither is ever hidden. */
  readonly #cameBack = (): void => void this.#jobs.lookAgain();

  readonly #keepAll = (): void => {
    void this.#jobs.keepAll();
    void this.#library.keep();
  };

  readonly #failed = (event: ErrorEvent | PromiseRejectionEvent): void => {
    this.broken = String('reason' in event ? event.reason : event.message);
  };

  override willUpdate(): void {
    this.setAttribute('page', this.route.page);
    this.toggleAttribute('whole', this.#parts.isWhole);
  }

  override updated(changed: Map<string, unknown>): void {
    const before = changed.get('route') as Route | undefined;
    if (before !== undefined) void this.#tellDropped();
    // Within a job the page itself moves the focus; at the first load it stays where the browser puts it.
    if (before !== undefined && (before.page !== this.route.page || before.page !== 'job')) {
      scrollTo(0, 0);
      this.#heading.ask();
    }
    this.#heading.settle(this.renderRoot.querySelector('.page'));
  }

  /** What could not be read and is gone with its page must not be gone unsaid. */
  async #tellDropped(): Promise<void> {
    const unread = this.#unreadAtLeaving;
    this.#unreadAtLeaving = [];
    const page = this.renderRoot.querySelector('.page');
    if (page instanceof LitElement) await page.updateComplete;
    const gone = unread.filter(({ field }) => !field.isConnected);
    if (gone.length > 0) this.dropped = gone;
  }

  #toHeading(): void {
    const page = this.renderRoot.querySelector('.page');
    if (page instanceof LitElement) void focusHeadingOf(page);
  }

  override render(): TemplateResult {
    return html`<nav aria-label="Skip">
        <a
          class="skip"
          href="#content"
          @click=${(event: Event) => {
            event.preventDefault();
            this.#toHeading();
          }}
          >Skip to the content</a
        >
      </nav>
      ${this.#newerVersion()}${this.broken === '' ? nothing : this.#sorry()}${this.#libraryLeft()}${this.#entriesDropped()}${this.#page(this.route)}`;
  }

  #newerVersion(): TemplateResult | typeof nothing {
    if (!this.#update.waits) return nothing;
    return html`<div class="news" role="status">
      <p>A newer Ringwright is ready.</p>
      <button class="small" @click=${() => void this.#update.take()}>Update</button>
    </div>`;
  }

  /** What is not kept of the library is said on every page, not on the firm's alone. */
  #libraryLeft(): TemplateResult | typeof nothing {
    const keeping = this.#library.session?.keeping ?? 'kept';
    if (this.route.page === 'firm' || keeping === 'kept' || keeping === 'keeping') return nothing;
    return html`<div class="broken" role="alert">
      <p>
        <strong>Your changes to the firm’s library are not ${
          this.#library.session?.waitsHere ? 'sent yet: they are kept on this device.' : 'saved yet.'
        }</strong>
      </p>
      <a class="button" href="/firm">Firm, prices and norms</a>
    </div>`;
  }

  #entriesDropped(): TemplateResult | typeof nothing {
    if (this.dropped.length === 0) return nothing;
    const entries = this.dropped.map(({ label, typed }) => `“${typed}” (${label})`).join(', ');
    return html`<div class="broken" role="alert">
      <p><strong>Not saved, because it could not be read as a number:</strong> ${entries}</p>
      <button
        class="quiet"
        @click=${() => {
          this.dropped = [];
        }}
      >
        Put away
      </button>
    </div>`;
  }

  /** The job that the firm's page was come to from, at the step and with the choice that it was left at. */
  get #wayBack(): WayBack | null {
    const job = this.#router.cameFrom;
    return job === null ? null : { href: hrefOf(job), title: this.#jobs.titleOf(job.jobId) };
  }

  /** True where this device has what the server has not. */
  get #hasUnsent(): boolean {
    return this.#jobs.unkept || this.#pictures.hasUnsent || (this.#library.session?.unkept ?? false);
  }

  #sorry(): TemplateResult {
    return html`<div class="broken" role="alert">
      <p>
        <strong>Something in this page broke:</strong> ${this.broken}. What you did is kept; load the page again to
        go on from there.
      </p>
      <button @click=${() => location.reload()}>Load again</button>
      <button
        class="quiet"
        @click=${() => {
          this.broken = '';
        }}
      >
        Put away
      </button>
    </div>`;
  }

  #page(route: Route): TemplateResult {
    const page = isPart(route.page) ? this.#parts.want(route.page) : 'there';
    const within = route.page === 'job' ? this.#parts.want(partOf(route)) : 'there';
    if (page !== 'there') return html`<part-coming class="page" .state=${page}></part-coming>`;
    switch (route.page) {
      case 'jobs':
        return html`<job-list-page
          class="page"
          .api=${this.#api}
          .jobs=${this.#jobs}
          .library=${this.#library}
          .list=${this.#list}
          .pictures=${this.#pictures}
        ></job-list-page>`;
      case 'job':
        return html`<job-page
          class="page"
          .route=${route}
          .within=${within}
          .router=${this.#router}
          .api=${this.#api}
          .jobs=${this.#jobs}
          .library=${this.#library}
          .pictures=${this.#pictures}
          .photos=${this.#photos}
        ></job-page>`;
      case 'firm':
        return html`<firm-page class="page" .library=${this.#library} .back=${this.#wayBack}></firm-page>`;
      case 'people':
        return html`<people-page class="page" .people=${this.#people} .origin=${this.#here.session?.publicOrigin ?? location.origin} .ownId=${this.#here.session?.person?.id ?? ''}></people-page>`;
      case 'account':
        return html`<account-page class="page" .here=${this.#here} .people=${this.#people} .unsent=${this.#hasUnsent}></account-page>`;
      case 'missing':
        return html`<missing-page class="page" .path=${route.path}></missing-page>`;
    }
  }
}
customElements.define('app-shell', AppShell);
declare global {
  interface HTMLElementTagNameMap {
    'app-shell': AppShell;
  }
}
