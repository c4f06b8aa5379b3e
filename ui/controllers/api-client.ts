import type { Sheet } from '#engine/price/list/sheet.ts';
import type { Fault } from '#model/fault.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import { isNewer } from './newer-version.ts';

/** A line of the list of jobs. */
export interface ListedJob {
  readonly id: string;
  readonly reference: string;
  readonly title: string;
  readonly customer: string;
  readonly revision: number;
  /** The tag of that revision. */
  readonly etag: string;
  readonly savedAt: string;
  /** ISO; null while it is on the list. */
  readonly removedAt: string | null;
  readonly wantedPoints: number;
  readonly schemes: number;
}

/** Said where there was no answer: to somebody in a hallway, who cannot see to a server. */
export const NO_CONNECTION = 'There is no connection.';

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
    super(body.detail ?? body.title ?? NO_CONNECTION);
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

/** A revision as the server names it. */
export interface Tagged {
  /** Its number, as people read it. */
  readonly revision: number;
  /** Its entity tag, sent back as it came: the number alone does not tell two texts of one number apart. */
  readonly etag: string;
}

/** A document with the revision that it is. */
export interface Revised<T> extends Tagged {
  readonly value: T;
}

type Fetch = typeof fetch;

/**
 * The revision that an answer is of. A proxy that packs answers makes a tag weak, which `If-Match` would never fit
 * (RFC 9110, 13.1.1); the text is the same all the same, so the mark of weakness is dropped.
 */
function taggedBy(answer: Response): Tagged {
  const etag = (answer.headers.get('etag') ?? '').trim().replace(/^W\//, '');
  const number = /^"(\d{1,15})[^"]*"$/.exec(etag)?.[1];
  if (number !== undefined) return { revision: Number(number), etag };
  throw new ServerRefusal(502, {
    code: 'revision-missing',
    detail:
      'The answer does not say which revision it is. Something between here and the server takes its ETag header away: have that let through.',
  });
}

/** What browsers let go on after a page is closed: bytes of all such requests together. Source: Fetch standard, 4.5. */
const KEPT_ALIVE_MOST_BYTES = 64 * 1024;

/** The answer's status where what is held is what is there. Source: RFC 9110, 15.4.5. */
const NOT_MODIFIED = 304;

async function problemOf(answer: Response): Promise<Partial<ProblemBody>> {
  try {
    return (await answer.json()) as Partial<ProblemBody>;
  } catch {
    return { detail: `The server answered with ${answer.status} and no reason.`, code: 'no-reason' };
  }
}

/**
 * What was stored and cannot be read here. The server keeps only what it can read itself, so what this page does not know
 * comes from a newer version of the product; whoever shows it offers that.
 */
const unreadable = (what: 'job' | 'library', faults: readonly Fault[]): ServerRefusal =>
  new ServerRefusal(422, {
    code: isNewer(faults) ? `${what}-newer` : `${what}-unreadable`,
    detail: isNewer(faults)
      ? `${what === 'job' ? 'It was' : 'Prices and norms were'} saved by a newer Ringwright than the one that is open here. Nothing was changed.`
      : `${what === 'job' ? 'The stored job' : 'What is stored of prices and norms'} cannot be read. Nothing was changed.`,
    faults,
  });

async function jobIn(answer: Response): Promise<Revised<Job>> {
  const read = readJobText(await answer.text());
  if (read.ok) return { value: read.job, ...taggedBy(answer) };
  throw unreadable('job', read.faults);
}

/** Speaks to the server; every refusal, and no answer at all, is a `ServerRefusal`. */
export class ApiClient {
  readonly #fetch: Fetch;
  /** Bytes of the requests under way that would outlive the page. */
  #keptAliveBytes = 0;

  constructor(fetcher: Fetch = (input, init) => fetch(input, init)) {
    this.#fetch = fetcher;
  }

  async listJobs(): Promise<readonly ListedJob[]> {
    const answer = await this.ask('GET', '/api/jobs');
    return ((await answer.json()) as { jobs: readonly ListedJob[] }).jobs;
  }

  /** The jobs that were deleted, the last one first. */
  async listRemovedJobs(): Promise<readonly ListedJob[]> {
    const answer = await this.ask('GET', '/api/jobs?removed=true');
    return ((await answer.json()) as { jobs: readonly ListedJob[] }).jobs;
  }

  async readJob(id: string): Promise<Revised<Job>> {
    return jobIn(await this.ask('GET', jobPath(id)));
  }

  /** The job as it is now; null while it is the revision of the tag. A deleted one is refused. */
  async lookAtJob(id: string, etag: string): Promise<Revised<Job> | null> {
    const answer = await this.ask('GET', jobPath(id), { held: etag });
    return answer.status === NOT_MODIFIED ? null : jobIn(answer);
  }

  async createJob(job: Job): Promise<Tagged> {
    return taggedBy(await this.ask('POST', '/api/jobs', { body: JSON.stringify(job) }));
  }

  /** @param base the tag of the revision that the job was changed from. */
  async saveJob(job: Job, base: string, how: 'autosave' | 'by-hand'): Promise<Tagged> {
    return this.#save(`${jobPath(job.id)}?how=${how}`, job, base);
  }

  /** Takes a job off the list, unless it was saved since the revision of the tag. */
  async removeJob(id: string, base: string): Promise<void> {
    await this.ask('DELETE', jobPath(id), { base });
  }

  async restoreJob(id: string): Promise<void> {
    await this.ask('POST', `${jobPath(id)}/restore`, { body: '{}' });
  }

  async putBackDemos(): Promise<void> {
    await this.ask('POST', '/api/demos', { body: '{}' });
  }

  async readLibrary(): Promise<Revised<Library>> {
    const answer = await this.ask('GET', '/api/library');
    const read = readLibraryText(await answer.text());
    if (read.ok) return { value: read.library, ...taggedBy(answer) };
    throw unreadable('library', read.faults);
  }

  /** @param base the tag of the revision that the library was changed from. */
  async saveLibrary(library: Library, base: string): Promise<Tagged> {
    return this.#save('/api/library', library, base);
  }

  /** Has a file of another program read as sheets of rows; one that cannot be read is refused with its fault. */
  async readSheets(file: Blob): Promise<readonly Sheet[]> {
    const answer = await this.ask('POST', '/api/sheets', { file });
    return ((await answer.json()) as { sheets: readonly Sheet[] }).sheets;
  }

  async #save(path: string, value: unknown, base: string): Promise<Tagged> {
    const body = JSON.stringify(value);
    const bytes = new TextEncoder().encode(body).length;
    const keepalive = this.#keptAliveBytes + bytes <= KEPT_ALIVE_MOST_BYTES;
    if (!keepalive) return taggedBy(await this.ask('PUT', path, { body, base }));
    this.#keptAliveBytes += bytes;
    try {
      return taggedBy(await this.ask('PUT', path, { body, base, keepalive }));
    } finally {
      this.#keptAliveBytes -= bytes;
    }
  }

  /** Sends a request; for what a client of its own asks beside. */
  async ask(method: string, path: string, sent: Sent = {}): Promise<Response> {
    const { base, held, file, keepalive = false } = sent;
    const body = sent.body ?? file;
    const headers: Record<string, string> = {};
    if (body !== undefined)
      headers['content-type'] = file === undefined ? 'application/json' : 'application/octet-stream';
    if (base !== undefined) headers['if-match'] = base;
    if (held !== undefined) headers['if-none-match'] = held;
    const request: RequestInit = { method, headers, keepalive, ...(body === undefined ? {} : { body }) };
    const answer = await this.#fetch(path, request).catch(() => {
      throw new ServerRefusal(0, {});
    });
    if (answer.ok || answer.status === NOT_MODIFIED) return answer;
    const problem = await problemOf(answer);
    // It waits on the device as without a connection, and goes out once somebody is signed in again.
    throw new ServerRefusal(problem.code === 'not-signed-in' ? 0 : answer.status, problem);
  }
}

/** What goes with a request. */
export interface Sent {
  readonly body?: string;
  /** Sent as bytes, whatever it is. */
  readonly file?: Blob;
  /** The tag that what is replaced must still have. */
  readonly base?: string;
  /** The tag of what is held: what still has it is not sent again. */
  readonly held?: string;
  /** True where the request goes on though the page is closed. */
  readonly keepalive?: boolean;
}

const jobPath = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;
