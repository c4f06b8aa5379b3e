import type { SaidHow } from '#model/quotation-notes.ts';
import { type TextStore, TextsByJob } from '../controllers/texts-by-job.ts';

/** What somebody said, how and when. */
export interface Answer {
  readonly by: string;
  readonly how: SaidHow;
  /** ISO. */
  readonly on: string;
  /** The chosen scheme; null where there is none to choose. */
  readonly schemeId: string | null;
  /** Null: nobody said. */
  readonly earlyStart: boolean | null;
}

const hows: readonly string[] = ['signed', 'message', 'in-person', 'telephone'] satisfies readonly SaidHow[];

/**
 * Answers that are being typed and not yet recorded, on this device: who leaves the step, or loses the page, finds them again.
 * Each has a name of its own: the quotation or the variation, and what is said to it.
 */
export class AnswerDrafts {
  readonly #texts: TextsByJob;

  /** @param store the browser's, unless a test brings its own. */
  constructor(store: () => TextStore = () => localStorage) {
    this.#texts = new TextsByJob('answers', store);
  }

  /** Null where nothing was typed. */
  of(jobId: string, name: string): Answer | null {
    return this.#all(jobId).get(name) ?? null;
  }

  /** Null: it is recorded, or dropped. */
  keep(jobId: string, name: string, answer: Answer | null): void {
    const all = new Map(this.#all(jobId));
    if (answer === null && !all.has(name)) return;
    if (answer === null) all.delete(name);
    else all.set(name, answer);
    this.#texts.keep(jobId, JSON.stringify(Object.fromEntries(all)));
  }

  /** Lets go of all of a job. */
  clear(jobId: string): void {
    this.#texts.keep(jobId, '{}');
  }

  /** What is no such text is as good as none, and what is no answer in it is left out. */
  #all(jobId: string): ReadonlyMap<string, Answer> {
    try {
      const kept: unknown = JSON.parse(this.#texts.of(jobId) ?? '{}');
      const entries = typeof kept === 'object' && kept !== null ? Object.entries(kept) : [];
      return new Map(entries.filter((entry): entry is [string, Answer] => isAnswer(entry[1])));
    } catch {
      return new Map();
    }
  }
}

function isAnswer(value: unknown): value is Answer {
  if (typeof value !== 'object' || value === null) return false;
  const { by, how, on, schemeId, earlyStart } = value as Readonly<Record<string, unknown>>;
  return (
    typeof by === 'string' &&
    typeof how === 'string' &&
    hows.includes(how) &&
    typeof on === 'string' &&
    (schemeId === null || typeof schemeId === 'string') &&
    (earlyStart === null || typeof earlyStart === 'boolean')
  );
}

/** The one that the screen keeps its answers in. */
export const answerDrafts = new AnswerDrafts();
