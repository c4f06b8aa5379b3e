import { pictureId } from '#archive/picture-id.ts';
import type { Asset } from '#model/job.ts';
import type { DeviceStore } from '../device/device-store.ts';
import type { KeptPicture, PictureHead, PictureShelf } from '../device/picture-shelf.ts';
import type { SeenPicture } from '../job-events.ts';
import { ServerRefusal } from './api-client.ts';
import { DRAFT_PHOTOS_NOTE } from './draft-photos.ts';
import type { PictureClient } from './picture-client.ts';
import { type Wait, waitInBrowser } from './wait.ts';

/** First wait before what did not get through is tried again; doubled each time, ms. */
const RETRY_MS = 2000;
const RETRY_MOST_MS = 60_000;
/** What was put here this short a while ago may be named by an edit that is not written yet, ms. */
const GRACE_MS = 60_000;

/** What pictures are kept and sent with. */
export interface PictureParts {
  readonly store: Promise<DeviceStore>;
  readonly client: Pick<PictureClient, 'keep' | 'read'>;
  /** The browser's timers, unless a test brings its own. */
  readonly wait?: Wait;
  /** The device's clock, unless a test brings its own. */
  readonly now?: () => Date;
}

/**
 * Photos and other pictures of jobs, on this device first: what is kept here is shown from here, and sent to the server when
 * there is a connection, also after the page was closed. What was fetched once stays, so that it is there without one.
 */
export class Pictures {
  /** Those that the server has not. */
  #unsent: ReadonlySet<string> = new Set();
  /** Those that the server will not take: not asked again before the page is loaded anew. */
  readonly #refused = new Set<string>();
  readonly #watchers = new Set<() => void>();
  #lasts = true;
  #sending: Promise<void> | null = null;
  /** True where somebody asked for a round while one was under way. */
  #isAsked = false;
  /** True where the last round did not get through. */
  #isHeldUp = false;
  #retryMs = RETRY_MS;
  #callOff: () => void = () => {};
  readonly #parts: PictureParts;
  readonly #wait: Wait;

  constructor(parts: PictureParts) {
    this.#parts = parts;
    this.#wait = parts.wait ?? waitInBrowser;
  }

  /** How many wait for the connection, or for a server that can take them; those that are just being sent aside. */
  get waiting(): number {
    return this.#isHeldUp ? this.#unsent.size : 0;
  }

  /** True where the server has not all of them. */
  get hasUnsent(): boolean {
    return this.#unsent.size > 0;
  }

  /** True where some are neither on the server nor where they outlast the page. */
  get wouldBeLost(): boolean {
    return !this.#lasts && this.#unsent.size > 0;
  }

  /** Tells whenever one was kept or sent; what is given back ends that. */
  watch(changed: () => void): () => void {
    this.#watchers.add(changed);
    return () => this.#watchers.delete(changed);
  }

  #tell(unsent: ReadonlySet<string>): void {
    this.#unsent = unsent;
    for (const told of this.#watchers) told();
  }

  #now(): string {
    return (this.#parts.now?.() ?? new Date()).toISOString();
  }

  async #shelf(): Promise<PictureShelf> {
    const store = await this.#parts.store;
    this.#lasts = store.lasts;
    return store.pictures;
  }

  /**
   * Keeps a picture on the device, and begins to send it. Throws where the device has no room.
   *
   * @param name as people know it.
   */
  async keep(file: Blob, name: string): Promise<Asset> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const mediaType = file.type;
    const id = await this.keepBytes(bytes, mediaType);
    return { id, name, mediaType, bytes: bytes.length };
  }

  /** As `keep`, of what was read already; gives its id. */
  async keepBytes(bytes: Uint8Array<ArrayBuffer>, mediaType: string): Promise<string> {
    const id = pictureId(bytes);
    const shelf = await this.#shelf();
    await shelf.put({ head: { id, mediaType, isSent: false, keptAt: this.#now() }, bytes });
    this.#tell(new Set(unsentIn(await shelf.heads())));
    void this.send();
    return id;
  }

  /** A picture as it is to be shown: from the device, else from the server, and then kept here too. */
  async see(id: string): Promise<SeenPicture> {
    const kept = await this.#read(id);
    if (kept !== null) return new Blob([kept.bytes], { type: kept.head.mediaType });
    try {
      const file = await this.#parts.client.read(id);
      await this.#keepFetched(id, file);
      return file;
    } catch (error) {
      return error instanceof ServerRefusal && error.status === 404 ? 'not-there' : 'away';
    }
  }

  /** One on this device; null where there is none, or the device does not let it be read. */
  async #read(id: string): Promise<KeptPicture | null> {
    try {
      return await (await this.#shelf()).read(id);
    } catch {
      return null;
    }
  }

  /** It can be fetched again: where the device has no room it is only shown. */
  async #keepFetched(id: string, file: Blob): Promise<void> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const head = { id, mediaType: file.type, isSent: true, keptAt: this.#now() };
    await (await this.#shelf()).put({ head, bytes }).catch(() => {});
  }

  /** Sends what the server has not, one after the other; what did not get through is tried again by itself. */
  send(): Promise<void> {
    this.#callOff();
    // One that is put there while the last round ends would else be left.
    if (this.#sending !== null) this.#isAsked = true;
    this.#sending ??= this.#sendAll().finally(() => {
      this.#sending = null;
      if (this.#isAsked) void this.send();
    });
    return this.#sending;
  }

  async #sendAll(): Promise<void> {
    this.#isAsked = false;
    try {
      const shelf = await this.#shelf();
      // Whatever is put there meanwhile, by this tab or another, is seen too.
      for (;;) {
        const unsent = unsentIn(await shelf.heads());
        this.#tell(new Set(unsent));
        const next = unsent.find((id) => !this.#refused.has(id));
        if (next === undefined) break;
        await this.#sendOne(shelf, next);
      }
      this.#retryMs = RETRY_MS;
      this.#holdUp(false);
    } catch {
      this.#holdUp(true);
      this.#callOff = this.#wait(this.#retryMs, () => void this.send());
      this.#retryMs = Math.min(this.#retryMs * 2, RETRY_MOST_MS);
    }
  }

  #holdUp(isHeldUp: boolean): void {
    const was = this.#isHeldUp;
    this.#isHeldUp = isHeldUp;
    if (was !== isHeldUp) this.#tell(this.#unsent);
  }

  /** Throws where it may get through another time. */
  async #sendOne(shelf: PictureShelf, id: string): Promise<void> {
    const picture = await shelf.read(id);
    if (picture === null) return;
    try {
      await this.#parts.client.keep(new Blob([picture.bytes], { type: picture.head.mediaType }));
      await shelf.markSent(id);
    } catch (error) {
      const isFinal = error instanceof ServerRefusal && error.status >= 400 && error.status < 500;
      if (!isFinal) throw error;
      this.#refused.add(id);
    }
  }

  /**
   * Lets go of what no document on this device names any longer, in any state or step back, nor a variation being made: so what is removed for good, and
   * the photos of a customer who was erased, go from here too.
   *
   * @param graceMs what was put here so short a while ago stays.
   */
  async sweep(graceMs = GRACE_MS): Promise<void> {
    try {
      const store = await this.#parts.store;
      const until = new Date(Date.parse(this.#now()) - graceMs).toISOString();
      const old = (await store.pictures.heads()).filter(({ keptAt }) => keptAt <= until).map(({ id }) => id);
      if (old.length === 0) return;
      const named = await namedIn(store, old);
      const gone = old.filter((id) => !named.has(id));
      if (gone.length === 0) return;
      await store.pictures.drop(gone);
      this.#tell(new Set([...this.#unsent].filter((id) => !gone.includes(id))));
    } catch {
      // A device that lets nothing be read now is swept another time.
    }
  }

  /** Lets the timers go. */
  stop(): void {
    this.#callOff();
  }
}

const unsentIn = (heads: readonly PictureHead[]): readonly string[] =>
  heads.filter(({ isSent }) => !isSent).map(({ id }) => id);

/**
 * Which of some pictures are named by a copy on the device, or by a variation that is being made. A hash stands nowhere by
 * chance, so it is looked for as a word.
 */
async function namedIn(store: DeviceStore, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const named = new Set<string>();
  const look = (kept: unknown): void => {
    const text = JSON.stringify(kept ?? null);
    for (const id of ids) if (text.includes(id)) named.add(id);
  };
  look(await store.note(DRAFT_PHOTOS_NOTE));
  for (const { key } of await store.heads()) look((await store.read(key))?.held);
  return named;
}
