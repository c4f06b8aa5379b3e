import { produce } from 'immer';
import { stateTag } from '#engine/state-tag.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readJob } from '#model/read-job.ts';
import { movePoint } from '../edits/move-point.ts';
import { withoutLoose } from '../edits/photos.ts';
import { withTrueNames } from '../edits/scheme-names.ts';
import { errorWords } from '../error-words.ts';
import type { JobEdit, PlacedAt } from '../job-events.ts';
import type { JobView, Keeping } from '../job-view.ts';
import { movablePoints } from '../movable-points.ts';
import type { PlanStand } from '../moved/moved-sight.ts';
import type { DrawAsk } from '../way-drawing/way-draft.ts';
import { type ApiClient, ServerRefusal } from './api-client.ts';
import { type ChangedTwice, Comparing } from './changed-twice.ts';
import type { DocumentSession } from './document-session.ts';
import { browserClock, type Clock, type EstimateAsk, Estimating } from './estimating.ts';
import { HeldPoint } from './held-point.ts';
import { newMovedWorker } from './new-moved-worker.ts';
import { newSearchWorker } from './new-search-worker.ts';
import type { OpenJobs } from './open-jobs.ts';
import type { OpenLibrary } from './open-library.ts';
import type { JobRoute } from './router.ts';
import { isSamePage, type PageWords } from './same-page.ts';
import { type HowSettled, putAside, putMineBack, settleJob } from './settle-job.ts';
import { lastSchemes, type TextsByJob } from './texts-by-job.ts';
import { today } from './today.ts';
import { WayDrawing } from './way-drawing.ts';
import { WayFinder, type WaysAsk } from './way-finder.ts';
import type { WorkerLike } from './worker-lane.ts';

/** What a desk works with. */
export interface DeskParts {
  readonly api: ApiClient;
  readonly jobs: OpenJobs;
  /** What jobs are priced with. */
  readonly library: OpenLibrary;
  /** The browser's, unless a test brings its own. */
  readonly clock?: Clock;
  /** The device's, unless a test brings its own. */
  readonly lastSchemes?: TextsByJob;
  /** Begins a thread that searches ways: the browser's, unless a test brings its own. */
  readonly searchWorker?: () => WorkerLike;
  /** Begins a thread that works out what follows the hand: the browser's, unless a test brings its own. */
  readonly movedWorker?: () => WorkerLike;
}

/** How far the keeping is of all that papers are made from: what holds up the library is settled on its own page. */
function keepingOf(job: Keeping, library: Keeping): Keeping {
  if (job !== 'kept') return job;
  return library === 'changed-elsewhere' ? 'not-kept' : library;
}

/** A job as it lies on the desk: its session, its estimate, what is looked at, and what was said of it last. */
export class JobDesk {
  #refusal: ServerRefusal | null = null;
  #said = '';
  #inPassing = false;
  #session: DocumentSession<Job> | null = null;
  #estimating: Estimating | null = null;
  #lit: ReadonlySet<string> = new Set();
  #moving = false;
  #drag = 0;
  /** The scheme shown last, on another day too: it stays the shown one although an edit makes another the cheapest. */
  #shownScheme: string | null = null;
  #route: JobRoute;
  #closed = false;
  readonly #comparing = new Comparing();
  #endLibraryWatch = (): void => {};
  readonly #parts: DeskParts;
  readonly #ways: WayFinder;
  readonly #held: HeldPoint;
  /** What the page shows. */
  #shown: (JobView & PageWords) | null = null;
  readonly #drawing = new WayDrawing();
  readonly #lastSchemes: TextsByJob;
  readonly #changed: () => void;

  constructor(route: JobRoute, parts: DeskParts, changed: () => void) {
    this.#route = route;
    this.#parts = parts;
    this.#changed = changed;
    this.#lastSchemes = parts.lastSchemes ?? lastSchemes();
    this.#shownScheme = this.#lastSchemes.of(route.jobId);
    const clock = parts.clock ?? browserClock;
    this.#ways = new WayFinder(parts.searchWorker ?? newSearchWorker, clock, () => this.#show());
    this.#held = new HeldPoint(parts.movedWorker ?? newMovedWorker, clock, () => this.#takeAndShow());
  }

  /** Null until the job is there. */
  get view(): JobView | null {
    return this.#shown;
  }
  get session(): DocumentSession<Job> | null {
    return this.#session;
  }
  /** Why the job could not be opened; null when it could. */
  get refusal(): ServerRefusal | null {
    return this.#refusal;
  }
  /** What was done last, or why it could not be; empty for nothing. */
  get said(): string {
    return this.#said;
  }

  /** True when nothing hangs on what was said: it need not stay. */
  get isSaidInPassing(): boolean {
    return this.#inPassing;
  }

  /** The job here and the one that somebody else saved, where a person has to decide between them; else null. */
  get changedTwice(): ChangedTwice | null {
    return this.#comparing.of(this.#session);
  }

  /** Fetches the job and works it out. */
  async open(): Promise<void> {
    const { jobId } = this.#route;
    try {
      const [session, { now: library }] = await Promise.all([
        this.#parts.jobs.open(jobId),
        this.#parts.library.open(),
      ]);
      if (this.#closed) return;
      this.#session = session;
      this.#refusal = null;
      this.#estimating = new Estimating(this.#ask(session, library), () => this.#show(), this.#parts.clock);
      this.#parts.jobs.listen(jobId, () => {
        this.#takeAndShow();
        const cameIn = session.takeCameIn();
        if (cameIn !== null) this.say(`Kept together with what was changed elsewhere: ${cameIn}`);
      });
      this.#endLibraryWatch();
      this.#endLibraryWatch = this.#parts.library.listen(() => this.#takeAndShow());
      this.#show();
    } catch (error) {
      this.#refusal =
        error instanceof ServerRefusal ? error : new ServerRefusal(500, { detail: errorWords(error) });
      this.#changed();
    }
  }

  /** Puts the job away; what is unkept of it goes on being tried. */
  close(): void {
    this.#closed = true;
    this.#parts.jobs.listen(this.#route.jobId, null);
    this.#endLibraryWatch();
    this.keep('autosave');
    this.#estimating?.stop();
    this.#held.stop();
    this.#ways.stop();
    this.#session = null;
  }

  /** Looks at another part of the same job. */
  look(route: JobRoute): void {
    const before = this.#route;
    this.#route = route;
    this.#takeAndShow();
    // The server makes the papers, with its own library: the screen is to say the same.
    if (route.step === 'papers' && before.step !== 'papers') void this.#parts.library.refresh();
  }

  light(subjectIds: readonly string[]): void {
    this.#lit = new Set(subjectIds);
    this.#show();
  }

  /** Asks the search for ways. */
  ask(ask: WaysAsk): void {
    this.#ways.do(ask);
  }

  /** Draws a way by hand; a found way that is tried goes off the plan for it. */
  draw(ask: DrawAsk): void {
    if (ask.do === 'begin') this.#ways.do({ do: 'try', scheme: null });
    // What was asked of it before was of another way.
    this.#ways.do({ do: 'no-question' });
    this.#drawing.do(ask);
    this.#show();
  }

  say(words: string): void {
    this.#said = words;
    this.#inPassing = false;
    this.#changed();
  }

  sayInPassing(words: string): void {
    this.#said = words;
    this.#inPassing = true;
    this.#changed();
  }

  keep(how: 'autosave' | 'by-hand'): void {
    if (this.#session?.unkept) void this.#session.keep(how);
  }

  /** Keeps by hand what is there, even where it was kept by itself already, and says what came of it. */
  async keepByHand(): Promise<void> {
    const session = this.#session;
    if (session === null) return;
    if (session.keeping === 'changed-elsewhere') {
      this.say(
        'This job was changed elsewhere: choose above which is to count. Until then nothing is saved.',
      );
      return;
    }
    if (session.keeping === 'gone') {
      this.say('This job was deleted: choose above whether it is restored, or kept as a copy.');
      return;
    }
    await session.pin();
    if (session.keeping === 'kept') this.sayInPassing(`Saved by hand, as state ${stateTag(session.now)}.`);
    else if (session.keeping === 'not-kept') this.say(`Not saved: ${session.trouble}`);
  }

  /**
   * Makes an edit, unless the job could not be read again with it.
   *
   * @param stand how the plan stands on which something moves; null where nothing does.
   */
  edit(edit: JobEdit, stand: PlanStand | null = null): void {
    const session = this.#session;
    if (session === null) return;
    const moving = edit.moving ?? false;
    if (!moving && !this.#isReadableWith(session.now, edit)) return;
    this.#said = '';
    this.#moving = moving;
    // A picture of a circuit beside the plan is drawn from all of the estimate.
    this.#held.hold(moving && this.#route.view === 'plan' ? stand : null);
    const before = session.now;
    session.edit(moving ? edit : { ...edit, change: withTrueNames(before, withoutLoose(edit.change)) });
    // A hand that comes to rest where it was changes nothing, yet the whole estimate has waited for it.
    if (session.now === before) this.#takeAndShow();
  }

  /** Makes an edit after the job as it is was put on the list as a copy; without the copy nothing is changed. */
  async editBeside(edit: JobEdit, copyName: string): Promise<void> {
    const session = this.#session;
    if (session === null) return;
    let copy: Job;
    try {
      copy = await putAside(this.#parts.api, session.now, copyName);
    } catch (error) {
      this.say(`Nothing was changed: the copy could not be put on the list: ${errorWords(error)}`);
      return;
    }
    this.edit(edit);
    this.say(`The job as it was is on the list as “${copy.title}”.`);
  }

  /** A point is dragged, or was let go: one drag is one step back. */
  place({ pointId, place, phase, stand }: PlacedAt): void {
    const session = this.#session;
    if (session === null) return;
    const moving = phase === 'move';
    if (!this.#moving) this.#drag++;
    this.edit(movePoint(session.now, { pointId, place, drag: this.#drag, moving }), stand);
  }

  undo(): void {
    const label = this.#session?.undoLabel;
    if (label === null || label === undefined) return;
    this.#rest();
    this.#said = `Undone: ${label}`;
    this.#inPassing = true;
    this.#session?.undo();
  }

  redo(): void {
    const label = this.#session?.redoLabel;
    if (label === null || label === undefined) return;
    this.#rest();
    this.#said = `Done again: ${label}`;
    this.#inPassing = true;
    this.#session?.redo();
  }

  #rest(): void {
    this.#moving = false;
    this.#held.letGo();
  }

  /**
   * Settles a job that was changed here and elsewhere; whatever is chosen, both states stay to be had.
   *
   * @returns the job to go on with.
   */
  async settle(how: HowSettled): Promise<string> {
    const session = this.#session;
    const { jobId } = this.#route;
    if (session === null) return jobId;
    try {
      const settled = await settleJob(how, { ...this.#parts, session });
      this.say(settled.said);
      return settled.jobId;
    } catch (error) {
      this.say(`That did not get through: ${errorWords(error)}`);
      return jobId;
    }
  }

  /** Puts a job that was deleted back on the list, with what was changed here; what was not seen here stays as a copy. */
  async bringBack(): Promise<void> {
    try {
      await this.#parts.api.restoreJob(this.#route.jobId);
      const session = this.#session;
      if (session === null) return this.open();
      const aside = await putMineBack({ ...this.#parts, session });
      if (aside !== null)
        this.say(`It had been changed elsewhere before: that is on the list as “${aside.title}”.`);
    } catch (error) {
      this.say(`It could not be brought back: ${errorWords(error)}`);
    }
  }

  #isReadableWith(job: Job, { label, change }: JobEdit): boolean {
    const read = readJob(produce(job, (draft) => change(draft)));
    if (read.ok) return true;
    const [fault] = read.faults;
    this.say(`“${label}” was not done: ${fault?.message}. ${fault?.remedy}.`);
    return false;
  }

  #ask({ now: job, revision }: DocumentSession<Job>, library: Library): EstimateAsk {
    const isThere = job.schemes.some(({ id }) => id === this.#route.scheme);
    const schemeId = isThere ? this.#route.scheme : this.#shownScheme;
    return { job, library, date: today(), revision, schemeId };
  }

  #takeAndShow(): void {
    const library = this.#parts.library.session?.now;
    if (this.#session === null || library === undefined) return;
    const ask = this.#ask(this.#session, library);
    if (this.#held.isFollowed) this.#follow(ask);
    else this.#estimating?.take(ask, this.#moving);
    this.#show();
  }

  #follow({ job, library, date }: EstimateAsk): void {
    const schemeId = this.#estimating?.worked.scheme?.id ?? null;
    this.#estimating?.stop();
    const isAsFound = this.#route.step === 'as-found';
    this.#held.follow({ job, library, date, schemeId, isAsFound });
  }

  #show(): void {
    const worked = this.#estimating?.worked;
    const library = this.#parts.library.session;
    if (this.#session === null || library === null || worked === undefined) return;
    const { job, whole, scheme, moving } = worked;
    const { step, storey, on } = this.#route;
    this.#shownScheme = scheme?.id ?? null;
    // The cheapest, shown for want of a choice, is not held on to.
    if (scheme !== null && scheme.id === this.#route.scheme)
      this.#lastSchemes.keep(this.#route.jobId, scheme.id);
    const isFollowed = this.#held.isFollowed;
    const searched = isFollowed ? this.#session.now : job;
    const own = searched.schemes.find(({ id }) => id === scheme?.id) ?? null;
    const isAtWays = step === 'ways' && !this.#route.compare;
    const [{ date }, { revision }] = [whole, this.#session];
    this.#ways.take(
      { job: searched, library: library.now, date, revision, scheme: own },
      isAtWays,
      isFollowed,
    );
    if (movablePoints({ job, step }).size > 0) this.#held.warm();
    this.#drawing.take({ asFound: whole.asFound.worked, scheme: scheme?.worked ?? null }, isAtWays);
    const known = job.storeys.some(({ id }) => id === storey);
    const view: JobView = {
      job,
      library: library.now,
      date,
      revision,
      estimate: whole,
      scheme,
      moving: moving || isFollowed,
      moved: this.#held.channel,
      step,
      storeyId: (known ? storey : job.storeys[0]?.id) ?? '',
      chosen: on,
      lit: this.#lit,
      keeping: keepingOf(this.#session.keeping, library.keeping),
      ways: this.#ways.view,
      drawing: this.#drawing.view,
    };
    const { undoLabel, redoLabel } = this.#session;
    const page = { ...view, said: this.#said, undoLabel, redoLabel };
    if (isFollowed) this.#held.tellSearch(view.ways);
    if (isFollowed && this.#shown !== null && isSamePage(this.#shown, page)) return;
    this.#shown = page;
    this.#changed();
  }
}
