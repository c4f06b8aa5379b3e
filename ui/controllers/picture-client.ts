import type { ApiClient } from './api-client.ts';

/** Speaks to the server of pictures; every refusal, and no answer at all, is a `ServerRefusal`. */
export class PictureClient {
  readonly #api: Pick<ApiClient, 'ask'>;

  constructor(api: Pick<ApiClient, 'ask'>) {
    this.#api = api;
  }

  /** Has a picture kept, and gives its id there. */
  async keep(file: Blob): Promise<string> {
    const answer = await this.#api.ask('POST', '/api/assets', { file });
    return ((await answer.json()) as { id: string }).id;
  }

  async read(id: string): Promise<Blob> {
    return (await this.#api.ask('GET', `/api/assets/${id}`)).blob();
  }
}
