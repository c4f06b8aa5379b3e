import type { Job } from '#model/job.ts';
import { type ApiClient, ServerRefusal } from './api-client.ts';
import { DocumentSession, type Wait } from './document-session.ts';
import { mergedUnasked } from './merged-save.ts';

/**
 * The jobs that were opened since the page was loaded. A job that is left and opened again still has its steps
 * back, and one that could not be kept yet goes on being tried after its page was left.
 */
export class OpenJobs {
  readonly #sessions = new Map<string, DocumentSession<Job>>();
  /** What is being opened: whoever asks meanwhile gets the same. */
  readonly #opening = new Map<string, Promise<DocumentSession<Job>>>();
  readonly #listeners = new Map<string, () => void>();
  /** Jobs that were begun here and not seen to since, with the tag of what they were begun as. */
  readonly #begun = new Map<string, string>();
  readonly #api: ApiClient;
  readonly #wait: Wait | undefined;

  /** @param wait the browser's timers, unless a test brings its own. */
  constructor(api: ApiClient, wait?: Wait) {
    this.#api = api;
    this.#wait = wait;
  }

  /** True when some job has edits that the server has not. */
  get unkept(): boolean {
    return [...this.#sessions.values()].some((session) => session.unkept);
  }

  /**
   * The session of a job: the one there was, unless the job was saved elsewhere since and nothing of ours is
   * unkept. A refusal of the server is thrown on.
   */
  async open(id: string): Promise<DocumentSession<Job>> {
    const had = this.#sessions.get(id);
    if (had?.unkept) return had;
    const underWay = this.#opening.get(id);
    if (underWay !== undefined) return underWay;
    const opening = this.#read(id).finally(() => this.#opening.delete(id));
    this.#opening.set(id, opening);
    return opening;
  }

  async #read(id: string): Promise<DocumentSession<Job>> {
    const before = this.#sessions.get(id)?.etag;
    const start = await this.#api.readJob(id);
    const had = this.#sessions.get(id);
    // A save that went in during the reading makes the session newer than what was read.
    if (had !== undefined && (had.unkept || had.etag !== before || had.etag === start.etag)) return had;
    const keeper = {
      read: () => this.#api.readJob(id),
      save: (job: Job, base: string, how: 'autosave' | 'by-hand') => this.#api.saveJob(job, base, how),
      look: (etag: string) => this.#api.lookAtJob(id, etag),
      merge: mergedUnasked,
    };
    const session = new DocumentSession(start, keeper, () => this.#listeners.get(id)?.(), this.#wait);
    this.#sessions.set(id, session);
    return session;
  }

  /** Keeps what is unkept of every job; resolves when each was kept, or the server said no. */
  async keepAll(): Promise<void> {
    const unkept = [...this.#sessions.values()].filter((session) => session.unkept);
    await Promise.all(unkept.map((session) => session.keep('autosave')));
  }

  /** Looks whether the jobs that somebody listens to are still on the list. */
  async lookAgain(): Promise<void> {
    const looked = [...this.#listeners.keys()].map((id) => this.#sessions.get(id)?.lookAgain());
    await Promise.all(looked);
  }

  /** A job was begun here, empty. */
  begun(id: string, etag: string): void {
    this.#begun.set(id, etag);
  }

  /**
   * Takes the jobs that were begun here, and left as they were begun, off the list. The server refuses where one was
   * saved since, by whomever: it stays; and one that is taken off can be brought back.
   */
  async dropUntouched(): Promise<void> {
    for (const [id, etag] of [...this.#begun]) {
      if (this.#listeners.has(id)) continue;
      this.#begun.delete(id);
      if (this.#sessions.get(id)?.unkept) continue;
      try {
        await this.#api.removeJob(id, etag);
        this.forget(id);
      } catch (error) {
        if (!(error instanceof ServerRefusal)) throw error;
      }
    }
  }

  /** The title of a job that was opened; null where it was not. */
  titleOf(id: string): string | null {
    return this.#sessions.get(id)?.now.title ?? null;
  }

  /** Tells of every change of a job, until it is told otherwise. */
  listen(id: string, changed: (() => void) | null): void {
    if (changed === null) this.#listeners.delete(id);
    else this.#listeners.set(id, changed);
  }

  /** Forgets a job that is gone; what was unkept of it goes too. */
  forget(id: string): void {
    this.#sessions.get(id)?.stop();
    this.#sessions.delete(id);
  }
}
