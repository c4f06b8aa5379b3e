import { Worker } from 'node:worker_threads';
import type { Fault } from '#model/fault.ts';
import type { BatchInput, BatchTerms, Standing } from './batch-line.ts';

/** What a worker is started with. */
export interface WorkerTerms extends BatchTerms {
  readonly by: string;
}

/** What a worker makes of a job file. */
export interface BatchAnswer {
  readonly at: string | number;
  /** The line, without its line break. */
  readonly text: string;
  readonly standing: Standing;
  /** None of a job that could be read. */
  readonly faults: readonly Omit<Fault, 'code'>[];
}

/** Jobs leave much behind that lives as long as one job does: room for several of them is cleared away at once, MB. */
const YOUNG_MB = 48;
/** A job that asks for more than this is not one that a house makes, MB. */
const OLD_MB = 384;

interface Waiting {
  readonly done: (answer: BatchAnswer) => void;
  readonly failed: (error: Error) => void;
}

/** One thread, and what it was asked and has not answered yet, in order. */
class BatchWorker {
  readonly #thread: Worker;
  readonly #waiting: Waiting[] = [];
  #end: Error | null = null;

  constructor(terms: WorkerTerms) {
    this.#thread = new Worker(new URL('./batch-worker-start.mjs', import.meta.url), {
      workerData: terms,
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB, maxOldGenerationSizeMb: OLD_MB },
    });
    this.#thread.on('message', (answer: BatchAnswer) => this.#waiting.shift()?.done(answer));
    this.#thread.on('error', (error) => this.#fail(error));
    this.#thread.on('exit', () => this.#fail(new Error('a thread ended before its jobs were done')));
  }

  get load(): number {
    return this.#waiting.length;
  }

  answer(input: BatchInput): Promise<BatchAnswer> {
    if (this.#end !== null) return Promise.reject(this.#end);
    return new Promise((done, failed) => {
      this.#waiting.push({ done, failed });
      this.#thread.postMessage(input);
    });
  }

  async close(): Promise<void> {
    await this.#thread.terminate();
  }

  #fail(error: Error): void {
    this.#end ??= error;
    for (const { failed } of this.#waiting.splice(0)) failed(error);
  }
}

/** Threads that estimate jobs, each as it comes to the one with the least to do. */
export class BatchWorkers {
  readonly #workers: readonly BatchWorker[];

  constructor(count: number, terms: WorkerTerms) {
    this.#workers = Array.from({ length: count }, () => new BatchWorker(terms));
  }

  /** What comes of a job file; fails where the thread does. */
  answer(input: BatchInput): Promise<BatchAnswer> {
    const free = this.#workers.reduce((least, one) => (one.load < least.load ? one : least));
    return free.answer(input);
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.close()));
  }
}
