import type { DeviceStore } from '../device/device-store.ts';
import type { Pictures } from './pictures.ts';

/** The note of the device that names the photos of variations which are being made; whoever sweeps pictures reads it too. */
export const DRAFT_PHOTOS_NOTE = 'variation-photos';

/** A photo as it is on the device. */
export interface KeptPhoto {
  /** The SHA-256 of its bytes. */
  readonly id: string;
  readonly file: Blob;
}

type IdsByJob = Readonly<Record<string, readonly string[]>>;

/** What a device has noted, whatever it is: what is no list of names is as good as none. */
function idsIn(note: unknown): IdsByJob {
  if (typeof note !== 'object' || note === null) return {};
  const lists = Object.entries(note).map(([jobId, ids]) => [
    jobId,
    Array.isArray(ids) ? ids.filter((id) => typeof id === 'string') : [],
  ]);
  return Object.fromEntries(lists);
}

/**
 * The photos of a variation that is being made, job by job, on this device until it is offered: who leaves the page, or loses it,
 * finds them again. The pictures lie with all others; only their names are kept here.
 */
export class DraftPhotos {
  readonly #store: Promise<DeviceStore>;
  readonly #pictures: Pick<Pictures, 'keep' | 'see'>;

  constructor(store: Promise<DeviceStore>, pictures: Pick<Pictures, 'keep' | 'see'>) {
    this.#store = store;
    this.#pictures = pictures;
  }

  /** Those of a job that can be shown now, in the order in which they were added. A device that tells nothing has none. */
  async of(jobId: string): Promise<readonly KeptPhoto[]> {
    const ids = (await this.#all().catch((): IdsByJob => ({})))[jobId] ?? [];
    const seen = await Promise.all(ids.map(async (id) => ({ id, file: await this.#pictures.see(id) })));
    return seen.flatMap(({ id, file }) => (typeof file === 'string' ? [] : [{ id, file }]));
  }

  /** Puts one with those of a job; throws where the device has no room. */
  async add(jobId: string, file: Blob): Promise<KeptPhoto> {
    const { id } = await this.#pictures.keep(file, 'Photo of a variation');
    await this.#write(jobId, (ids) => [...ids.filter((one) => one !== id), id]);
    return { id, file };
  }

  async drop(jobId: string, id: string): Promise<void> {
    await this.#write(jobId, (ids) => ids.filter((one) => one !== id));
  }

  /** They went out with the variation, or with the customer. */
  async clear(jobId: string): Promise<void> {
    await this.#write(jobId, () => []);
  }

  /** Lets go of those of all other jobs: they were deleted, or have lost their customer. Nothing where the device refuses. */
  async onlyOf(jobIds: ReadonlySet<string>): Promise<void> {
    const all = await this.#all().catch((): IdsByJob => ({}));
    const gone = Object.keys(all).filter((id) => !jobIds.has(id));
    for (const id of gone) await this.clear(id).catch(() => {});
  }

  async #all(): Promise<IdsByJob> {
    return idsIn(await (await this.#store).note(DRAFT_PHOTOS_NOTE));
  }

  async #write(jobId: string, change: (ids: readonly string[]) => readonly string[]): Promise<void> {
    const { [jobId]: ids = [], ...others } = await this.#all();
    const now = change(ids);
    const all = now.length === 0 ? others : { ...others, [jobId]: now };
    await (await this.#store).writeNote(DRAFT_PHOTOS_NOTE, all);
  }
}
