import { afterEach, describe, expect, it, vi } from 'vitest';
import { screenPlan } from '#drawing/plan/screen-plan.ts';
import { estimate } from '#engine/estimate.ts';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { Estimating } from '../../../ui/controllers/estimating.ts';
import { JobDesk } from '../../../ui/controllers/job-desk.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { OpenLibrary } from '../../../ui/controllers/open-library.ts';
import type { JobRoute } from '../../../ui/controllers/router.ts';
import { thinPosts } from '../../../ui/controllers/thin-posts.ts';
import type { WorkerLike } from '../../../ui/controllers/worker-lane.ts';
import type { DataChange } from '../../../ui/moved/data-changes.ts';
import { MovedTurns } from '../../../ui/moved/moved-turns.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');
const stand = { storeyId: job.storeys[0]?.id ?? '', scale: 80, withWanted: true, figuresMm: 2.5 };
const route: JobRoute = {
  ...{ page: 'job', jobId: job.id, step: 'wanted', compare: false, scheme: null, storey: null, on: null },
  ...{ view: 'plan', circuit: null, part: 'bill', ask: null, a: null, b: null },
};

/** A thread as the browser's, but that it works when it is told to. */
class Thread {
  readonly asked: DataChange[] = [];
  readonly #turns = new MovedTurns();
  readonly own: WorkerLike = {
    postMessage: (message) => this.asked.push(structuredClone(message) as DataChange),
    terminate: () => {},
    onmessage: null,
    onerror: null,
  };

  work(): void {
    for (const ask of this.asked.splice(0)) {
      const data = structuredClone(this.#turns.take(ask));
      this.own.onmessage?.({ data } as MessageEvent);
    }
  }

  die(): void {
    this.own.onerror?.({ message: 'out of memory' } as ErrorEvent);
  }
}

async function beginDesk(make?: () => WorkerLike) {
  const { app } = await testApp();
  const api = new ApiClient(async (input, init) => app.request(String(input), init));
  await api.createJob(job);
  const clock = new TestClock();
  const threads: Thread[] = [];
  const told = { times: 0 };
  const parts = {
    ...{ api, jobs: new OpenJobs(api, clock.wait), library: new OpenLibrary(api, clock.wait), clock },
    movedWorker:
      make ??
      (() => {
        const thread = new Thread();
        threads.push(thread);
        return thinPosts(thread.own);
      }),
  };
  const desk = new JobDesk(route, parts, () => {
    told.times += 1;
  });
  await desk.open();
  const place = (alongMm: number): Place => ({ ...placeOf(job), alongMm });
  const move = (alongMm: number): void => {
    desk.place({ pointId, place: place(alongMm), phase: 'move', stand });
    clock.draw();
  };
  const letGo = (alongMm: number): void => {
    desk.place({ pointId, place: place(alongMm), phase: 'end', stand: null });
    clock.pass(1000);
  };
  return { desk, clock, threads, told, move, letGo };
}

const pointId = 'b1-kitchen';
function placeOf({ points }: Job): Extract<Place, { wall: string }> {
  const place = points.find(({ id }) => id === pointId)?.place;
  if (place === undefined || !('wall' in place)) throw new Error('B1 is on no wall');
  return place;
}

/** What the engine says of a desk's job at once. */
function wholeOf({ view, session }: JobDesk) {
  if (view === null || session === null) throw new Error('nothing is on the desk');
  const { date, library } = view;
  return estimate(session.now, library, { date, revision: session.revision });
}

describe('a point under the hand', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('has nothing worked out on the page, and the page not drawn anew but once, as long as it moves', async () => {
    const { desk, clock, threads, told, move, letGo } = await beginDesk();
    const [before, opened] = [desk.view, told.times];
    const taken = vi.spyOn(Estimating.prototype, 'take');
    let channelTold = 0;
    desk.view?.moved.listen(() => {
      channelTold += 1;
    });
    for (let i = 1; i <= 20; i += 1) {
      move(1950 + 10 * i);
      threads[0]?.work();
    }
    expect(taken).not.toHaveBeenCalled();
    expect(clock.frames).toBe(0);
    expect(desk.view?.estimate).toBe(before?.estimate);
    expect(told.times).toBe(opened + 1);
    expect(channelTold).toBeGreaterThanOrEqual(20);
    expect(threads).toHaveLength(1);
    expect(desk.view?.moving).toBe(true);
    letGo(2150);
    expect(taken).toHaveBeenCalled();
  });

  it('is seen at the price, with the checks and in the plan that the engine has for that place', async () => {
    const { desk, threads, move } = await beginDesk();
    for (const alongMm of [2000, 2300, 2250]) {
      move(alongMm);
      threads[0]?.work();
      const whole = wholeOf(desk);
      const scheme = whole.schemes.find(({ id }) => id === desk.view?.scheme?.id);
      const sight = desk.view?.moved.now?.sight;
      expect(sight?.priced?.totals).toEqual(scheme?.totals);
      expect(sight?.priced?.range).toEqual(scheme?.range);
      expect(sight?.findings.map(({ rule, message }) => [rule, message])).toEqual(
        scheme?.findings.map(({ rule, message }) => [rule, message]),
      );
      if (scheme === undefined) throw new Error('a scheme is shown');
      const { scene, spots } = screenPlan({
        worked: scheme.worked,
        findings: sight?.findings ?? [],
        ...stand,
      });
      expect(sight?.plan.scene).toEqual(scene);
      expect(new Map(sight?.plan.spots)).toEqual(spots);
    }
  });

  it('has the newest place worked out next, and what did not change given as the same objects', async () => {
    const { desk, threads, move } = await beginDesk();
    for (const alongMm of [2000, 2100, 2200, 2300]) move(alongMm);
    expect(threads[0]?.asked).toHaveLength(1);
    threads[0]?.work();
    const first = desk.view?.moved.now?.sight;
    expect(threads[0]?.asked).toHaveLength(1);
    expect(JSON.stringify(threads[0]?.asked).length).toBeLessThan(300);
    threads[0]?.work();
    const second = desk.view?.moved.now?.sight;
    const scheme = wholeOf(desk).schemes.find(({ id }) => id === desk.view?.scheme?.id);
    expect(second?.priced?.totals).toEqual(scheme?.totals);
    const layer = (sight: typeof first, name: string) =>
      sight?.plan.scene.layers.find((one) => one.name === name)?.shapes;
    expect(layer(second, 'walls')).toBe(layer(first, 'walls'));
    expect(layer(second, 'points')).not.toBe(layer(first, 'points'));
  });

  it('comes to rest to the penny as without another thread, in one step back', async () => {
    const { desk, threads, move, letGo } = await beginDesk();
    for (const alongMm of [2000, 2100, 2250]) move(alongMm);
    threads[0]?.work();
    letGo(2250);
    expect(desk.view?.moved.now).toBeNull();
    expect(desk.view?.moving).toBe(false);
    expect(placeOf(desk.view?.job ?? job).alongMm).toBe(2250);
    expect(desk.view?.estimate).toEqual(wholeOf(desk));
    // What the thread still says of the way there is told to nobody.
    threads[0]?.work();
    expect(desk.view?.moved.now).toBeNull();
    move(2400);
    threads[0]?.work();
    expect(desk.view?.moved.now?.sight).not.toBeNull();
    letGo(2400);
    desk.undo();
    expect(placeOf(desk.session?.now ?? job).alongMm).toBe(2250);
    desk.undo();
    expect(desk.session?.now).toEqual(job);
    expect(desk.session?.undoLabel).toBeNull();
  });

  it('rests where it was taken from as if nothing had been', async () => {
    const { desk, threads, move, letGo } = await beginDesk();
    const before = desk.view?.estimate.schemes.map(({ totals }) => totals);
    move(2000);
    move(placeOf(job).alongMm);
    threads[0]?.work();
    letGo(placeOf(job).alongMm);
    expect(desk.view?.moving).toBe(false);
    expect(desk.view?.moved.now).toBeNull();
    expect(desk.view?.estimate.schemes.map(({ totals }) => totals)).toEqual(before);
  });

  it('is followed by the page itself when the thread dies, and by another thread the next time', async () => {
    const { desk, clock, threads, move, letGo } = await beginDesk();
    move(2000);
    threads[0]?.work();
    move(2100);
    threads[0]?.die();
    expect(desk.view?.moved.now).toBeNull();
    clock.draw();
    expect(placeOf(desk.view?.job ?? job).alongMm).toBe(2100);
    expect(desk.view?.moving).toBe(true);
    move(2200);
    expect(placeOf(desk.view?.job ?? job).alongMm).toBe(2200);
    letGo(2200);
    expect(desk.view?.estimate).toEqual(wholeOf(desk));
    move(2300);
    threads[1]?.work();
    expect(desk.view?.moved.now?.sight?.priced).not.toBeNull();
    letGo(2300);
    expect(desk.view?.estimate).toEqual(wholeOf(desk));
  });

  it('is followed by the page itself where no thread can be begun', async () => {
    const { desk, clock, move, letGo } = await beginDesk(() => {
      throw new Error('no workers here');
    });
    move(2000);
    clock.draw();
    expect(placeOf(desk.view?.job ?? job).alongMm).toBe(2000);
    letGo(2050);
    expect(desk.view?.estimate).toEqual(wholeOf(desk));
  });
});
