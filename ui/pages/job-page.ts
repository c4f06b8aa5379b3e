import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Place } from '#model/installation.ts';
import { isChosenIn, isKnown } from '../chosen-in-step.ts';
import type { ApiClient } from '../controllers/api-client.ts';
import type { DraftPhotos } from '../controllers/draft-photos.ts';
import { HeadingFocus, isTyping, sendTyped } from '../controllers/focus.ts';
import { JobDesk } from '../controllers/job-desk.ts';
import { type LaidWith, layUnderlay, straightenUnderlay } from '../controllers/lay-underlay.ts';
import type { OpenJobs } from '../controllers/open-jobs.ts';
import type { OpenLibrary } from '../controllers/open-library.ts';
import { showOpenedFolds } from '../controllers/opened-fold.ts';
import { packJob } from '../controllers/pack-job.ts';
import type { Pictures } from '../controllers/pictures.ts';
import { askPlan } from '../controllers/plan-given-up.ts';
import { QuotationClient } from '../controllers/quotation-client.ts';
import { QuotationDesk } from '../controllers/quotation-desk.ts';
import { hrefOf, type JobRoute, type Router } from '../controllers/router.ts';
import type { PartState } from '../controllers/screen-parts.ts';
import type { HowSettled } from '../controllers/settle-job.ts';
import { takePhotos } from '../controllers/take-photos.ts';
import '../elements/chosen-card.ts';
import '../elements/finding-list.ts';
import '../elements/price-bar.ts';
import '../elements/price-block.ts';
import '../elements/price-questions.ts';
import '../elements/scheme-strip.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import '../elements/toast-line.ts';
import { type JobEventDetails, send, type ViewShown } from '../job-events.ts';
import { isSheetAlone, type JobView, stepNames } from '../job-view.ts';
import { needsThePlan, type PlanAsk } from '../plan-asks.ts';
import type { QuotationAsk } from '../quotations/quotations-view.ts';
import { viewSeen } from '../view-seen.ts';
import { isDrawnOn } from '../way-drawing/levels.ts';
import type { DrawAsk, DrawnWay } from '../way-drawing/way-draft.ts';
import { jobHeader } from './job-header.ts';
import { jobKey } from './job-keys.ts';
import { jobNotice, takesRoom } from './job-notice.ts';
import { jobPagePrintCss } from './job-page-print-styles.ts';
import { jobPageCss } from './job-page-styles.ts';
import { jobRefused } from './job-refused.ts';
import { watchKeyboard } from './keyboard-room.ts';
import { readSteps, schemeSteps, wideSteps } from './laid-out-steps.ts';
import { planPanel } from './plan-panel.ts';
import { watchSmallWindow } from './small-window.ts';
import { compareElement, stepElement } from './step-element.ts';
import { isOnSomething } from './tap-on-something.ts';

/** One job: its steps, its plan, its price and checks; everything that is done to it passes through here. */
export class JobPage extends LitElement {
  static override properties: PropertyDeclarations = {
    route: { attribute: false },
    within: { attribute: false },
    router: { attribute: false },
    api: { attribute: false },
    jobs: { attribute: false },
    library: { attribute: false },
    pictures: { attribute: false },
    photos: { attribute: false },
    desk: { state: true },
    phone: { state: true },
    asked: { state: true },
    tapped: { state: true },
  };
  static override styles = [controlsCss, jobPageCss, jobPagePrintCss];
  declare route: JobRoute;
  /** How far the part is that the route asks for. */
  declare within: PartState;
  declare router: Router;
  declare api: ApiClient;
  declare jobs: OpenJobs;
  declare library: OpenLibrary;
  declare pictures: Pictures;
  /** Photos of variations that are being made. */
  declare photos: DraftPhotos;
  declare private desk: JobDesk;
  /** Made with the desk. */
  declare private quotes: QuotationDesk;
  declare private phone: boolean;
  /** What the plan is asked for by a step; null for nothing. */
  declare private asked: PlanAsk | null;
  declare private tapped: Place | null;
  #endWatch = (): void => {};
  #endKeyboardWatch = (): void => {};
  #endPictureWatch = (): void => {};
  readonly #heading = new HeadingFocus();

  constructor() {
    super();
    this.phone = false;
    this.asked = null;
    this.tapped = null;
    this.#listen();
    showOpenedFolds(this);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#endPictureWatch = this.pictures.watch(() => this.requestUpdate());
    addEventListener('keydown', this.#keyed);
    this.addEventListener('click', this.#clicked);
    this.#endKeyboardWatch = watchKeyboard(this);
    this.#endWatch = watchSmallWindow((phone) => {
      this.phone = phone;
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#endPictureWatch();
    removeEventListener('keydown', this.#keyed);
    this.removeEventListener('click', this.#clicked);
    this.#endKeyboardWatch();
    this.#endWatch();
    this.quotes.stop();
    this.desk.close();
  }

  override willUpdate(changed: Map<string, unknown>): void {
    this.toggleAttribute('tapping', needsThePlan(this.asked));
    if (!changed.has('route')) return;
    const before = changed.get('route') as JobRoute | undefined;
    this.toggleAttribute('wide-sheet', wideSteps.includes(this.route.step));
    this.toggleAttribute('reading', readSteps.includes(this.route.step));
    this.toggleAttribute('picture', this.route.view !== 'plan');
    this.toggleAttribute('sheet-alone', this.#isSheetAlone);
    if (before?.step !== this.route.step || before.jobId !== this.route.jobId) this.asked = null;
    if (before?.jobId === this.route.jobId) {
      this.desk.look(this.route);
      return;
    }
    if (before !== undefined) this.desk.close();
    this.quotes?.stop();
    const { jobId } = this.route;
    const client = new QuotationClient(this.api, jobId);
    this.quotes = new QuotationDesk({ jobId, client, photos: this.photos }, () => this.requestUpdate());
    this.desk = new JobDesk(this.route, { api: this.api, jobs: this.jobs, library: this.library }, () =>
      this.requestUpdate(),
    );
    void this.desk.open();
  }

  override updated(changed: Map<string, unknown>): void {
    this.#takeQuotes();
    this.toggleAttribute('notice', takesRoom(this.desk.session));
    const { step } = this.route;
    const title = this.desk.view?.job.title ?? 'Job';
    document.title = `${stepNames[step]} · ${title} · Ringwright`;
    const before = changed.get('route') as JobRoute | undefined;
    const isSameJob = before?.jobId === this.route.jobId;
    if (isSameJob && (before.step !== step || before.compare !== this.route.compare)) {
      // The step's heading takes the focus, and its sheet begins at the top.
      this.renderRoot.querySelector('.sheet')?.scrollTo({ top: 0 });
      this.#heading.ask();
    }
    this.#heading.settle(this.renderRoot.querySelector('.step'));
  }

  #takeQuotes(): void {
    const { view, session } = this.desk;
    const library = this.library.session;
    this.quotes.take(
      view === null || session === null || library === null ? null : { view, job: session, library },
    );
  }

  /** From where the address is by now: two events of one tap come before the page hears of the first. */
  #goTo(part: Partial<JobRoute>): void {
    const { route } = this.router;
    this.router.go(hrefOf({ ...(route.page === 'job' ? route : this.route), ...part }), 'replace');
  }

  /** What is edited stays in sight, also when the page is loaded anew: an edit may make another scheme the cheapest. */
  #holdShown(): void {
    const shown = this.desk.view?.scheme?.id;
    if (this.route.scheme === null && shown !== undefined) this.#goTo({ scheme: shown });
  }

  #on<K extends keyof JobEventDetails>(name: K, then: (detail: JobEventDetails[K]) => void): void {
    this.addEventListener(name, (event) => then((event as CustomEvent<JobEventDetails[K]>).detail));
  }

  #listen(): void {
    this.#on('job-edit', (edit) => {
      this.#holdShown();
      this.desk.edit(edit);
    });
    this.#on('photos-taken', (taken) => void takePhotos(taken, this.#laidWith));
    this.#on('underlay-chosen', (chosen) => void layUnderlay(chosen, this.#laidWith));
    this.#on('underlay-straightened', (asked) => void straightenUnderlay(asked, this.#laidWith));
    this.addEventListener('archive-asked', () => void packJob(this.desk, this.pictures));
    this.#on('job-edit-beside', ({ edit, copyName }) => void this.desk.editBeside(edit, copyName));
    this.#on('point-placed', (placed) => this.desk.place(placed));
    this.#on('scheme-shown', ({ schemeId }) => {
      this.desk.ask({ do: 'try', scheme: null });
      this.#goTo({ scheme: schemeId });
    });
    this.#on('ways-asked', (ask) => this.desk.ask(ask));
    this.#on('quotation-asked', (ask) => void this.#askQuotes(ask));
    this.#on('way-drawn', (ask) => this.#draw(ask));
    this.#on('storey-shown', ({ storeyId }) => this.#goTo({ storey: storeyId }));
    this.#on('thing-chosen', ({ subjectId }) => this.#goTo({ on: subjectId }));
    this.#on('view-shown', (shown) => this.#showView(shown));
    this.#on('step-part-shown', ({ part }) => this.#goTo({ part }));
    this.#on('things-lit', ({ subjectIds }) => this.#light(subjectIds));
    this.#on('place-tapped', ({ place }) => {
      this.tapped = place;
    });
    this.addEventListener('plan-asked', (event) => {
      this.asked = event.detail.ask;
      this.tapped = null;
      // On a phone a picture of a circuit stands in the plan's place.
      if (this.asked !== null && this.phone) this.#showView({ view: 'plan' });
    });
    this.#on('undo-asked', () => this.desk.undo());
    this.addEventListener('keep-asked', () => this.desk.keep('by-hand'));
    this.addEventListener('job-back-asked', () => void this.#bringBack());
    this.addEventListener('keeping-settled', (event) => void this.#settle(event.detail.how));
    this.addEventListener('clashes-decided', (event) => void this.#settle(event.detail.decisions));
    this.addEventListener('sheet-asked', () => this.#dialog?.showModal());
    this.addEventListener('toast-closed', () => this.desk.say(''));
  }

  /** What pictures are put into the job with. */
  get #laidWith(): LaidWith {
    return { pictures: this.pictures, desk: this.desk };
  }

  /** With a customer their photos go from the device, too. */
  async #askQuotes(ask: QuotationAsk): Promise<void> {
    await this.quotes.do(ask);
    if (ask.do !== 'forget') return;
    await this.jobs.allWritten();
    await this.pictures.sweep(0);
  }

  /** A way is drawn on the plan of the storey that it has got to. */
  #draw(ask: DrawAsk): void {
    if (ask.do === 'begin') this.#holdShown();
    this.desk.draw(ask);
    const { drawing, storeyId = '', estimate } = this.desk.view ?? {};
    if (drawing == null || estimate === undefined) return;
    const isShown = isDrawnOn(estimate.asFound.worked.plan, drawing.here, storeyId);
    if (isShown && ask.do !== 'begin') return;
    this.#goTo({ storey: isShown ? storeyId : drawing.here.storeyId, view: 'plan', compare: false });
  }

  #showView({ view, circuitId, subjectId }: ViewShown): void {
    const { circuit, on } = this.route;
    this.#goTo({ view, circuit: circuitId ?? circuit, on: subjectId ?? on, compare: false });
  }

  #light(subjectIds: readonly string[]): void {
    this.desk.light(subjectIds);
    // On a phone the plan lies behind the sheet of checks.
    if (subjectIds.length > 0) this.#dialog?.close();
  }

  async #bringBack(): Promise<void> {
    await this.desk.bringBack();
    send(this, 'list-changed', null);
  }

  async #settle(how: HowSettled): Promise<void> {
    // Nothing may be changed while the two are told apart.
    this.inert = true;
    const jobId = await this.desk.settle(how);
    this.inert = false;
    if (jobId !== this.route.jobId) this.router.go(hrefOf({ ...this.route, jobId }));
  }

  /** Nothing is looked at any longer, and nothing is lit for it. */
  #chooseNothing(): void {
    if (this.route.on === null) return;
    this.desk.light([]);
    this.#goTo({ on: null });
  }

  /** A tap on nothing lets go of what was chosen; in a step that works on it, only one outside its sheet. */
  readonly #clicked = (event: MouseEvent): void => {
    const job = this.desk.view?.job;
    if (isOnSomething(event) || event.defaultPrevented || job === undefined) return;
    const inSheet = event.composedPath().some((one) => one instanceof Element && one.localName === 'main');
    if (!inSheet || !isChosenIn(job, this.route.step, this.route.on)) this.#chooseNothing();
  };

  #escaped(event: KeyboardEvent): void {
    // Whoever else has a use for the key comes first: a dialog, a place that is being given, a text.
    if (event.defaultPrevented || this.#dialog?.open) return;
    if (this.asked !== null) askPlan(this, null);
    else if (this.#drawing !== null) this.#draw({ do: 'draw', on: false });
    else if (!isTyping(event)) this.#chooseNothing();
  }

  readonly #keyed = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.#escaped(event);
    const key = jobKey(event);
    if (key === null) return;
    event.preventDefault();
    if (key === 'keep') this.#keepByHand();
    else if (key === 'redo') this.desk.redo();
    else if (this.#drawing !== null && this.#drawing.steps.length > 0) this.#draw({ do: 'take-back' });
    else this.desk.undo();
  };

  /** The way that is drawn while the plan waits for its corners: then the last corner is what is undone. */
  get #drawing(): DrawnWay | null {
    const drawing = this.desk.view?.drawing;
    return drawing?.isDrawing ? drawing : null;
  }

  #keepByHand(): void {
    sendTyped();
    void this.desk.keepByHand();
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  override render(): TemplateResult {
    const { view, refusal } = this.desk;
    const [{ route, phone }, photosWaiting] = [this, this.pictures.waiting];
    return html`${jobHeader(this.desk, { route, phone, photosWaiting })}
      ${jobNotice(this.desk, { jobs: this.jobs.waiting, photos: photosWaiting })}
      ${view !== null ? this.#job(view) : html`<main class="waiting">${refusal === null ? html`<p class="hint">Fetching the job…</p>` : this.#refused()}</main>`}
      <toast-line .words=${this.desk.said} .brief=${this.desk.isSaidInPassing}></toast-line>`;
  }

  #refused(): TemplateResult {
    return jobRefused(this.desk.refusal, {
      bringBack: () => void this.#bringBack(),
      tryAgain: () => void this.desk.open(),
      update: () => send(this, 'update-asked', null),
    });
  }

  /** What is shopped by or worked from has the whole window on a phone, and paper of its own. */
  get #isSheetAlone(): boolean {
    const { step, part, compare } = this.route;
    return !compare && isSheetAlone(step, part);
  }

  #step(view: JobView): TemplateResult {
    return stepElement(view, {
      state: this.within,
      tapped: this.tapped,
      part: this.route.part,
      ask: this.route.ask,
      quotations: this.quotes.view,
    });
  }

  #job(own: JobView): TemplateResult {
    const { session } = this.desk;
    const view = viewSeen(own);
    const asFound = view.step === 'as-found' || view.scheme === null;
    const shown = (asFound ? null : view.scheme) ?? view.estimate.asFound;
    const { worked, findings } = shown;
    const strip = html`<section class="strip" aria-label="Schemes"><scheme-strip .view=${own}></scheme-strip></section>`;
    const price = html`<price-block .view=${view}></price-block>`;
    const checks = html`<price-questions .view=${view}></price-questions>
      <finding-list .view=${view} .findings=${findings}></finding-list>`;
    const chosen = isKnown(worked, view.chosen)
      ? html`<chosen-card .view=${view} .worked=${worked}></chosen-card>`
      : nothing;
    const { compare, a, b } = this.route;
    const main = compare
      ? html`<main class="compare">${compareElement(own, this.within, [a, b])}</main>`
      : null;
    const plan = html`<section class="plan" aria-label="Plan">${planPanel({ view, shown, route: this.route, asked: this.asked, undoLabel: session?.undoLabel ?? null, phone: this.phone })}</section>`;
    if (!this.phone)
      return html`${main ?? html`<main class="sheet">${this.#step(own)}</main>${plan}`}
        <aside class="aside" aria-label="Price and checks">
          ${price}
          <div class="under">
            <div class="checks">${checks}</div>
            ${chosen}
          </div>
        </aside>
        ${strip}`;
    const hasStrip = schemeSteps.includes(view.step) && !this.#isSheetAlone && own.job.schemes.length > 0;
    const sheet = html`<main class="sheet">${chosen}${hasStrip ? strip : nothing}${this.#step(own)}</main>`;
    return html`${main ?? html`${this.#isSheetAlone ? nothing : plan}${sheet}`}
      <price-bar .view=${view} .findings=${findings}></price-bar>
      <dialog aria-label="Price and checks">
        ${price}${checks}
        <div class="close"><button @click=${() => this.#dialog?.close()}>Close</button></div>
      </dialog>`;
  }
}

customElements.define('job-page', JobPage);
declare global {
  interface HTMLElementTagNameMap {
    'job-page': JobPage;
  }
}
