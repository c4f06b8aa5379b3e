import type { Database } from './open-database.ts';
import type { StoredText } from './stores.ts';

interface KeptHead {
  /** Of the store, when it was read. */
  readonly state: string;
  readonly stored: StoredText;
}

/** How much text is kept at the most, in characters: the jobs of a day, and little beside what an estimate takes. */
const MOST_LETTERS = 8_000_000;

/**
 * The newest texts of the jobs last read, for as long as nothing at all is written: a job that is read again and again is not fetched
 * again each time. A text is kept as it was handed out, mark and all (see `handOut`).
 */
export class KeptHeads {
  readonly #database: Pick<Database, 'state'>;
  readonly #heads = new Map<string, KeptHead>();
  #letters = 0;

  constructor(database: Pick<Database, 'state'>) {
    this.#database = database;
  }

  /**
   * The newest text of a job; fetched where none is kept that still holds.
   *
   * @param id of the job among those of all firms.
   */
  async read(id: string, fetch: () => Promise<StoredText | null>): Promise<StoredText | null> {
    // Before it is fetched: what is written meanwhile makes it one that does not hold.
    const state = await this.#database.state();
    const kept = this.#heads.get(id);
    if (kept !== undefined && kept.state === state) return kept.stored;
    const stored = await fetch();
    this.#drop(id);
    if (stored !== null && state !== null) this.#keep(id, { state, stored });
    return stored;
  }

  #keep(id: string, head: KeptHead): void {
    this.#heads.set(id, head);
    this.#letters += head.stored.text.length;
    // The oldest go first; one that is larger than all may be goes too.
    for (const oldest of this.#heads.keys()) {
      if (this.#letters <= MOST_LETTERS) return;
      this.#drop(oldest);
    }
  }

  #drop(id: string): void {
    const head = this.#heads.get(id);
    if (head === undefined) return;
    this.#letters -= head.stored.text.length;
    this.#heads.delete(id);
  }
}

const ofDatabases = new WeakMap<Database, KeptHeads>();

/** Those of all firms in a database: room is shared by whoever is at work. */
export function keptHeads(database: Database): KeptHeads {
  const known = ofDatabases.get(database) ?? new KeptHeads(database);
  ofDatabases.set(database, known);
  return known;
}
