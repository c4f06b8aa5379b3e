import { errorWords } from '../error-words.ts';
import type { LinksAsk, LinksSeen, QuotationLink } from '../quotations/quotation-links.ts';
import type { ApiClient } from './api-client.ts';
import type { WhoIsHere } from './who-is-here.ts';

/** The links by which customers see quotations, asked of the server. */
export class QuotationLinks {
  readonly #api: Pick<ApiClient, 'ask'>;
  readonly #here: Pick<WhoIsHere, 'session'>;

  constructor(api: Pick<ApiClient, 'ask'>, here: Pick<WhoIsHere, 'session'>) {
    this.#api = api;
    this.#here = here;
  }

  /** Does what is asked, and shows how the links stand then. */
  async do({ jobId, quotationId, ask, show }: LinksAsk): Promise<void> {
    const path = `/api/jobs/${encodeURIComponent(jobId)}/quotations/${quotationId}/links`;
    const isReached = this.#here.session?.signIn ?? false;
    const none: LinksSeen = { isReached, links: [], made: null, trouble: '' };
    if (!isReached) return show(none);
    try {
      const made = ask.do === 'make' ? await this.#make(path) : null;
      if (ask.do === 'withdraw') await this.#api.ask('DELETE', `${path}/${ask.linkId}`);
      const { links } = (await (await this.#api.ask('GET', path)).json()) as {
        links: readonly QuotationLink[];
      };
      show({ ...none, links, made });
    } catch (error) {
      show({ ...none, trouble: errorWords(error) });
    }
  }

  async #make(path: string): Promise<LinksSeen['made']> {
    const answer = await this.#api.ask('POST', path, { body: '{}' });
    const { token, expiresAt } = (await answer.json()) as { token: string; expiresAt: string };
    return { href: `${this.#here.session?.publicOrigin ?? location.origin}/q#${token}`, expiresAt };
  }
}
