import type { Objectish } from 'immer';
import { isSameData } from '#engine/plan/same-data.ts';
import { NEVER_SENT } from '../device/kept-copy.ts';
import { errorWords } from '../error-words.ts';
import type { Keeping } from '../job-view.ts';
import { type Revised, ServerRefusal, type Tagged } from './api-client.ts';
import type { Merged, Theirs } from './both-changed.ts';
import { EditHistory, type HistoryEdit } from './edit-history.ts';
import { isGone, type Keeper, lookAt, type SessionStart } from './keeper.ts';
import { Unanswered } from './unanswered.ts';
import { type Wait, waitInBrowser } from './wait.ts';

/** Rest after the last edit before it is sent, ms. */
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
  /** The newest revision that is known. */
  #tagged: Tagged;
  /** The state that the server has as `#tagged`. */
  #kept: T;
  /** True when that was saved by hand here: it stays among the revisions. */
  #isPinned = false;
  /** True from the wish to save by hand until such a save has gone in, however often it is tried. */
  #wantsPin = false;
  /** True when a save that did not get through will be tried again by itself. */
  #triesAgain = false;
  readonly #unanswered: Unanswered<T>;
  #keeping: Keeping = 'kept';
  #trouble: string | null = null;
  #troubleCode: string | null = null;
  /** What somebody else saved in between, once it was read; null when nobody did. */
  #theirs: Theirs<T> | null = null;
  /** What came in from elsewhere and was not told yet. */
  #cameIn: string | null = null;
  #saving: Promise<void> | null = null;
  /** True while something moves under the hand: where it has got to is not on the device before it rests. */
  #isMoving = false;
  #retryMs = RETRY_MS;
  #callOff: () => void = () => {};
  readonly #keeper: Keeper<T>;
  readonly #tell: () => void;
  readonly #wait: Wait;

  /** @param start what has an empty tag was never sent: its first save is of a new one. */
  constructor(start: SessionStart<T>, keeper: Keeper<T>, changed: () => void, wait: Wait = waitInBrowser) {
    const { value, revision, etag, goneOn } = start;
    this.#history = new EditHistory<T>(goneOn === undefined ? value : goneOn.now, goneOn);
    this.#kept = goneOn === undefined ? this.#history.now : value;
    this.#unanswered = new Unanswered(goneOn?.sent);
    this.#tagged = { revision, etag };
    this.#keeper = keeper;
    this.#wait = wait;
    this.#tell = changed;
    if (this.unkept) this.#keeping = 'keeping';
    this.#hold();
  }

  #changed(): void {
    if (!this.#isMoving) this.#hold();
    this.#tell();
  }

  #hold(): void {
    const { sent } = this.#unanswered;
    const parts = { ...this.#tagged, ...this.#history.steps, sent, unsent: this.unkept };
    this.#keeper.device?.hold({ now: this.now, base: this.#kept, ...parts });
  }

  get now(): T {
    return this.#history.now;
  }
  get revision(): number {
    return this.#tagged.revision;
  }
  /** The tag of the newest revision that is known. */
  get etag(): string {
    return this.#tagged.etag;
  }
  /** What the newest revision that is known holds. */
  get base(): T {
    return this.#kept;
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
  /** True when a save that did not get through is tried again by itself. */
  get triesAgain(): boolean {
    return this.#triesAgain;
  }
  /** True when the newest revision was saved by hand here: nothing lets go of it. */
  get isPinned(): boolean {
    return this.#isPinned;
  }
  /** What somebody else saved in between, as it was read; null when nobody did. */
  get theirs(): Theirs<T> | null {
    return this.#theirs;
  }
  get undoLabel(): string | null {
    return this.#history.undoLabel;
  }
  get redoLabel(): string | null {
    return this.#history.redoLabel;
  }
  /** True when there is something that the server has not. */
  get unkept(): boolean {
    return this.#tagged.etag === NEVER_SENT || this.#history.now !== this.#kept;
  }
  /** True when the newest state is on the device: nothing is lost with the page. */
  get isHeld(): boolean {
    return !this.#isMoving && (this.#keeper.device?.isHeld ?? false);
  }
  /** True when what there is to send only waits for the connection, or for a server that can take it, and is on the device. */
  get waitsHere(): boolean {
    return this.#keeping === 'not-kept' && this.#triesAgain && this.isHeld;
  }

  /** While something moves, its places follow each other faster than a device writes: it writes the one where it comes to rest. */
  edit(edit: HistoryEdit<T>): void {
    const wasMoving = this.#isMoving;
    this.#isMoving = edit.moving ?? false;
    if (this.#history.edit(edit)) this.#edited();
    else if (wasMoving && !this.#isMoving) this.#changed();
  }

  undo(): void {
    this.#isMoving = false;
    if (this.#history.undo()) this.#edited();
  }

  redo(): void {
    this.#isMoving = false;
    if (this.#history.redo()) this.#edited();
  }

  #edited(): void {
    if (this.#keeping !== 'changed-elsewhere') {
      // Of what was deleted nothing counts as saved before it is there again.
      if (this.#keeping !== 'gone') this.#keeping = this.unkept ? 'keeping' : 'kept';
    }
    this.#later(REST_MS);
    this.#changed();
  }

  #later(ms: number): void {
    this.#callOff();
    this.#callOff = this.#wait(ms, () => void this.keep('autosave'));
  }

  /** Keeps the newest state now; resolves when nothing is left to keep or the server said no. */
  async keep(how: 'autosave' | 'by-hand'): Promise<void> {
    if (how === 'by-hand' && this.unkept) this.#wantsPin = true;
    return this.#keepWanted();
  }

  /** Keeps the newest state by hand, so that it stays among the revisions, even where it was kept by itself already. */
  async pin(): Promise<void> {
    if (this.unkept || !this.#isPinned) this.#wantsPin = true;
    return this.#keepWanted();
  }

  async #keepWanted(): Promise<void> {
    this.#callOff();
    while (this.#saving !== null) await this.#saving;
    if (this.#keeping === 'changed-elsewhere') return this.lookAgain();
    if (!(this.unkept || this.#wantsPin)) return this.#settle();
    this.#saving = this.#save(this.#history.now, this.#wantsPin ? 'by-hand' : 'autosave');
    await this.#saving;
    this.#saving = null;
    const goesOn = this.unkept ? this.#keeping === 'keeping' : this.#wantsPin && this.#keeping === 'kept';
    if (goesOn) this.#later(REST_MS);
  }

  #settle(): void {
    if (this.#keeping === 'keeping' && !this.unkept) {
      this.#keeping = 'kept';
      this.#changed();
    }
  }

  async #save(value: T, how: 'autosave' | 'by-hand'): Promise<void> {
    this.#triesAgain = false;
    // On the device before it goes out: the answer may come when there is no page any more.
    this.#unanswered.add(value);
    this.#hold();
    try {
      this.#hasKept(value, await this.#keeper.save(value, this.#tagged.etag, how));
      this.#isPinned = how === 'by-hand';
      if (this.#isPinned) this.#wantsPin = false;
    } catch (error) {
      await this.#refused(value, error);
    }
    this.#changed();
  }

  #hasKept(value: T, { revision, etag }: Tagged): void {
    this.#kept = value;
    this.#tagged = { revision, etag };
    this.#isPinned = false;
    this.#triesAgain = false;
    this.#unanswered.clear();
    this.#retryMs = RETRY_MS;
    this.#forgetTrouble();
    this.#keeping = this.unkept ? 'keeping' : 'kept';
  }

  #forgetTrouble(): void {
    this.#trouble = null;
    this.#troubleCode = null;
    this.#theirs = null;
  }

  async #refused(value: T, error: unknown): Promise<void> {
    if (error instanceof ServerRefusal && error.status === 412) return this.#stale(error);
    this.#hasFailed(error);
    const maySucceed = !(error instanceof ServerRefusal) || error.status === 0 || error.status >= 500;
    if (maySucceed) this.#tryAgain();
    else this.#unanswered.drop(value);
  }

  #hasFailed(error: unknown): void {
    this.#keeping = isGone(error) ? 'gone' : 'not-kept';
    this.#trouble = errorWords(error);
    this.#troubleCode = error instanceof ServerRefusal ? error.code : null;
  }

  #tryAgain(): void {
    this.#triesAgain = true;
    this.#later(this.#retryMs);
    this.#retryMs = Math.min(this.#retryMs * 2, RETRY_MOST_MS);
  }

  /** Another revision is there. If it is what we sent, only the answer was lost; else a person decides. */
  async #stale(error: ServerRefusal): Promise<void> {
    let theirs: Revised<T>;
    try {
      theirs = await this.#keeper.read();
    } catch (unread) {
      // Whose revision it is cannot be told before it is read.
      this.#hasFailed(unread);
      this.#tryAgain();
      return;
    }
    const ours = this.#unanswered.found(theirs.value);
    if (ours !== undefined) {
      this.#hasKept(ours, theirs);
      return;
    }
    if (this.#goesOnFrom(theirs)) return;
    const merged = this.#keeper.merge?.({ base: this.#kept, mine: this.now, theirs: theirs.value });
    if (merged != null) return this.#goOnWith(theirs, merged);
    this.#keeping = 'changed-elsewhere';
    this.#trouble = 'This was changed elsewhere in the meantime.';
    this.#troubleCode = null;
    this.#theirs = { value: theirs.value, revision: theirs.revision, savedAt: error.savedAt };
  }

  /** Goes on from what they saved, with what was changed here upon it, and saves that. */
  async #goOnWith(theirs: Revised<T>, { carry, cameIn }: Merged<T>): Promise<void> {
    this.#history = this.#history.carried(carry);
    this.#cameIn = cameIn;
    this.#hasKept(isSameData(this.now, theirs.value) ? this.now : theirs.value, theirs);
    if (this.unkept) await this.#save(this.now, this.#wantsPin ? 'by-hand' : 'autosave');
  }

  /**
   * Saves what was decided of a document that was changed here and elsewhere.
   *
   * @param theirs what was read and decided about: a save upon anything newer is refused, and asks anew.
   */
  async saveMerged(theirs: Revised<T>, merged: Merged<T>): Promise<void> {
    this.#callOff();
    while (this.#saving !== null) await this.#saving;
    this.#saving = this.#goOnWith(theirs, merged);
    await this.#saving;
    this.#saving = null;
    this.#changed();
  }

  /** What came in from elsewhere, once it is saved with what was changed here; null where that was told, or nothing did. */
  takeCameIn(): string | null {
    if (this.#keeping !== 'kept') return null;
    const cameIn = this.#cameIn;
    this.#cameIn = null;
    return cameIn;
  }

  /** Lays the own state on what somebody else saved; false where a person has to decide. */
  #goesOnFrom(theirs: Revised<T>): boolean {
    const { now } = this.#history;
    const own = this.#keeper.onTheirs?.(this.#kept, now, theirs.value);
    if (own === undefined) return false;
    // Steps back would lead to what is not to come back.
    if (own.mine !== now) this.#history = new EditHistory(own.mine);
    if (!own.isSettled) return false;
    this.#hasKept(theirs.value, theirs);
    this.#later(REST_MS);
    return true;
  }

  /**
   * Looks whether it is still there, unless a save is about to tell. What was deleted is no longer called saved; what
   * was put back meanwhile goes on from there; what they saved since, while a person decides, counts as theirs. No
   * answer changes nothing.
   */
  async lookAgain(): Promise<void> {
    const { etag } = this.#tagged;
    if (this.#saving !== null || etag === NEVER_SENT) return;
    const seen = await lookAt(this.#keeper, etag);
    const isOld = this.#saving !== null || this.#tagged.etag !== etag;
    if (isOld || seen === undefined) return;
    if (this.#keeping === 'changed-elsewhere' && seen !== null && seen !== 'gone') this.#haveMovedOn(seen);
    if (this.#keeping === 'kept' && seen !== null && seen !== 'gone' && this.#isLessened(seen))
      return this.take(seen);
    if ((seen === 'gone') === (this.#keeping === 'gone')) return;
    if (seen === 'gone') this.#keeping = 'gone';
    else this.#isBack(seen);
    this.#changed();
  }

  /** What somebody else saved was saved by them anew while a person decides: that is what there is to decide about. */
  #haveMovedOn({ value, revision }: Revised<T>): void {
    if (revision === this.#theirs?.revision) return;
    this.#theirs = { value, revision, savedAt: null };
    this.#changed();
  }

  /** True where something was erased there that is here still. */
  #isLessened({ value }: Revised<T>): boolean {
    const own = this.#keeper.onTheirs?.(this.#kept, this.#kept, value);
    return own !== undefined && own.mine !== this.#kept;
  }

  /** @param other what it came back as; null where that is what it was. */
  #isBack(other: Revised<T> | null): void {
    this.#forgetTrouble();
    this.#keeping = this.unkept ? 'keeping' : 'kept';
    // Saved on the old base: where somebody else changed it before, a person decides as ever.
    if (this.unkept) this.#later(REST_MS);
    else if (other !== null) this.take(other);
  }

  /** What the server has this moment. */
  readTheirs(): Promise<Revised<T>> {
    return this.#keeper.read();
  }

  /**
   * Lays the own state over what somebody else saved.
   *
   * @param theirs what was read, and put aside where it is still wanted: nothing newer is laid over.
   */
  async putMineOver(theirs: Revised<T>): Promise<void> {
    if (isSameData(theirs.value, this.now)) {
      this.#hasKept(this.now, theirs);
      this.#changed();
      return;
    }
    const { value, revision, etag } = theirs;
    this.#tagged = { revision, etag };
    this.#kept = value;
    this.#keeping = 'keeping';
    await this.keep('by-hand');
  }

  /** Takes what somebody else saved in place of the own state; whoever asks has put that aside before. */
  async takeTheirs(): Promise<void> {
    this.take(await this.readTheirs());
  }

  /** Goes on with what was read in place of the own state, whose steps back are gone. */
  take(read: Revised<T>): void {
    this.#callOff();
    this.#wantsPin = false;
    this.#history = new EditHistory(read.value);
    this.#hasKept(this.#history.now, read);
    this.#changed();
  }

  /** Lets the timers go. */
  stop(): void {
    this.#callOff();
  }
}
