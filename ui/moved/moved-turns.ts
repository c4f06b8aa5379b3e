import { errorWords } from '../error-words.ts';
import type { Reply, Turn } from '../found-ways/search-asks.ts';
import { ChangeSender, ChangeTaker, type DataChange } from './data-changes.ts';
import { type MovedAsk, type MovedSight, movedSightOf } from './moved-sight.ts';

/** Answers one question after the other, each by what changed of the answer before; questions come by what changed as well. */
export class MovedTurns {
  readonly #asked = new ChangeTaker();
  readonly #answered = new ChangeSender();
  readonly #work: (ask: MovedAsk) => MovedSight;

  /** @param work the engine's own, unless a test brings another. */
  constructor(work: (ask: MovedAsk) => MovedSight = movedSightOf) {
    this.#work = work;
  }

  take(change: DataChange): Reply<DataChange> {
    const { turn, ask } = this.#asked.take(change) as Turn<MovedAsk>;
    try {
      return { turn, is: 'answer', answer: this.#answered.changeTo(this.#work(ask)) };
    } catch (error) {
      return { turn, is: 'trouble', message: errorWords(error) };
    }
  }
}
