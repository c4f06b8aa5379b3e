import { ERASED } from '#engine/quotation/erasure.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { Copies } from '../device/copies.ts';
import { jobIdOf } from '../device/kept-copy.ts';
import { answerDrafts } from '../quotations/answer-drafts.ts';
import { type ApiClient, type ListedJob, ServerRefusal } from './api-client.ts';
import { isAway, noAnswer } from './document-opening.ts';
import type { DraftPhotos } from './draft-photos.ts';
import type { OpenJobs } from './open-jobs.ts';
import { variationReasons } from './texts-by-job.ts';
import { patiently, type Wait, waitInBrowser } from './wait.ts';

/** The note on the device that holds the list as it was last heard. */
const NOTE = 'jobs';

/** How a job of the list stands to this device; `absent`: without a connection it cannot be opened here. */
export type JobStand = 'sent' | 'waits' | 'absent';

/** A line of the list, as this device shows it. */
export interface JobLine extends ListedJob {
  readonly stand: JobStand;
}

/** The list of jobs as there is one this moment. */
export interface Lists {
  /** Those never sent first, then as the server lists them. */
  readonly listed: readonly JobLine[];
  readonly deleted: readonly ListedJob[];
  /** True where the server was not reached: it is then as this device last heard it. */
  readonly isFromDevice: boolean;
}

type Heard = Pick<Lists, 'deleted'> & { readonly listed: readonly ListedJob[] };

/** What is open here, or lies unsent on the device. */
export interface OwnJob {
  readonly job: Job;
  readonly unkept: boolean;
}

/** The facts of a job as the list has them. */
const factsOf = ({ id, reference, title, site, points, schemes }: Job) => ({
  id,
  reference,
  title,
  customer: site.customer,
  wantedPoints: points.filter(({ status }) => status === 'wanted').length,
  schemes: schemes.length,
});

/**
 * The lines of the list with what is not sent yet in its own words.
 *
 * @param here ids of the jobs that this device has a copy of; null where the server is reached, which has all of them.
 * @param nowIso what a job that was never sent counts as saved at.
 */
export function linesOf(
  listed: readonly ListedJob[],
  own: readonly OwnJob[],
  here: ReadonlySet<string> | null,
  nowIso: string,
): readonly JobLine[] {
  const unsent = new Map(own.filter(({ unkept }) => unkept).map(({ job }) => [job.id, job]));
  const known = new Set(listed.map(({ id }) => id));
  const isHere = (id: string): boolean =>
    here === null || here.has(id) || own.some(({ job }) => job.id === id);
  const never = [...unsent.values()]
    .filter(({ id }) => !known.has(id))
    .map((job): JobLine => {
      const version = { revision: 0, etag: '', savedAt: nowIso, removedAt: null };
      return { ...factsOf(job), ...version, stand: 'waits' };
    });
  const lines = listed.map((line): JobLine => {
    const job = unsent.get(line.id);
    if (job !== undefined) return { ...line, ...factsOf(job), stand: 'waits' };
    return { ...line, stand: isHere(line.id) ? 'sent' : 'absent' };
  });
  return [...never, ...lines];
}

/** What the list of jobs is made from. */
export interface ListParts {
  readonly api: Pick<ApiClient, 'listJobs' | 'listRemovedJobs'>;
  readonly jobs: OpenJobs;
  readonly copies: Copies;
  readonly wait?: Wait;
  /** Photos of variations that are being made: those of jobs that are gone go too. */
  readonly photos?: Pick<DraftPhotos, 'onlyOf'>;
  /** Is told whenever the server's list was heard and acted on. */
  readonly heard?: () => void;
}

/** The list of jobs: the server's, else as this device last heard it; what is heard is taken down, and acted on. */
export class JobList {
  readonly #parts: ListParts;

  constructor(parts: ListParts) {
    this.#parts = parts;
  }

  /** Throws the server's refusal where it gave one, or where this device has never heard the list. */
  async load(): Promise<Lists> {
    const heard = await this.#ask();
    if (!(heard instanceof ServerRefusal)) return this.#lists(heard, false);
    const noted = (await this.#parts.copies.note(NOTE)) as Heard | undefined;
    const lists = await this.#lists(noted ?? { listed: [], deleted: [] }, true);
    if (noted === undefined && lists.listed.length === 0) throw heard;
    return lists;
  }

  /** The server's list, or why there is none now. */
  async #ask(): Promise<Heard | ServerRefusal> {
    const { wait = waitInBrowser } = this.#parts;
    const asked = this.#hear().catch((error: unknown) => {
      if (isAway(error)) return error;
      throw error;
    });
    return patiently<Heard | ServerRefusal>(asked, wait, noAnswer);
  }

  /** What is typed and taken of jobs that have lost their customer, and photos of those that are gone. */
  async #forgetDrafts(listed: readonly ListedJob[]): Promise<void> {
    const isErased = ({ customer }: ListedJob): boolean => customer === ERASED;
    for (const { id } of listed.filter(isErased)) {
      answerDrafts.clear(id);
      variationReasons().keep(id, '');
    }
    const kept = listed.filter((line) => !isErased(line)).map(({ id }) => id);
    await this.#parts.photos?.onlyOf(new Set(kept));
  }

  async #hear(): Promise<Heard> {
    const { api, jobs, copies } = this.#parts;
    const [listed, deleted] = await Promise.all([api.listJobs(), api.listRemovedJobs()]);
    await copies.writeNote(NOTE, { listed, deleted });
    await jobs.hear(new Map(listed.map(({ id, etag }) => [id, etag])));
    // What is half typed of an answer names the customer, too.
    await this.#forgetDrafts(listed);
    this.#parts.heard?.();
    return { listed, deleted };
  }

  async #lists({ listed, deleted }: Heard, isFromDevice: boolean): Promise<Lists> {
    const heads = await this.#parts.copies.heads();
    const ids = new Set(heads.map(({ name }) => jobIdOf(name)).filter((id) => id !== null));
    const own = await this.#own();
    const lines = linesOf(listed, own, isFromDevice ? ids : null, new Date().toISOString());
    return { listed: lines, deleted, isFromDevice };
  }

  /** What is open in this tab, and what others of this device have not sent yet. */
  async #own(): Promise<readonly OwnJob[]> {
    const { jobs, copies } = this.#parts;
    const here = new Set(jobs.now.map(({ job }) => job.id));
    const others = (await copies.heads()).filter(({ name, unsent }) => {
      const id = jobIdOf(name);
      return unsent && id !== null && !here.has(id);
    });
    const read = await Promise.all(others.map(({ key }) => copies.read(key)));
    const left = read.flatMap((copy) => {
      const job = copy === null ? null : readJob(copy.held.now);
      return job?.ok ? [{ job: job.job, unkept: true }] : [];
    });
    return [...jobs.now, ...left];
  }
}
