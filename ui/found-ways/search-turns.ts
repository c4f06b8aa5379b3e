import { errorWords } from '../error-words.ts';
import type {
  FirstAnswer,
  Found,
  QuestionAnswer,
  QuestionAsk,
  Reply,
  SearchAsk,
  Turn,
} from './search-asks.ts';
import { answerQuestion, firstOf, foundOf, type Searcher } from './searcher.ts';

type AnyReply = Reply<Found | QuestionAnswer, FirstAnswer>;

/** What a thread works with. */
export interface Thread {
  readonly post: (reply: AnyReply) => void;
  /** Resolves once what has come in meanwhile has been taken. */
  readonly letIn: () => Promise<void>;
  readonly nowMs: () => number;
}

/** How long is searched before it is looked whether something newer has come in, ms. */
const SLICE_MS = 12;

/** Answers questions one after the other; a search is left as soon as there is a newer question, keeping what it knows. */
export class SearchTurns {
  #newest = 0;
  readonly #searcher: Searcher;
  readonly #thread: Thread;

  constructor(searcher: Searcher, thread: Thread) {
    this.#searcher = searcher;
    this.#thread = thread;
  }

  /** @returns when it is answered, or left for a newer one. */
  async take({ turn, ask }: Turn<SearchAsk | QuestionAsk>): Promise<void> {
    this.#newest = turn;
    const { post } = this.#thread;
    try {
      const answer =
        ask.what === 'search' ? await this.#search(turn, ask) : answerQuestion(this.#searcher, ask);
      if (answer !== null) post({ turn, is: 'answer', answer });
    } catch (error) {
      post({ turn, is: 'trouble', message: errorWords(error) });
    }
  }

  async #search(turn: number, ask: SearchAsk): Promise<Found | null> {
    const { post, letIn, nowMs } = this.#thread;
    const steps = this.#searcher.search(ask);
    let sinceMs = nowMs();
    for (;;) {
      const { done, value } = steps.next();
      if (done && ask.firstOnly) {
        post({ turn, is: 'first', first: null });
        return null;
      }
      if (done) return foundOf(value, value.schemes.length === 0 ? this.#searcher.against(ask) : []);
      if (value.step === 'first') {
        post({ turn, is: 'first', first: firstOf(this.#searcher, ask, value.first) });
        if (ask.firstOnly) return null;
      }
      if (nowMs() - sinceMs < SLICE_MS) continue;
      await letIn();
      if (turn !== this.#newest) return null;
      sinceMs = nowMs();
    }
  }
}
