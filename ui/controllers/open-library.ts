import type { Sheet } from '#engine/price/list/sheet.ts';
import type { Library } from '#model/library.ts';
import type { ApiClient, Revised } from './api-client.ts';
import { DocumentSession, type Wait } from './document-session.ts';

/**
 * The firm's library as this window has it: one for the firm's page, which edits it, and for every job, which is
 * priced with it. What could not be kept yet goes on being tried after the firm's page was left.
 */
export class OpenLibrary {
  #session: DocumentSession<Library> | null = null;
  /** The reading that is under way: whoever asks meanwhile waits for the same. */
  #reading: Promise<Revised<Library>> | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #api: ApiClient;
  readonly #wait: Wait | undefined;

  /** @param wait the browser's timers, unless a test brings its own. */
  constructor(api: ApiClient, wait?: Wait) {
    this.#api = api;
    this.#wait = wait;
  }

  /** Null until it was opened. */
  get session(): DocumentSession<Library> | null {
    return this.#session;
  }

  /** True when it has edits that the server has not. */
  get unkept(): boolean {
    return this.#session?.unkept ?? false;
  }

  /**
   * The library, as the server has it this moment, unless something of ours is unkept. Its steps back last while
   * nobody else saves it. A refusal of the server is thrown on.
   */
  async open(): Promise<DocumentSession<Library>> {
    if (this.#session?.unkept) return this.#session;
    const before = this.#session?.etag;
    this.#reading ??= this.#api.readLibrary().finally(() => {
      this.#reading = null;
    });
    const read = await this.#reading;
    const had = this.#session;
    if (had === null) return this.#begin(read);
    // A save that went in during the reading makes the session newer than what was read.
    if (!had.unkept && had.etag === before && had.etag !== read.etag) had.take(read);
    return had;
  }

  #begin(read: Revised<Library>): DocumentSession<Library> {
    const keeper = {
      read: () => this.#api.readLibrary(),
      save: (library: Library, base: string) => this.#api.saveLibrary(library, base),
    };
    this.#session = new DocumentSession(read, keeper, () => this.#tell(), this.#wait);
    return this.#session;
  }

  #tell(): void {
    for (const changed of this.#listeners) changed();
  }

  /** Looks whether somebody else has saved it, once it was opened; without an answer it stays as it is. */
  async refresh(): Promise<void> {
    if (this.#session === null) return;
    // The papers, too, wait for the server: there is nothing that this could miss.
    await this.open().catch(() => {});
  }

  /** Keeps what is unkept of it; resolves when it was kept, or the server said no. */
  async keep(): Promise<void> {
    if (this.unkept) await this.#session?.keep('autosave');
  }

  /** Has a merchant's file read as sheets of rows. A refusal of the server is thrown on. */
  readSheets(file: Blob): Promise<readonly Sheet[]> {
    return this.#api.readSheets(file);
  }

  /** Tells of every change; what is given back ends that. */
  listen(changed: () => void): () => void {
    this.#listeners.add(changed);
    return () => this.#listeners.delete(changed);
  }
}
