import type { Fault } from '#model/fault.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';

/** A line of the list of jobs. */
export interface ListedJob {
  readonly id: string;
  readonly reference: string;
  readonly title: string;
  readonly customer: string;
  readonly revision: number;
  readonly savedAt: string;
  readonly wantedPoints: number;
  readonly schemes: number;
}

/** What the server or the way to it says no with. */
export class ServerRefusal extends Error {
  override readonly name = 'ServerRefusal';
  /** HTTP status; 0 when the server was not reached. */
  readonly status: number;
  /** The server's word for it; `not-reached` when there was no answer. */
  readonly code: string;
  /** What is there instead, where a save was stale. */
  readonly currentRevision: number | null;
  /** When that was saved, ISO; null where there is nothing to tell. */
  readonly savedAt: string | null;
  readonly faults: readonly Fault[];

  constructor(status: number, body: Partial<ProblemBody>) {
    super(body.detail ?? body.title ?? 'The server is not to be reached. See that it runs, and try again.');
    this.status = status;
    this.code = body.code ?? 'not-reached';
    this.currentRevision = body.currentRevision ?? null;
    this.savedAt = body.savedAt ?? null;
    this.faults = body.faults ?? [];
  }
}

interface ProblemBody {
  readonly title: string;
  readonly detail: string;
  readonly code: string;
  readonly currentRevision: number;
  readonly savedAt: string;
  readonly faults: readonly Fault[];
}

/** A document with the revision that it is. */
export interface Revised<T> {
  readonly value: T;
  readonly revision: number;
}

type Fetch = typeof fetch;

const revisionOf = (answer: Response): number => Number(answer.headers.get('etag')?.replaceAll('"', '') ?? 0);

async function problemOf(answer: Response): Promise<Partial<ProblemBody>> {
  try {
    return (await answer.json()) as Partial<ProblemBody>;
  } catch {
    return { detail: `The server answered with ${answer.status} and no reason.`, code: 'no-reason' };
  }
}

/** Speaks to the server; every refusal, and no answer at all, is a `ServerRefusal`. */
export class ApiClient {
  readonly #fetch: Fetch;

  constructor(fetcher: Fetch = (input, init) => fetch(input, init)) {
    this.#fetch = fetcher;
  }

  async listJobs(): Promise<readonly ListedJob[]> {
    const answer = await this.#ask('GET', '/api/jobs');
    return ((await answer.json()) as { jobs: readonly ListedJob[] }).jobs;
  }

  async readJob(id: string): Promise<Revised<Job>> {
    const answer = await this.#ask('GET', jobPath(id));
    const read = readJobText(await answer.text());
    if (read.ok) return { value: read.job, revision: revisionOf(answer) };
    throw new ServerRefusal(422, {
      code: 'job-unreadable',
      detail: 'The stored job cannot be read by this version.',
      faults: read.faults,
    });
  }

  async createJob(job: Job): Promise<number> {
    const answer = await this.#ask('POST', '/api/jobs', { body: JSON.stringify(job) });
    return ((await answer.json()) as { revision: number }).revision;
  }

  async saveJob(job: Job, base: number, how: 'autosave' | 'by-hand'): Promise<number> {
    return this.#save(`${jobPath(job.id)}?how=${how}`, job, base);
  }

  async removeJob(id: string, base: number): Promise<void> {
    await this.#ask('DELETE', jobPath(id), { base });
  }

  async restoreJob(id: string): Promise<void> {
    await this.#ask('POST', `${jobPath(id)}/restore`, { body: '{}' });
  }

  async putBackDemos(): Promise<void> {
    await this.#ask('POST', '/api/demos', { body: '{}' });
  }

  async readLibrary(): Promise<Revised<Library>> {
    const answer = await this.#ask('GET', '/api/library');
    const read = readLibraryText(await answer.text());
    if (read.ok) return { value: read.library, revision: revisionOf(answer) };
    throw new ServerRefusal(422, {
      code: 'library-unreadable',
      detail: 'The stored library cannot be read by this version.',
      faults: read.faults,
    });
  }

  async saveLibrary(library: Library, base: number): Promise<number> {
    return this.#save('/api/library', library, base);
  }

  async #save(path: string, value: unknown, base: number): Promise<number> {
    const answer = await this.#ask('PUT', path, { body: JSON.stringify(value), base });
    return ((await answer.json()) as { revision: number }).revision;
  }

  async #ask(method: string, path: string, sent: { body?: string; base?: number } = {}): Promise<Response> {
    const headers: Record<string, string> = {};
    if (sent.body !== undefined) headers['content-type'] = 'application/json';
    if (sent.base !== undefined) headers['if-match'] = `"${sent.base}"`;
    const request: RequestInit = { method, headers, ...(sent.body === undefined ? {} : { body: sent.body }) };
    const answer = await this.#fetch(path, request).catch((error: unknown) => {
      throw new ServerRefusal(0, { detail: `The server is not to be reached (${String(error)}).` });
    });
    if (!answer.ok) throw new ServerRefusal(answer.status, await problemOf(answer));
    return answer;
  }
}

const jobPath = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;
