import type { Objectish } from 'immer';
import type { Keeping } from '../job-view.ts';
import { type Revised, ServerRefusal } from './api-client.ts';
import { EditHistory, type HistoryEdit } from './edit-history.ts';

/** How a document is fetched and kept. */
export interface Keeper<T> {
  readonly read: () => Promise<Revised<T>>;
  /** Saves on a base and gives the new revision; refuses a stale base with 412. */
  readonly save: (value: T, base: number, how: 'autosave' | 'by-hand') => Promise<number>;
}

/** Calls back after a while; what it gives back calls it off. */
export type Wait = (ms: number, then: () => void) => () => void;

const waitInBrowser: Wait = (ms, then) => {
  const timer = setTimeout(then, ms);
  return () => clearTimeout(timer);
};

/** Rest after the last edit before it is kept, ms. */
const REST_MS = 800;
/** First wait before a save that did not get through is tried again; doubled each time, ms. */
const RETRY_MS = 2000;
const RETRY_MOST_MS = 60_000;

/**
 * A document being edited: its history, and the keeping of it. One save is under way at a time, always of the
 * newest state; an edit is never dropped, whatever the server says.
 */
export class DocumentSession<T extends Objectish> {
  #history: EditHistory<T>;
  #revision: number;
  /** The state that the server has as `#revision`. */
  #kept: T;
  /** What was sent since the last answer without getting one: any of it may have arrived all the same. */
  #unanswered: readonly T[] = [];
  #keeping: Keeping = 'kept';
  #trouble: string | null = null;
  #troubleCode: string | null = null;
  #theirRevision: number | null = null;
  #theirSavedAt: string | null = null;
  #saving: Promise<void> | null = null;
  #retryMs = RETRY_MS;
  #callOff: () => void = () => {};
  readonly #keeper: Keeper<T>;
  readonly #changed: () => void;
  readonly #wait: Wait;

  constructor(start: Revised<T>, keeper: Keeper<T>, changed: () => void, wait: Wait = waitInBrowser) {
    this.#history = new EditHistory(start.value);
    this.#kept = this.#history.now;
    this.#revision = start.revision;
    this.#keeper = keeper;
    this.#changed = changed;
    this.#wait = wait;
  }

  get now(): T {
    return this.#history.now;
  }
  get revision(): number {
    return this.#revision;
  }
  get keeping(): Keeping {
    return this.#keeping;
  }
  /** Why the last save did not get through, in words; null when it did. */
  get trouble(): string | null {
    return this.#trouble;
  }
  /** The server's word for the trouble; null without any. */
  get troubleCode(): string | null {
    return this.#troubleCode;
  }
  /** What somebody else saved in between; null when nobody did. */
  get theirRevision(): number | null {
    return this.#theirRevision;
  }
  /** When that was, ISO; null when nobody did, or it is not told. */
  get theirSavedAt(): string | null {
    return this.#theirSavedAt;
  }
  get undoLabel(): string | null {
    return this.#history.undoLabel;
  }
  get redoLabel(): string | null {
    return this.#history.redoLabel;
  }
  /** True when there is something that the server has not. */
  get unkept(): boolean {
    return this.#history.now !== this.#kept;
  }

  edit(edit: HistoryEdit<T>): void {
    if (this.#history.edit(edit)) this.#edited();
  }

  /** The thing that moved has come to rest: the next move is a step of its own. */
  endGroup(): void {
    this.#history.endGroup();
  }

  undo(): void {
    if (this.#history.undo()) this.#edited();
  }

  redo(): void {
    if (this.#history.redo()) this.#edited();
  }

  #edited(): void {
    if (this.#keeping !== 'changed-elsewhere') {
      this.#keeping = this.unkept ? 'keeping' : 'kept';
      this.#later(REST_MS);
    }
    this.#changed();
  }

  #later(ms: number): void {
    this.#callOff();
    this.#callOff = this.#wait(ms, () => void this.keep('autosave'));
  }

  /** Keeps the newest state now; resolves when nothing is left to keep or the server said no. */
  async keep(how: 'autosave' | 'by-hand'): Promise<void> {
    this.#callOff();
    while (this.#saving !== null) await this.#saving;
    if (!this.unkept || this.#keeping === 'changed-elsewhere') return this.#settle();
    this.#saving = this.#save(this.#history.now, how);
    await this.#saving;
    this.#saving = null;
    if (this.unkept && this.#keeping === 'keeping') this.#later(REST_MS);
  }

  #settle(): void {
    if (this.#keeping === 'keeping' && !this.unkept) {
      this.#keeping = 'kept';
      this.#changed();
    }
  }

  async #save(value: T, how: 'autosave' | 'by-hand'): Promise<void> {
    try {
      const revision = await this.#keeper.save(value, this.#revision, how);
      this.#hasKept(value, revision);
    } catch (error) {
      await this.#refused(value, error);
    }
    this.#changed();
  }

  #hasKept(value: T, revision: number): void {
    this.#kept = value;
    this.#revision = revision;
    this.#unanswered = [];
    this.#retryMs = RETRY_MS;
    this.#trouble = null;
    this.#troubleCode = null;
    this.#theirRevision = null;
    this.#theirSavedAt = null;
    this.#keeping = this.unkept ? 'keeping' : 'kept';
  }

  async #refused(value: T, error: unknown): Promise<void> {
    if (error instanceof ServerRefusal && error.status === 412) return this.#stale(value, error);
    this.#keeping = 'not-kept';
    this.#trouble = error instanceof Error ? error.message : String(error);
    this.#troubleCode = error instanceof ServerRefusal ? error.code : null;
    const maySucceed = !(error instanceof ServerRefusal) || error.status === 0 || error.status >= 500;
    if (!maySucceed) return;
    this.#unanswered = [...this.#unanswered, value];
    this.#later(this.#retryMs);
    this.#retryMs = Math.min(this.#retryMs * 2, RETRY_MOST_MS);
  }

  /** Another revision is there. If it is what we sent, only the answer was lost; else a person decides. */
  async #stale(value: T, error: ServerRefusal): Promise<void> {
    const theirs = await this.#keeper.read().catch(() => null);
    const text = JSON.stringify(theirs?.value);
    const ours = [value, ...this.#unanswered].find((sent) => JSON.stringify(sent) === text);
    if (theirs !== null && ours !== undefined) {
      this.#hasKept(ours, theirs.revision);
      return;
    }
    this.#keeping = 'changed-elsewhere';
    this.#trouble = 'This was changed elsewhere in the meantime.';
    this.#theirRevision = theirs?.revision ?? error.currentRevision;
    this.#theirSavedAt = error.savedAt;
  }

  /** Lays the own state over what somebody else saved; theirs stays among the revisions. */
  async putMineOver(): Promise<void> {
    const theirs = await this.#keeper.read();
    this.#revision = theirs.revision;
    this.#kept = theirs.value;
    this.#keeping = 'keeping';
    await this.keep('by-hand');
  }

  /** Takes what somebody else saved in place of the own state; whoever asks has put that aside before. */
  async takeTheirs(): Promise<void> {
    const theirs = await this.#keeper.read();
    this.#callOff();
    this.#history = new EditHistory(theirs.value);
    this.#hasKept(this.#history.now, theirs.revision);
    this.#changed();
  }

  /** Lets the timers go; what is not kept by then is lost with the page, which asks before it is left. */
  stop(): void {
    this.#callOff();
  }
}
