import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { ArchiveFault } from '#archive/archive-fault.ts';
import type { Fault } from '#model/fault.ts';
import type { Asset, Job } from '#model/job.ts';
import { type ApiClient, type ListedJob, ServerRefusal } from '../controllers/api-client.ts';
import type { JobLine, JobList } from '../controllers/job-list.ts';
import type { OpenJobs } from '../controllers/open-jobs.ts';
import type { OpenLibrary } from '../controllers/open-library.ts';
import { type OpenedFile, openedFile } from '../controllers/opened-file.ts';
import type { Pictures } from '../controllers/pictures.ts';
import { jobHref } from '../controllers/router.ts';
import { copyOfJob, newJob } from '../edits/new-job.ts';
import { errorWords } from '../error-words.ts';
import '../elements/deleted-jobs.ts';
import '../elements/fault-list.ts';
import '../elements/job-row.ts';
import { controlsCss } from '../elements/shared-styles.ts';
import '../elements/toast-line.ts';
import { send } from '../job-events.ts';
import { nextReference } from '../next-reference.ts';
import { mayChange } from '../rights.ts';
import { jobListCss } from './job-list-styles.ts';
import { archiveNotice, awayNotice, missingNotice, noJobs, twinNotice } from './job-list-words.ts';

/** The id of the demo job that shows most. */
const FIRST_DEMO = 'saltglass3';

/** A file that could not be opened, with every reason. */
type RefusedFile = { readonly name: string } & (
  | { readonly faults: readonly Fault[] }
  | { readonly archiveFault: ArchiveFault }
);

/** The firm's jobs: begin one, open one, copy, delete; and where to start for somebody who is new. */
export class JobListPage extends LitElement {
  static override properties: PropertyDeclarations = {
    api: { attribute: false },
    jobs: { attribute: false },
    library: { attribute: false },
    list: { attribute: false },
    pictures: { attribute: false },
    listed: { state: true },
    away: { state: true },
    deleted: { state: true },
    trouble: { state: true },
    refused: { state: true },
    twin: { state: true },
    incomplete: { state: true },
    removed: { state: true },
    said: { state: true },
    dropping: { state: true },
  };
  static override styles = [controlsCss, jobListCss];
  declare api: ApiClient;
  declare jobs: OpenJobs;
  /** What a new job's terms are taken from. */
  declare library: OpenLibrary;
  declare list: JobList;
  declare pictures: Pictures;
  /** Null until the list is there. */
  declare private listed: readonly JobLine[] | null;
  /** True where the list is as this device last heard it. */
  declare private away: boolean;
  declare private deleted: readonly ListedJob[];
  declare private trouble: string | null;
  declare private refused: RefusedFile | null;
  /** An opened job whose id is on the list already. */
  declare private twin: Job | null;
  /** A job that was opened from an archive which has not all of its pictures. */
  declare private incomplete: { readonly job: Job; readonly missing: readonly Asset[] } | null;
  /** The job that was deleted last, which can be brought back. */
  declare private removed: ListedJob | null;
  declare private said: string;
  declare private dropping: boolean;
  /** What was asked for and is not done yet, by name. */
  readonly #asked = new Set<string>();
  /** The jobs that the list was told of as not sent, in one word. */
  #toldUnsent = '';
  #endWatch = (): void => {};
  #turn: Promise<void> = Promise.resolve();

  constructor() {
    super();
    this.listed = null;
    this.away = false;
    this.deleted = [];
    this.trouble = null;
    this.refused = null;
    this.twin = null;
    this.incomplete = null;
    this.removed = null;
    this.said = '';
    this.dropping = false;
    this.addEventListener('job-copied', (event) =>
      this.#attempt(`copy ${event.detail.job.id}`, () => this.#copy(event.detail.job)),
    );
    this.addEventListener('job-removed', (event) =>
      this.#attempt(`remove ${event.detail.job.id}`, () => this.#remove(event.detail.job)),
    );
    this.addEventListener('job-wanted-back', (event) => this.#askBack(event.detail.job));
    this.addEventListener('toast-action', () => this.#undoRemoval());
    this.addEventListener('toast-closed', () => this.#putToastAway());
    this.addEventListener('dragover', (event) => this.#draggedOver(event));
    this.addEventListener('dragleave', () => {
      this.dropping = false;
    });
    this.addEventListener('drop', (event) => this.#dropped(event));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = 'Jobs · Ringwright';
    this.toggleAttribute('reads', !mayChange());
    addEventListener('online', this.#online);
    this.#endWatch = this.jobs.watch(this.#sentSince);
    void this.#attempt('load', () => this.#load());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('online', this.#online);
    this.#endWatch();
  }

  #say(words: string, removed: ListedJob | null = null): void {
    this.said = words;
    this.removed = removed;
  }

  /** Does something with the server after what was asked for before; what goes wrong is said, with a way on. */
  async #attempt(what: string, act: () => Promise<void>): Promise<void> {
    // A second tap on the same button is no second wish.
    if (this.#asked.has(what)) return;
    this.#asked.add(what);
    this.#turn = this.#turn.then(() => this.#do(act));
    await this.#turn;
    this.#asked.delete(what);
  }

  async #do(act: () => Promise<void>): Promise<void> {
    // What goes wrong while something else waits its turn is not wiped away by that.
    const before = this.trouble;
    try {
      await act();
      if (this.trouble === before) this.trouble = null;
    } catch (error) {
      this.trouble = errorWords(error);
    }
  }

  async #load(): Promise<void> {
    // What was typed on a job's page a moment ago belongs on the list.
    await this.jobs.keepAllSoon();
    if (this.isConnected) await this.jobs.dropUntouched();
    const { listed, deleted, isFromDevice } = await this.list.load();
    [this.listed, this.deleted, this.away] = [listed, deleted, isFromDevice];
    const waits = listed.filter(({ stand }) => stand === 'waits');
    this.#toldUnsent = waits
      .map(({ id }) => id)
      .toSorted()
      .join(' ');
    this.#sentSince();
  }

  /** What was told as not sent may be sent by now. */
  readonly #sentSince = (): void => {
    const { unsentIds } = this.jobs;
    // By a name of its own: it comes after a load that is under way.
    if (this.listed !== null && this.#toldUnsent !== unsentIds)
      void this.#attempt(`load with ${unsentIds}`, () => this.#load());
  };

  /** What waited is sent, and the list is as the server has it. */
  readonly #online = (): void => void this.#attempt('load', () => this.#load());

  async #begin(): Promise<void> {
    const { now: library } = await this.library.open();
    const references = (this.listed ?? []).map(({ reference }) => reference);
    const job = newJob({
      reference: nextReference(references),
      title: 'New job',
      terms: library.terms,
    });
    const etag = await this.jobs.begin(job);
    send(this, 'page-asked', { href: jobHref(job.id) });
    // Only now: a list that is being loaded meanwhile is not to take it for one that was left.
    this.jobs.begun(job.id, etag);
  }

  async #copy({ id, title }: ListedJob): Promise<void> {
    const { value: job } = await this.api.readJob(id);
    const copy = copyOfJob(job, `${title} (copy)`);
    await this.api.createJob(copy);
    await this.#load();
    this.#say(`“${copy.title}” is on the list.`);
  }

  async #remove(job: ListedJob): Promise<void> {
    await this.api.removeJob(job.id, job.etag);
    send(this, 'list-changed', null);
    await this.#load();
    this.#say(`“${job.title}” is off the list.`, job);
    await this.updateComplete;
    await this.renderRoot.querySelector('toast-line')?.focusAction();
  }

  #undoRemoval(): void {
    if (this.removed !== null) this.#askBack(this.removed);
  }

  #askBack(job: ListedJob): void {
    void this.#attempt(`bring back ${job.id}`, () => this.#bringBack(job));
  }

  /** With what was changed here and not kept, which loading the list keeps; never over what somebody else saved. */
  async #bringBack({ id, title }: ListedJob): Promise<void> {
    await this.api.restoreJob(id);
    send(this, 'list-changed', null);
    await this.#load();
    this.#say(`“${title}” is back.`);
    // What had the focus is gone with the deleted job's line.
    await this.updateComplete;
    const rows = [...this.renderRoot.querySelectorAll('job-row')];
    rows.find(({ job }) => job.id === id)?.focus();
  }

  /** Only with the message goes what was changed in a deleted job and could not be kept. */
  #putToastAway(): void {
    if (this.removed !== null) this.jobs.forget(this.removed.id);
    this.#say('');
  }

  async #putBackDemos(): Promise<void> {
    await this.api.putBackDemos();
    await this.#load();
    this.#say('The demo jobs are on the list.');
  }

  async #openFile(file: File): Promise<void> {
    this.refused = null;
    this.twin = null;
    this.incomplete = null;
    await this.#attempt(`open ${file.name}`, async () => {
      const read = await openedFile(file);
      if (read.ok) await this.#put(read, file.name);
      else this.refused = { name: file.name, ...read };
    });
  }

  /** Pictures are on the device before the job is on the list; without it they are let go of again. */
  async #put({ job, pictures, missing }: OpenedFile & { ok: true }, name: string): Promise<void> {
    try {
      for (const { bytes, mediaType } of pictures) await this.pictures.keepBytes(bytes, mediaType);
      if (missing.length > 0) this.incomplete = { job, missing };
      await this.api.createJob(job);
    } catch (error) {
      if (!(error instanceof ServerRefusal)) throw error;
      if (error.code === 'job-id-taken') this.twin = job;
      else if (error.faults.length > 0) this.refused = { name, faults: error.faults };
      else throw error;
      return;
    }
    // What is missing has to be read before the list is left.
    if (missing.length > 0) await this.#load();
    else send(this, 'page-asked', { href: jobHref(job.id) });
  }

  async #putTwin(twin: Job): Promise<void> {
    const copy = copyOfJob(twin, `${twin.title} (opened from a file)`);
    await this.api.createJob(copy);
    send(this, 'page-asked', { href: jobHref(copy.id) });
  }

  #draggedOver(event: DragEvent): void {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    this.dropping = true;
  }

  #dropped(event: DragEvent): void {
    event.preventDefault();
    this.dropping = false;
    if (!mayChange()) return;
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void this.#openFile(file);
  }

  #picked(event: Event): void {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file !== undefined) void this.#openFile(file);
    // The same file may be opened again once it was mended.
    input.value = '';
  }

  override render(): TemplateResult {
    return html`<header>
        <svg class="mark" viewBox="0 0 64 20" aria-hidden="true">
          <path d="M10 10h44"></path>
          <circle class="full" cx="10" cy="10" r="6"></circle>
          <circle class="now" cx="32" cy="10" r="7"></circle>
          <circle cx="54" cy="10" r="6"></circle>
        </svg>
        <span class="name">Ringwright</span>
        <nav aria-label="Pages"><a class="button" href="/firm">Firm, prices and norms</a></nav>
      </header>
      <main class=${this.dropping ? 'dropping' : ''}>
        <div class="head">
          <h1 tabindex="-1">Jobs</h1>
          <button class="main" @click=${() => this.#attempt('begin', () => this.#begin())}>New job</button>
          <button @click=${() => this.renderRoot.querySelector('input')?.click()}>Open a job file</button>
          <input
            type="file"
            accept=".json,application/json,.zip,application/zip"
            tabindex="-1"
            aria-hidden="true"
            class="visually-hidden"
            @change=${(event: Event) => this.#picked(event)}
          />
        </div>
        ${this.#notices()} ${this.#list()}
        <deleted-jobs .jobs=${this.deleted} .now=${new Date()}></deleted-jobs>
      </main>
      ${this.#footer()}
      <toast-line .words=${this.said} .action=${this.removed === null ? '' : 'Undo'}></toast-line>`;
  }

  #notices(): TemplateResult {
    const { trouble, refused, twin } = this;
    return html`${this.away ? awayNotice(this.listed ?? []) : nothing}${
      trouble === null
        ? nothing
        : html`<div class="warning" role="alert">
              <p>${trouble}</p>
              <button @click=${() => this.#attempt('load', () => this.#load())}>Try again</button>
            </div>`
    }${
      refused === null
        ? nothing
        : 'faults' in refused
          ? html`<fault-list .name=${refused.name} .faults=${refused.faults}></fault-list>`
          : archiveNotice(refused.name, refused.archiveFault)
    }${this.incomplete === null ? nothing : missingNotice(this.incomplete.job, this.incomplete.missing)}${twin === null ? nothing : twinNotice(twin, () => void this.#attempt(`twin ${twin.id}`, () => this.#putTwin(twin)))}`;
  }

  #list(): TemplateResult {
    const { listed } = this;
    if (listed === null)
      return html`<p class="hint wait">${this.trouble === null ? 'Fetching the list…' : ''}</p>`;
    if (listed.length === 0) return noJobs(() => void this.#attempt('demos', () => this.#putBackDemos()));
    const now = new Date();
    const first = listed.find(({ id, stand }) => id === FIRST_DEMO && stand !== 'absent');
    return html`${first === undefined ? nothing : this.#hint(first)}
      <ul>
        ${repeat(
          listed,
          ({ id }) => id,
          (job) => html`<li><job-row .job=${job} .now=${now}></job-row></li>`,
        )}
      </ul>`;
  }

  #hint({ id, title }: ListedJob): TemplateResult {
    return html`<p class="start">
      New here? Start with <a href=${jobHref(id, 'ways')}>${title}</a>: a demo with five ways to do it, two of them
      wrong on purpose. Drag a point and watch the cable, the checks and the price.
    </p>`;
  }

  /** Not before the list, which would push it out of sight. */
  #footer(): TemplateResult | typeof nothing {
    if (this.listed === null && this.trouble === null) return nothing;
    return html`<footer>
      <p>
        An aid to a competent person, who remains responsible. Nothing here is a certificate, and nothing is called safe. Work
        dead and prove it; look for pipes, cables and asbestos before cutting; local rules and licensed practice come first.
      </p>
      ${
        this.listed === null || this.listed.length === 0
          ? nothing
          : html`<button class="small" @click=${() => this.#attempt('demos', () => this.#putBackDemos())}>
              Put missing demo jobs back
            </button>`
      }
    </footer>`;
  }
}
customElements.define('job-list-page', JobListPage);
declare global {
  interface HTMLElementTagNameMap {
    'job-list-page': JobListPage;
  }
}
