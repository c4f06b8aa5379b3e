import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { Copies } from '../device/copies.ts';
import type { CopyWriter } from '../device/copy-writer.ts';
import { jobIdOf, jobName, NEVER_SENT } from '../device/kept-copy.ts';
import { type ApiClient, ServerRefusal, type Tagged } from './api-client.ts';
import { type Opened, openDocument } from './document-opening.ts';
import { DocumentSession } from './document-session.ts';
import type { Keeper } from './keeper.ts';
import { mergedUnasked } from './merged-save.ts';
import { jobOnTheirs } from './stale-save.ts';
import { patiently, type Wait, waitInBrowser } from './wait.ts';

/** A job that is open, and what writes it down on the device. */
interface OpenJob {
  readonly session: DocumentSession<Job>;
  /** Null where nothing is kept on the device. */
  readonly writer: CopyWriter<Job> | null;
}

function readKept(value: unknown): Job | null {
  const read = readJob(value);
  return read.ok ? read.job : null;
}

/**
 * The jobs that were opened since the page was loaded. A job that is left and opened again still has its steps
 * back, and one that could not be sent yet goes on being tried after its page was left; with copies on the device both
 * outlast the page.
 */
export class OpenJobs {
  readonly #open = new Map<string, OpenJob>();
  /** What is being opened: whoever asks meanwhile gets the same. */
  readonly #opening = new Map<string, Promise<DocumentSession<Job>>>();
  readonly #listeners = new Map<string, () => void>();
  readonly #watchers = new Set<() => void>();
  /** Jobs that were begun here and not seen to since, with the tag of what they were begun as. */
  readonly #begun = new Map<string, string>();
  readonly #api: ApiClient;
  readonly #wait: Wait;
  readonly #copies: Copies | null;

  /**
   * @param wait the browser's timers, unless a test brings its own.
   * @param copies where jobs are kept past the page; null: nowhere.
   */
  constructor(api: ApiClient, wait: Wait = waitInBrowser, copies: Copies | null = null) {
    this.#api = api;
    this.#wait = wait;
    this.#copies = copies;
  }

  get #sessions(): readonly DocumentSession<Job>[] {
    return [...this.#open.values()].map(({ session }) => session);
  }

  /** True when some job has edits that the server has not. */
  get unkept(): boolean {
    return this.#sessions.some((session) => session.unkept);
  }

  /** True when some job has edits that neither the server nor the device has: closing the page would lose them. */
  get wouldBeLost(): boolean {
    return this.#sessions.some((session) => session.unkept && !session.isHeld);
  }

  /** The jobs that the server has not as they are, by id, in one word. */
  get unsentIds(): string {
    return this.#sessions
      .filter(({ unkept }) => unkept)
      .map(({ now }) => now.id)
      .toSorted()
      .join(' ');
  }

  /** How many jobs wait to be sent, those that are just being sent aside. */
  get waiting(): number {
    return this.#sessions.filter(({ unkept, keeping }) => unkept && keeping !== 'keeping').length;
  }

  /**
   * The session of a job: the one there was, unless the job was saved elsewhere since and nothing of ours is
   * unkept. A refusal of the server is thrown on.
   */
  async open(id: string): Promise<DocumentSession<Job>> {
    const had = this.#open.get(id)?.session;
    if (had?.unkept) return had;
    const underWay = this.#opening.get(id);
    if (underWay !== undefined) return underWay;
    const opening = this.#read(id).finally(() => this.#opening.delete(id));
    this.#opening.set(id, opening);
    return opening;
  }

  async #read(id: string): Promise<DocumentSession<Job>> {
    const before = this.#open.get(id)?.session.etag ?? null;
    const opened = await openDocument({
      name: jobName(id),
      copies: this.#copies,
      read: () => this.#api.readJob(id),
      readKept,
      held: before,
      wait: this.#wait,
    });
    const had = this.#open.get(id)?.session;
    // A save that went in during the reading makes the session newer than what was read.
    if (had !== undefined && (opened === null || had.unkept || had.etag !== before)) return had;
    // What was open was forgotten during the reading.
    if (opened === null) return this.#read(id);
    const session = this.#begin(id, opened);
    if (session.unkept) void session.keep('autosave');
    return session;
  }

  #begin(id: string, { start, key }: Opened<Job>): DocumentSession<Job> {
    this.forget(id);
    const writer = this.#copies?.writer<Job>(jobName(id), key, () => this.#written(id)) ?? null;
    const keeper: Keeper<Job> = {
      read: () => this.#api.readJob(id),
      save: (job, base, how) =>
        base === NEVER_SENT ? this.#sendNew(job) : this.#api.saveJob(job, base, how),
      look: (etag) => this.#api.lookAtJob(id, etag),
      onTheirs: jobOnTheirs,
      merge: mergedUnasked,
      ...(writer === null ? {} : { device: writer }),
    };
    const session = new DocumentSession(start, keeper, () => this.#tell(id), this.#wait);
    this.#open.set(id, { session, writer });
    return session;
  }

  /** One that is there already was sent before, and only the answer was lost; or it is another: as with any stale save. */
  async #sendNew(job: Job): Promise<Tagged> {
    try {
      return await this.#api.createJob(job);
    } catch (error) {
      if (!(error instanceof ServerRefusal) || error.code !== 'job-id-taken') throw error;
      throw new ServerRefusal(412, { code: 'stale-revision', detail: error.message });
    }
  }

  #tell(id: string): void {
    this.#listeners.get(id)?.();
    for (const told of this.#watchers) told();
  }

  /** Whether it is on the device is only said of what the server has not taken. */
  #written(id: string): void {
    if (this.#open.get(id)?.session.keeping === 'not-kept') this.#tell(id);
  }

  /**
   * Begins a job here, on the device first; with a connection it is sent.
   *
   * @returns once the server has it, or cannot be given it now, its tag.
   */
  async begin(job: Job): Promise<string> {
    const session = this.#begin(job.id, { start: { value: job, revision: 0, etag: NEVER_SENT } });
    await patiently(session.keep('autosave'), this.#wait, () => {});
    return session.etag;
  }

  /** A job was begun here, empty, as the tag says. */
  begun(id: string, etag: string): void {
    this.#begun.set(id, etag);
  }

  /** Takes up what an earlier page left unsent on the device, of whatever job, and tries to send it. */
  async resume(): Promise<void> {
    for (const { name, unsent } of (await this.#copies?.free()) ?? []) {
      const id = jobIdOf(name);
      // What somebody is looking at stays as it is.
      if (id === null || !unsent || this.#listeners.has(id)) continue;
      await this.open(id).catch(() => {});
    }
  }

  /** Keeps what is unkept of every job; resolves when each was kept, or the server said no. */
  async keepAll(): Promise<void> {
    await Promise.all(
      this.#sessions.filter(({ unkept }) => unkept).map((session) => session.keep('autosave')),
    );
  }

  /** As `keepAll`, for somebody who waits for it: where there is no answer they go on after a while, and so does the keeping. */
  async keepAllSoon(): Promise<void> {
    await patiently(this.keepAll(), this.#wait, () => {});
  }

  /** Resolves when all of it is on the device, or cannot be put there. */
  async allWritten(): Promise<void> {
    await Promise.all([...this.#open.values()].map(({ writer }) => writer?.settled()));
  }

  /** Looks whether the jobs that somebody listens to are still on the list. */
  async lookAgain(): Promise<void> {
    const looked = [...this.#listeners.keys()].map((id) => this.#open.get(id)?.session.lookAgain());
    await Promise.all(looked);
  }

  /**
   * Hears what is on the list, with its tags by id: of what is there in another state, or no longer, the device lets go
   * where nothing of it is unsent. So whatever is erased there goes here too.
   */
  async hear(etags: ReadonlyMap<string, string>): Promise<void> {
    for (const head of (await this.#copies?.free()) ?? []) {
      const id = jobIdOf(head.name);
      if (id !== null && !head.unsent && etags.get(id) !== head.etag) await this.#copies?.drop(head);
    }
    for (const [id, { session }] of [...this.#open]) {
      if (session.unkept || this.#listeners.has(id) || etags.get(id) === session.etag) continue;
      if (etags.has(id)) await session.lookAgain();
      else this.forget(id);
    }
  }

  /**
   * Takes the jobs that were begun here, and left as they were begun, off the list. The server refuses where one was
   * saved since, by whomever: it stays; and one that is taken off can be brought back.
   */
  async dropUntouched(): Promise<void> {
    for (const [id, begunAs] of [...this.#begun]) {
      if (this.#listeners.has(id)) continue;
      this.#begun.delete(id);
      const session = this.#open.get(id)?.session;
      // Of one that was never sent the tag says nothing: then it is its steps that tell whether anything was done.
      const isTouched = session !== undefined && (session.undoLabel ?? session.redoLabel) !== null;
      if (begunAs === NEVER_SENT ? isTouched : session?.unkept) continue;
      const etag = begunAs === NEVER_SENT ? (session?.etag ?? NEVER_SENT) : begunAs;
      try {
        if (etag !== NEVER_SENT) await this.#api.removeJob(id, etag);
        this.forget(id);
      } catch (error) {
        if (!(error instanceof ServerRefusal)) throw error;
      }
    }
  }

  /** The title of a job that was opened; null where it was not. */
  titleOf(id: string): string | null {
    return this.#open.get(id)?.session.now.title ?? null;
  }

  /** The jobs that are open here, as they are. */
  get now(): readonly { readonly job: Job; readonly unkept: boolean }[] {
    return this.#sessions.map(({ now, unkept }) => ({ job: now, unkept }));
  }

  /** Tells of every change of a job, until it is told otherwise. */
  listen(id: string, changed: (() => void) | null): void {
    if (changed === null) this.#listeners.delete(id);
    else this.#listeners.set(id, changed);
  }

  /** Tells of every change of any job; what is given back ends that. */
  watch(changed: () => void): () => void {
    this.#watchers.add(changed);
    return () => this.#watchers.delete(changed);
  }

  /** Forgets a job that is gone, on the device too; what was unkept of it goes with it. */
  forget(id: string): void {
    const open = this.#open.get(id);
    open?.session.stop();
    void open?.writer?.drop();
    this.#open.delete(id);
  }
}
