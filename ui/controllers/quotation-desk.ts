import type { QuotationNote } from '#model/quotation-notes.ts';
import { errorWords } from '../error-words.ts';
import type { JobView } from '../job-view.ts';
import { newId } from '../new-id.ts';
import { answerDrafts } from '../quotations/answer-drafts.ts';
import type { QuotationRecord } from '../quotations/quotation-record.ts';
import type {
  DraftPhoto,
  QuotationAsk,
  QuotationsView,
  ReadQuotation,
} from '../quotations/quotations-view.ts';
import { ServerRefusal } from './api-client.ts';
import type { DocumentSession } from './document-session.ts';
import type { DraftPhotos, KeptPhoto } from './draft-photos.ts';
import { browserClock, type Clock } from './estimating.ts';
import type { QuotationClient } from './quotation-client.ts';
import { QuotationMoves } from './quotation-moves.ts';
import { smallerPhoto } from './smaller-photo.ts';
import { photoTroubleWords } from './take-photos.ts';
import { type TextsByJob, variationReasons } from './texts-by-job.ts';

/** What is kept before something rests on it. */
type Kept = Pick<DocumentSession<object>, 'etag' | 'keep' | 'unkept' | 'takeTheirs'>;

/** What the desk works with. */
export interface QuotationDeskParts {
  readonly jobId: string;
  readonly client: QuotationClient;
  /** Where photos of a variation outlive the page. */
  readonly photos: Pick<DraftPhotos, 'of' | 'add' | 'drop' | 'clear'>;
  readonly clock?: Pick<Clock, 'wait'>;
  /** Where what is typed outlives a reload; the device's, unless a test brings its own. */
  readonly reasons?: TextsByJob;
  /** As the browser makes a photo smaller, unless a test brings its own. */
  readonly smaller?: (file: Blob) => Promise<Blob>;
}

/** What is on the desk at the moment: the job with its library, and the sessions that keep both. */
export interface OnTheDesk {
  readonly view: JobView;
  readonly job: Kept;
  readonly library: Kept;
}

/** Thrown where the server has not all that is to rest on it. */
class NotKept extends Error {
  override readonly name = 'NotKept';
}

const isAway = (error: unknown): boolean =>
  error instanceof NotKept || (error instanceof ServerRefusal && error.status === 0);

/** Said of a variation that cannot be offered just now. */
const WAITS =
  'The variation is not put to the customer yet: the server, which numbers it and keeps it, cannot be reached or has not all of the job. It waits on this device with its words and its photos, also when the page is closed. Press again when there is a connection; the notice above says how the job stands.';

const wordsOf = (error: unknown): string => {
  if (error instanceof ServerRefusal && error.status === 0)
    return 'There is no connection to the server, and this needs one. What you entered is still here: try again when there is.';
  return errorWords(error);
};

const draftOf = ({ id, file }: KeptPhoto): DraftPhoto => ({ id, file, url: URL.createObjectURL(file) });

/** What the server has not answered may have been done all the same: it is asked for again under the same id. */
const isAnswered = (error: unknown): boolean =>
  error instanceof ServerRefusal && error.status !== 0 && error.status < 500;

/** The quotations of one job: what was issued, what became of it, what has moved since, and a variation being made. */
export class QuotationDesk {
  #view: QuotationsView;
  #now: OnTheDesk | null = null;
  #fetched = false;
  #isStopped = false;
  /** The id of what was asked for without an answer. */
  #issueId: string | null = null;
  #variationId: string | null = null;
  readonly #parts: QuotationDeskParts;
  readonly #moves: QuotationMoves;
  readonly #reasons: TextsByJob;
  readonly #changed: () => void;

  constructor(parts: QuotationDeskParts, changed: () => void) {
    this.#parts = parts;
    this.#changed = changed;
    this.#moves = new QuotationMoves(parts.client, parts.clock ?? browserClock);
    this.#reasons = parts.reasons ?? variationReasons();
    this.#view = {
      state: 'fetching',
      quotations: [],
      busy: false,
      trouble: '',
      moved: null,
      variation: null,
      working: false,
      reason: this.#reasons.of(parts.jobId) ?? '',
      photos: [],
      read: null,
    };
    void this.#takeUpPhotos();
  }

  get view(): QuotationsView {
    return this.#view;
  }

  /** Takes the job as it is; what hangs on it is worked out while its papers are looked at and no hand moves anything. */
  take(now: OnTheDesk | null): void {
    const before = this.#now?.view;
    if (now === null || now.view.step !== 'papers' || now.view.moving) return;
    this.#now = now;
    if (!this.#fetched) {
      this.#fetched = true;
      void this.#fetch();
    } else if (before?.job !== now.view.job || before.library !== now.view.library) void this.#work();
  }

  /** Works nothing more out. */
  stop(): void {
    this.#isStopped = true;
    this.#moves.stop();
    for (const { url } of this.#view.photos) URL.revokeObjectURL(url);
  }

  async do(ask: QuotationAsk): Promise<void> {
    switch (ask.do) {
      case 'type-reason':
        this.#reasons.keep(this.#parts.jobId, ask.reason);
        return this.#show({ reason: ask.reason });
      case 'add-photo':
        return this.#addPhoto(ask.file);
      case 'drop-photo':
        return this.#dropPhoto(ask.url);
      case 'look-again':
        return this.#fetch();
      case 'read':
        return ask.quotationId === null ? this.#show({ read: null }) : this.#read(ask.quotationId);
      case 'issue':
        return this.#send(() => this.#issue());
      case 'note':
        return this.#send(() => this.#note(ask.quotationId, ask.note));
      case 'vary':
        return this.#send(() => this.#vary(ask.quotationId), WAITS);
      case 'erase':
        return this.#send(() => this.#erase(ask.quotationId));
      case 'forget':
        return this.#send(() => this.#forget());
    }
  }

  #show(part: Partial<QuotationsView>): void {
    this.#view = { ...this.#view, ...part };
    this.#changed();
  }

  async #fetch(): Promise<void> {
    try {
      this.#show({ state: 'there', quotations: await this.#parts.client.list() });
      await this.#work();
    } catch (error) {
      // What was there stays in sight.
      const state = this.#view.quotations.length > 0 ? 'there' : 'not-reached';
      this.#show({ state, trouble: wordsOf(error) });
    }
  }

  async #read(id: string): Promise<void> {
    try {
      const [paper, drawings] = await Promise.all(
        (['document', 'drawings'] as const).map((which) => this.#parts.client.frozen(id, which)),
      );
      // Frozen by the server as these types, and never changed since.
      const read = {
        id,
        paper: JSON.parse(paper ?? ''),
        drawings: JSON.parse(drawings ?? ''),
      } as ReadQuotation;
      this.#show({ read, trouble: '' });
    } catch (error) {
      this.#show({ trouble: wordsOf(error) });
    }
  }

  async #work(): Promise<void> {
    const newest = this.#view.quotations.at(-1);
    if (newest === undefined || newest.lessened?.what === 'whole' || this.#now === null) {
      this.#show({ moved: null, variation: null });
      return;
    }
    const { job, library } = this.#now.view;
    this.#show({ working: true });
    try {
      const moves = await this.#moves.of(newest, { job, library });
      if (moves !== null) this.#show({ ...moves, working: false });
    } catch (error) {
      this.#show({ moved: null, variation: null, working: false, trouble: wordsOf(error) });
    }
  }

  /** One thing is sent at a time; afterwards all is read again, also where it was refused: then something had moved on. */
  async #send(task: () => Promise<void>, waits = ''): Promise<void> {
    if (this.#view.busy || this.#now === null) return;
    this.#show({ busy: true, trouble: '' });
    try {
      await task();
      await this.#fetch();
    } catch (error) {
      const trouble = isAway(error) && waits !== '' ? waits : wordsOf(error);
      if (error instanceof ServerRefusal && error.status !== 0) await this.#fetch();
      this.#show({ trouble });
    } finally {
      this.#show({ busy: false });
    }
  }

  /** What is issued or offered rests on what the server has: both are kept first. */
  async #keepAll({ job, library }: OnTheDesk): Promise<void> {
    await Promise.all([job, library].map((one) => (one.unkept ? one.keep('by-hand') : undefined)));
    if (job.unkept || library.unkept)
      throw new NotKept('The job or the prices are not saved: see the notice above, then try again.');
  }

  async #issue(): Promise<void> {
    const now = this.#now;
    if (now === null) return;
    await this.#keepAll(now);
    this.#issueId ??= newId();
    const body = { id: this.#issueId, date: now.view.date, library: now.library.etag };
    try {
      await this.#parts.client.issue(body, now.job.etag);
      this.#issueId = null;
    } catch (error) {
      if (isAnswered(error)) this.#issueId = null;
      throw error;
    }
  }

  #quotation(id: string): QuotationRecord {
    const found = this.#view.quotations.find((one) => one.id === id);
    if (found === undefined) throw new Error(`No quotation "${id}" is listed.`);
    return found;
  }

  async #note(id: string, note: QuotationNote): Promise<void> {
    await this.#parts.client.note(id, note, this.#quotation(id).etag);
  }

  async #erase(id: string): Promise<void> {
    await this.#parts.client.erase(id, this.#quotation(id).etag);
  }

  /** The job goes on as the server has it then: no step back on this screen brings the customer in again. */
  async #forget(): Promise<void> {
    const now = this.#now;
    if (now === null) return;
    await this.#keepAll(now);
    await this.#parts.client.forgetCustomer(now.job.etag);
    const { jobId } = this.#parts;
    this.#reasons.keep(jobId, '');
    answerDrafts.clear(jobId);
    this.#moves.forget();
    await this.#clearPhotos();
    this.#show({ reason: '', read: null });
    await now.job.takeTheirs();
  }

  /** Those that an earlier page was given. */
  async #takeUpPhotos(): Promise<void> {
    const kept = await this.#parts.photos.of(this.#parts.jobId);
    if (kept.length === 0 || this.#isStopped) return;
    const shown = new Set(this.#view.photos.map(({ id }) => id));
    const earlier = kept.filter(({ id }) => !shown.has(id)).map(draftOf);
    this.#show({ photos: [...earlier, ...this.#view.photos] });
  }

  async #addPhoto(file: Blob): Promise<void> {
    try {
      const smaller = await (this.#parts.smaller ?? smallerPhoto)(file);
      const kept = await this.#parts.photos.add(this.#parts.jobId, smaller);
      // The same picture is there once.
      if (this.#view.photos.some(({ id }) => id === kept.id)) return;
      this.#show({ photos: [...this.#view.photos, draftOf(kept)], trouble: '' });
    } catch (error) {
      this.#show({ trouble: `The photo was not added: ${photoTroubleWords(error)}` });
    }
  }

  async #dropPhoto(url: string): Promise<void> {
    const dropped = this.#view.photos.find((photo) => photo.url === url);
    if (dropped === undefined) return;
    URL.revokeObjectURL(url);
    this.#show({ photos: this.#view.photos.filter((photo) => photo !== dropped) });
    await this.#parts.photos.drop(this.#parts.jobId, dropped.id);
  }

  async #clearPhotos(): Promise<void> {
    for (const { url } of this.#view.photos) URL.revokeObjectURL(url);
    this.#show({ photos: [] });
    await this.#parts.photos.clear(this.#parts.jobId);
  }

  /** Each is sent whether it went through before or not: the server knows one again by its bytes. */
  async #sentPhotos(): Promise<readonly string[]> {
    const ids: string[] = [];
    for (const { file } of this.#view.photos) ids.push(await this.#parts.client.keepPhoto(file));
    return ids;
  }

  async #vary(quotationId: string): Promise<void> {
    const [now, variation] = [this.#now, this.#view.variation];
    if (now === null || variation === null) return;
    await this.#keepAll(now);
    const photos = await this.#sentPhotos();
    this.#variationId ??= newId();
    const offer = {
      id: this.#variationId,
      reason: this.#view.reason.trim(),
      photos,
      job: now.job.etag,
      differencePence: variation.afterPence - variation.beforePence,
    };
    try {
      await this.#parts.client.offerVariation(quotationId, offer, this.#quotation(quotationId).etag);
    } catch (error) {
      if (isAnswered(error)) this.#variationId = null;
      throw error;
    }
    this.#variationId = null;
    this.#reasons.keep(this.#parts.jobId, '');
    this.#show({ reason: '' });
    await this.#clearPhotos();
  }
}
