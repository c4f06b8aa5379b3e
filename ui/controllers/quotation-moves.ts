import { type MoneyMoved, movingMoney } from '#engine/quotation/money-moved.ts';
import { type Contract, pricingVariation, type Variation } from '#engine/quotation/variation.ts';
import { workMoved } from '#engine/work-moved.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJobText } from '#model/read-job.ts';
import { readLibraryText } from '#model/read-library.ts';
import type { QuotationRecord } from '../quotations/quotation-record.ts';
import type { OfferMoved, Varied } from '../quotations/quotations-view.ts';
import type { Clock } from './estimating.ts';
import type { QuotationClient } from './quotation-client.ts';

/** What is told of the newest quotation. */
export interface Moves {
  readonly moved: readonly OfferMoved[] | null;
  readonly variation: Varied | null;
}

/** What the price is held against. */
export interface NowPriced {
  readonly job: Job;
  readonly library: Library;
}

const jobOf = (text: string): Job => {
  const read = readJobText(text);
  if (!read.ok) throw new Error('The quoted job cannot be read: load the page anew.');
  return read.job;
};

const libraryOf = (text: string): Library => {
  const read = readLibraryText(text);
  if (!read.ok) throw new Error('The quoted prices cannot be read: load the page anew.');
  return read.library;
};

/** Works out what has moved since a job was quoted or agreed, a change at a time, so that hands are heard in between. */
export class QuotationMoves {
  readonly #client: QuotationClient;
  readonly #clock: Pick<Clock, 'wait'>;
  /** Frozen texts never change: each is fetched and read once. */
  readonly #jobs = new Map<string, Job>();
  readonly #libraries = new Map<string, Library>();
  #turn = 0;

  constructor(client: QuotationClient, clock: Pick<Clock, 'wait'>) {
    this.#client = client;
    this.#clock = clock;
  }

  /** What was read is not what is there any more: something was erased. */
  forget(): void {
    this.#turn++;
    this.#jobs.clear();
    this.#libraries.clear();
  }

  /** What is worked out still is not wanted any more. */
  stop(): void {
    this.#turn++;
  }

  /** Null where something newer was asked for meanwhile. */
  async of(quotation: QuotationRecord, now: NowPriced): Promise<Moves | null> {
    const turn = ++this.#turn;
    const moves =
      quotation.status === 'accepted'
        ? { moved: null, variation: await this.#variation(quotation, now, turn) }
        : { moved: await this.#offers(quotation, now, turn), variation: null };
    return turn === this.#turn ? moves : null;
  }

  async #quoted(id: string): Promise<NowPriced> {
    const job = this.#jobs.get(id) ?? jobOf(await this.#client.frozen(id, 'job'));
    const library = this.#libraries.get(id) ?? libraryOf(await this.#client.frozen(id, 'library'));
    this.#jobs.set(id, job);
    this.#libraries.set(id, library);
    return { job, library };
  }

  async #offers(
    { id, offers }: QuotationRecord,
    after: NowPriced,
    turn: number,
  ): Promise<readonly OfferMoved[]> {
    const before = await this.#quoted(id);
    const all: OfferMoved[] = [];
    for (const { schemeId, grossPence } of offers) {
      const moving = movingMoney({ schemeId, before, after, quotedPence: grossPence });
      all.push({ schemeId, moved: await this.#stepwise<MoneyMoved>(moving, turn) });
    }
    return all;
  }

  async #variation(quotation: QuotationRecord, { job }: NowPriced, turn: number): Promise<Varied | null> {
    const { id, acceptance, contractPence, restsOn } = quotation;
    if (acceptance === null || contractPence === null) return null;
    const quoted = await this.#quoted(id);
    const agreedJob = restsOn === null ? quoted.job : await this.#agreed(id, restsOn);
    const contract: Contract = {
      schemeId: acceptance.schemeId,
      quotedJob: quoted.job,
      library: quoted.library,
      agreedJob,
      contractPence,
    };
    const priced = await this.#stepwise<Variation>(pricingVariation(contract, job), turn);
    const work = priced === null ? null : workMoved(contract, job);
    return priced === null || work === null ? null : { ...priced, work };
  }

  async #agreed(id: string, variationId: string): Promise<Job> {
    const key = `${id}/${variationId}`;
    const job = this.#jobs.get(key) ?? jobOf(await this.#client.variationJob(id, variationId));
    this.#jobs.set(key, job);
    return job;
  }

  async #stepwise<T>(work: Generator<void, T | null>, turn: number): Promise<T | null> {
    for (;;) {
      if (turn !== this.#turn) return null;
      const { done, value } = work.next();
      if (done) return value;
      await new Promise<void>((resolve) => this.#clock.wait(0, resolve));
    }
  }
}
