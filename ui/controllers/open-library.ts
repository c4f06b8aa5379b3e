import type { Sheet } from '#engine/price/list/sheet.ts';
import type { Library } from '#model/library.ts';
import { readLibrary } from '#model/read-library.ts';
import type { Copies } from '../device/copies.ts';
import type { CopyWriter } from '../device/copy-writer.ts';
import { LIBRARY_NAME } from '../device/kept-copy.ts';
import type { ApiClient } from './api-client.ts';
import { type Opened, openDocument } from './document-opening.ts';
import { DocumentSession } from './document-session.ts';
import { type Wait, waitInBrowser } from './wait.ts';

function readKept(value: unknown): Library | null {
  const read = readLibrary(value);
  return read.ok ? read.library : null;
}

/**
 * The firm's library as this window has it: one for the firm's page, which edits it, and for every job, which is
 * priced with it. What could not be kept yet goes on being tried after the firm's page was left.
 */
export class OpenLibrary {
  #session: DocumentSession<Library> | null = null;
  /** The reading that is under way: whoever asks meanwhile waits for the same. */
  #reading: Promise<Opened<Library> | null> | null = null;
  #writer: CopyWriter<Library> | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #api: ApiClient;
  readonly #wait: Wait;
  readonly #copies: Copies | null;

  /**
   * @param wait the browser's timers, unless a test brings its own.
   * @param copies where it is kept past the page; null: nowhere.
   */
  constructor(api: ApiClient, wait: Wait = waitInBrowser, copies: Copies | null = null) {
    this.#api = api;
    this.#wait = wait;
    this.#copies = copies;
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
    const before = this.#session?.etag ?? null;
    this.#reading ??= openDocument({
      name: LIBRARY_NAME,
      copies: this.#copies,
      read: () => this.#api.readLibrary(),
      readKept,
      held: before,
      wait: this.#wait,
    }).finally(() => {
      this.#reading = null;
    });
    const opened = await this.#reading;
    const had = this.#session;
    if (had === null) {
      if (opened === null) return this.open();
      return this.#begin(opened);
    }
    // A save that went in during the reading makes the session newer than what was read.
    if (opened === null || had.unkept || had.etag !== before) return had;
    if (opened.start.goneOn !== undefined) return this.#begin(opened);
    had.take(opened.start);
    return had;
  }

  #begin({ start, key }: Opened<Library>): DocumentSession<Library> {
    this.#session?.stop();
    void this.#writer?.drop();
    this.#writer = this.#copies?.writer<Library>(LIBRARY_NAME, key, () => this.#written()) ?? null;
    const keeper = {
      read: () => this.#api.readLibrary(),
      save: (library: Library, base: string) => this.#api.saveLibrary(library, base),
      ...(this.#writer === null ? {} : { device: this.#writer }),
    };
    const session = new DocumentSession(start, keeper, () => this.#tell(), this.#wait);
    this.#session = session;
    if (session.unkept) void session.keep('autosave');
    return session;
  }

  /** Whether it is on the device is only said of what the server has not taken. */
  #written(): void {
    if (this.#session?.keeping === 'not-kept') this.#tell();
  }

  /** True when it has edits that neither the server nor the device has: closing the page would lose them. */
  get wouldBeLost(): boolean {
    return this.unkept && !(this.#session?.isHeld ?? false);
  }

  /** Takes up what an earlier page left unsent on the device, and tries to send it. */
  async resume(): Promise<void> {
    const left = (await this.#copies?.free(LIBRARY_NAME)) ?? [];
    if (left.some(({ unsent }) => unsent)) await this.open().catch(() => {});
  }

  /** Resolves when all of it is on the device, or cannot be put there. */
  async allWritten(): Promise<void> {
    await this.#writer?.settled();
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
