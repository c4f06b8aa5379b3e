import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { WayFinder, type WaysHouse } from '../../../ui/controllers/way-finder.ts';
import type { WorkerLike } from '../../../ui/controllers/worker-lane.ts';
import { plainSchemeName } from '../../../ui/edits/scheme-names.ts';
import type { SearchAsk, Turn } from '../../../ui/found-ways/search-asks.ts';
import { foundOf } from '../../../ui/found-ways/searcher.ts';
import { foundAmong } from '../found-ways/made-searcher.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('saltglass-row');
const library = demoLibrary();
const found = foundOf(foundAmong(demoEstimate('saltglass-row')));
const house = (of: Job = job, schemeId = 'spurs-rcbo'): WaysHouse => ({
  job: of,
  library,
  date: '2026-11-25',
  revision: 1,
  scheme: of.schemes.find(({ id }) => id === schemeId) ?? null,
});

function finder() {
  const asked: SearchAsk[] = [];
  const workers: WorkerLike[] = [];
  const clock = new TestClock();
  const make = (): WorkerLike => {
    const worker: WorkerLike = {
      onmessage: null,
      onerror: null,
      terminate: () => {},
      postMessage: (message) => asked.push((message as Turn<SearchAsk>).ask),
    };
    workers.push(worker);
    return worker;
  };
  const one = new WayFinder(make, clock, () => {});
  const answer = (): void =>
    workers.at(-1)?.onmessage?.({
      data: { turn: asked.length, is: 'answer', answer: found },
    } as MessageEvent);
  return { asked, clock, one, answer };
}

describe('the finder of ways', () => {
  it('searches nothing before it is asked', () => {
    const { asked, clock, one } = finder();
    one.take(house(), true);
    one.take(house({ ...job, points: job.points.slice(1) }), true);
    clock.pass(5000);
    expect(asked).toEqual([]);
    expect(one.view.search.status).toBe('idle');
  });

  it('searches again at once where it is looked at, following a hand that moves something', () => {
    const { asked, one, answer } = finder();
    one.take(house(), true);
    one.do({ do: 'find' });
    answer();
    for (const count of [1, 2, 3]) one.take(house({ ...job, points: job.points.slice(count) }), true);
    expect(one.view.isOfNow).toBe(false);
    expect(asked.map(({ job: { points } }) => job.points.length - points.length)).toEqual([0, 1]);
    answer();
    expect(asked.map(({ job: { points } }) => job.points.length - points.length)).toEqual([0, 1, 3]);
    expect(one.view.isOfNow).toBe(false);
    answer();
    expect(one.view.isOfNow).toBe(true);
  });

  it('searches for the cheapest alone while a point is under the hand, and for all once it rests', () => {
    const { asked, one, answer } = finder();
    one.take(house(), true);
    one.do({ do: 'find' });
    answer();
    const moved = house({ ...job, points: job.points.slice(1) });
    one.take(moved, true, true);
    expect(asked.map(({ firstOnly }) => firstOnly)).toEqual([false, true]);
    one.take(moved, true, false);
    expect(asked).toHaveLength(2);
    one.take(moved, true, false);
    answer();
    expect(asked.map(({ firstOnly }) => firstOnly)).toEqual([false, true, false]);
    expect(one.view.isOfNow).toBe(false);
    answer();
    expect(one.view.isOfNow).toBe(true);
  });

  it('searches again elsewhere once the hand rests, and not for a scheme that is kept', () => {
    const { asked, clock, one, answer } = finder();
    one.take(house(), true);
    one.do({ do: 'find' });
    answer();
    expect(one.view).toMatchObject({ isOfNow: true, search: { status: 'done' } });
    one.take(house({ ...job, schemes: job.schemes.slice(0, 2), title: 'Another' }), true);
    clock.pass(5000);
    expect(asked).toHaveLength(1);
    for (const count of [1, 2, 3]) {
      one.take(house({ ...job, points: job.points.slice(count) }), false);
      clock.pass(100);
      expect(one.view.isOfNow).toBe(false);
    }
    clock.pass(400);
    expect(asked).toHaveLength(2);
    expect(asked[1]?.job.points).toHaveLength(job.points.length - 3);
  });

  it('searches again when a connection is locked, with it', () => {
    const { asked, clock, one, answer } = finder();
    one.take(house(), true);
    one.do({ do: 'find' });
    answer();
    const schemes = job.schemes.map((scheme) =>
      scheme.id === 'spurs-rcbo' ? { ...scheme, locks: [scheme.connections[0]?.id ?? ''] } : scheme,
    );
    one.take(house({ ...job, schemes }), true);
    clock.pass(500);
    expect(asked[1]?.locked).toEqual([job.schemes[0]?.connections[0]]);
    expect(one.view.locked).toHaveLength(1);
  });

  it('asks why a point is not joined otherwise without what holds that point, and with all else that is held', () => {
    const { asked, one } = finder();
    const [spurs] = job.schemes;
    if (spurs === undefined) throw new Error('one is wanted');
    const locked = { ...spurs, locks: spurs.connections.map(({ id }) => id) };
    one.take(house({ ...job, schemes: [locked] }), true);
    const ask: Connection = { id: 'asked', kind: 'spur', from: { point: 'r2-living1' }, to: 'w1-living1' };
    one.do({ do: 'why-not', connection: ask });
    expect(asked.at(-1)?.locked.map(({ id }) => id)).toEqual(['c1-w2-spur', 'c1-w3-spur', 'c1-w4-fuse']);
    expect(one.view.locked).toHaveLength(4);
  });

  it('works a touched one out as the engine would have it in the job', () => {
    const { one } = finder();
    one.take(house(), true);
    const scheme = found.candidates[0]?.scheme;
    if (scheme === undefined) throw new Error('one is wanted');
    one.do({ do: 'try', scheme });
    expect(one.view.tried?.id).toBe(scheme.id);
    expect(one.view.tried?.totals).toEqual(found.candidates[0]?.totals);
    // It is called by what it does, as it will be once it is kept.
    expect(one.view.tried?.name).toBe(plainSchemeName(scheme));
    one.take(house(), false);
    expect(one.view.tried).toBeNull();
  });

  it('takes a tried one off the plan when the house changes', () => {
    const { one } = finder();
    one.take(house(), true);
    one.do({ do: 'try', scheme: found.candidates[0]?.scheme ?? null });
    one.take(house({ ...job, schemes: [] }), true);
    expect(one.view.tried).not.toBeNull();
    one.take(house({ ...job, readings: [], points: [...job.points].reverse() }), true);
    expect(one.view.tried).toBeNull();
  });
});
