import type { QuotationNote } from '#model/quotation-notes.ts';
import type { QuotationRecord } from '../quotations/quotation-record.ts';
import type { ApiClient } from './api-client.ts';

/** A change of accepted work as it is offered. */
export interface VariationOffer {
  readonly id: string;
  readonly reason: string;
  readonly photos: readonly string[];
  /** The tag of the job that it is priced as. */
  readonly job: string;
  readonly differencePence: number;
}

/** Speaks to the server of one job's quotations; every refusal, and no answer at all, is a `ServerRefusal`. */
export class QuotationClient {
  readonly #api: Pick<ApiClient, 'ask'>;
  readonly #path: string;

  constructor(api: Pick<ApiClient, 'ask'>, jobId: string) {
    this.#api = api;
    this.#path = `/api/jobs/${encodeURIComponent(jobId)}/quotations`;
  }

  async list(): Promise<readonly QuotationRecord[]> {
    const answer = await this.#api.ask('GET', this.#path);
    return ((await answer.json()) as { quotations: readonly QuotationRecord[] }).quotations;
  }

  /** @param job the tag of the job that was seen; the library's goes within the body. */
  async issue(
    body: { readonly id: string; readonly date: string; readonly library: string },
    job: string,
  ): Promise<void> {
    await this.#api.ask('POST', this.#path, { body: JSON.stringify(body), base: job });
  }

  /** @param etag of the history that was seen. */
  async note(id: string, note: QuotationNote, etag: string): Promise<void> {
    await this.#api.ask('POST', `${this.#path}/${id}/notes`, { body: JSON.stringify(note), base: etag });
  }

  async offerVariation(id: string, offer: VariationOffer, etag: string): Promise<void> {
    const body = JSON.stringify(offer);
    await this.#api.ask('POST', `${this.#path}/${id}/variations`, { body, base: etag });
  }

  /** @param etag of the history that was seen. */
  async erase(id: string, etag: string): Promise<void> {
    await this.#api.ask('DELETE', `${this.#path}/${id}`, { base: etag });
  }

  /** @param job the tag of the job that was seen. */
  async forgetCustomer(job: string): Promise<void> {
    await this.#api.ask('POST', this.#path.replace(/\/quotations$/, '/forget-customer'), { base: job });
  }

  async frozen(id: string, which: 'document' | 'drawings' | 'job' | 'library'): Promise<string> {
    return (await this.#api.ask('GET', `${this.#path}/${id}/frozen/${which}`)).text();
  }

  async variationJob(id: string, variationId: string): Promise<string> {
    return (await this.#api.ask('GET', `${this.#path}/${id}/variations/${variationId}/job`)).text();
  }

  /** Has a photo kept, and gives its id. */
  async keepPhoto(file: Blob): Promise<string> {
    const answer = await this.#api.ask('POST', '/api/assets', { file });
    return ((await answer.json()) as { id: string }).id;
  }
}
