import { describe, expect, it } from 'vitest';
import { stateTag } from '#engine/state-tag.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { JobDesk } from '../../../ui/controllers/job-desk.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { OpenLibrary } from '../../../ui/controllers/open-library.ts';
import type { JobRoute } from '../../../ui/controllers/router.ts';
import type { Settlement } from '../../../ui/controllers/settle-job.ts';
import { removeScheme } from '../../../ui/edits/schemes.ts';
import { setTerm } from '../../../ui/edits/terms.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');
const route: JobRoute = {
  page: 'job',
  jobId: job.id,
  step: 'wanted',
  compare: false,
  scheme: null,
  storey: null,
  on: null,
  view: 'plan',
  circuit: null,
  part: 'bill',
  ask: null,
  a: null,
  b: null,
};

/** A server with one job, and a way to it that can be cut. */
async function beginServer() {
  const { app } = await testApp();
  const line = { cut: false, loseNextSave: false, requests: [] as string[] };
  const api = new ApiClient(async (input, init) => {
    if (line.cut) throw new TypeError('Failed to fetch');
    line.requests.push(`${init?.method} ${input}`);
    const answer = await app.request(String(input), init);
    if (init?.method !== 'PUT' || !line.loseNextSave) return answer;
    line.loseNextSave = false;
    throw new TypeError('Failed to fetch');
  });
  await api.createJob(job);
  return { api, line };
}

/** A window of the product, with the job on its desk. */
async function beginDesk(api: ApiClient) {
  const clock = new TestClock();
  const jobs = new OpenJobs(api, clock.wait);
  const library = new OpenLibrary(api, clock.wait);
  const desk = new JobDesk(route, { api, jobs, library, clock }, () => {});
  await desk.open();
  return { clock, jobs, library, desk };
}

const titled = (title: string): JobEdit => ({
  label: `Call it ${title}`,
  change: (draft) => {
    draft.title = title;
  },
});

const titleOf = async (api: ApiClient, id = job.id): Promise<string> => (await api.readJob(id)).value.title;
const titles = async (api: ApiClient): Promise<string[]> =>
  (await api.listJobs()).map(({ title }) => title).sort();

describe('a job on the desk', () => {
  it('is kept by itself 800 ms after the last edit, once', async () => {
    const { api, line } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    desk.edit(titled('One'));
    await clock.settle(700);
    desk.edit(titled('Two'));
    await clock.settle(799);
    expect(await titleOf(api)).toBe(job.title);
    expect(desk.view?.keeping).toBe('keeping');
    await clock.settle(1);
    expect(await titleOf(api)).toBe('Two');
    expect(desk.view?.keeping).toBe('kept');
    expect(line.requests.filter((request) => request.startsWith('PUT'))).toHaveLength(1);
  });

  it('goes on showing its scheme when an edit makes another the cheapest', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const shown = desk.view?.scheme?.id;
    expect(shown).toBe(desk.view?.estimate.cheapestId);
    desk.edit({
      label: 'Price the shown one up',
      change: (draft) => {
        const scheme = draft.schemes.find(({ id }) => id === shown);
        if (scheme !== undefined) scheme.connections = [];
      },
    });
    await clock.settle(5000);
    expect(desk.view?.estimate.cheapestId).not.toBe(shown);
    expect(desk.view?.scheme?.id).toBe(shown);
    desk.look({ ...route, scheme: 'no-such-scheme' });
    expect(desk.view?.scheme?.id).toBe(shown);
  });

  it('shows another scheme when the shown one is removed', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const shown = desk.view?.scheme?.id ?? '';
    desk.edit(removeScheme({ id: shown, name: 'shown' }));
    await clock.settle(5000);
    expect(desk.view?.scheme?.id).toBe(desk.view?.estimate.cheapestId);
    expect(desk.view?.scheme?.id).not.toBe(shown);
  });

  it('refuses an edit with which it could not be read again, and says why', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    desk.edit({
      label: 'Lose a wall',
      change: (draft) => {
        for (const storey of draft.storeys) storey.walls = [];
      },
    });
    expect(desk.said).toContain('Lose a wall');
    expect(desk.view?.job).toEqual(job);
    await clock.settle(5000);
    expect(desk.session?.undoLabel).toBeNull();
  });

  it('takes a drag back in one step, to the millimetre, and the next drag in another', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const point = job.points.find(({ label }) => label === 'B1');
    const place = point?.place;
    if (point === undefined || place === undefined || !('wall' in place)) throw new Error('no B1 on a wall');
    const drag = (...alongMm: number[]): void => {
      for (const at of alongMm) {
        desk.place({
          pointId: point.id,
          place: { ...place, alongMm: at, heightMm: 1 },
          phase: 'move',
          stand: null,
        });
        clock.draw();
      }
      const last = { ...place, alongMm: alongMm.at(-1) ?? 0, heightMm: 1 };
      desk.place({ pointId: point.id, place: last, phase: 'end', stand: null });
    };
    const now = () => desk.session?.now.points.find(({ id }) => id === point.id)?.place;
    drag(500, 600, 700);
    expect(now()).toEqual({ ...place, alongMm: 700 });
    drag(800, 900);
    expect(desk.session?.undoLabel).toBe('Move B1');
    desk.undo();
    expect(now()).toEqual({ ...place, alongMm: 700 });
    desk.undo();
    expect(now()).toEqual(place);
    expect(desk.session?.undoLabel).toBeNull();
    desk.redo();
    expect(now()).toEqual({ ...place, alongMm: 700 });
  });

  it('is of this moment while it moves, and works all schemes out once let go', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const point = job.points.find(({ label }) => label === 'B1');
    const place = point?.place;
    if (point === undefined || place === undefined || !('wall' in place)) throw new Error('no B1 on a wall');
    const moved = { ...place, alongMm: place.alongMm + 200 };
    desk.place({ pointId: point.id, place: moved, phase: 'move', stand: null });
    clock.draw();
    expect(desk.view?.moving).toBe(true);
    expect(desk.view?.job.points.find(({ id }) => id === point.id)?.place).toEqual(moved);
    clock.pass(10_000);
    expect(desk.view?.moving).toBe(true);
    desk.place({ pointId: point.id, place: moved, phase: 'end', stand: null });
    clock.pass(200);
    expect(desk.view?.moving).toBe(false);
  });

  it('goes on being tried when its page is left while the server is away', async () => {
    const { api, line } = await beginServer();
    const { desk, clock, jobs } = await beginDesk(api);
    line.cut = true;
    desk.edit(titled('Typed in the cellar'));
    desk.close();
    await clock.settle(1000);
    expect(jobs.unkept).toBe(true);
    line.cut = false;
    await clock.settle(60_000);
    expect(jobs.unkept).toBe(false);
    expect(await titleOf(api)).toBe('Typed in the cellar');
  });

  it('still has its steps back when it is left and opened again', async () => {
    const { api } = await beginServer();
    const { desk, clock, jobs, library } = await beginDesk(api);
    desk.edit(titled('One'));
    await clock.settle(1000);
    desk.close();
    const again = new JobDesk(route, { api, jobs, library, clock }, () => {});
    await again.open();
    expect(again.session?.undoLabel).toBe('Call it One');
  });
});

describe('a job changed in two windows', () => {
  async function beginConflict() {
    const { api } = await beginServer();
    const mine = await beginDesk(api);
    const theirs = await beginDesk(api);
    theirs.desk.edit(titled('Theirs'));
    await theirs.clock.settle(1000);
    mine.desk.edit(titled('Mine'));
    await mine.clock.settle(1000);
    expect(mine.desk.view?.keeping).toBe('changed-elsewhere');
    expect(mine.desk.session?.theirs?.revision).toBe(2);
    expect(await titleOf(api)).toBe('Theirs');
    return { api, ...mine };
  }

  it('takes theirs, with mine on the list as a copy', async () => {
    const { api, desk } = await beginConflict();
    expect(await desk.settle('take-theirs')).toBe(job.id);
    expect(desk.view?.job.title).toBe('Theirs');
    expect(desk.view?.keeping).toBe('kept');
    const [first, second] = await titles(api);
    expect(first).toMatch(/^Mine \(changed here/);
    expect(second).toBe('Theirs');
  });

  it('goes on with mine as a copy, and leaves theirs alone', async () => {
    const { api, desk, jobs } = await beginConflict();
    const copyId = await desk.settle('mine-as-copy');
    expect(copyId).not.toBe(job.id);
    expect(await titleOf(api, copyId)).toMatch(/^Mine/);
    expect(await titleOf(api)).toBe('Theirs');
    expect(jobs.unkept).toBe(false);
  });

  it('puts mine over theirs, which goes on the list as a copy first', async () => {
    const { api, desk } = await beginConflict();
    await desk.settle('mine-over-theirs');
    expect(await titleOf(api)).toBe('Mine');
    const [first, second] = await titles(api);
    expect(first).toBe('Mine');
    expect(second).toMatch(/^Theirs \(/);
    expect(desk.view?.keeping).toBe('kept');
    expect(desk.view?.revision).toBe(3);
  });

  it('loses nothing when the server goes away before it is settled', async () => {
    const { api, line } = await beginServer();
    const mine = await beginDesk(api);
    const theirs = await beginDesk(api);
    theirs.desk.edit(titled('Theirs'));
    await theirs.clock.settle(1000);
    mine.desk.edit(titled('Mine'));
    await mine.clock.settle(1000);
    line.cut = true;
    const ways: readonly Settlement[] = ['take-theirs', 'mine-as-copy', 'mine-over-theirs'];
    for (const how of ways) {
      expect(await mine.desk.settle(how)).toBe(job.id);
      expect(mine.desk.view?.job.title).toBe('Mine');
      expect(mine.desk.said).not.toBe('');
      expect(mine.jobs.unkept).toBe(true);
    }
  });
});

describe('the library that a job is priced with', () => {
  it('is the one that the firm’s page of this window edits', async () => {
    const { api } = await beginServer();
    const { desk, clock, library } = await beginDesk(api);
    const before = desk.view?.scheme?.price;
    (await library.open()).edit({
      label: 'Double the labour rate',
      change: ({ firm, norms }) => {
        firm.name = 'Renamed';
        norms.ratePencePerHour *= 2;
      },
    });
    await clock.settle(1000);
    expect(desk.view?.library.firm.name).toBe('Renamed');
    expect(desk.view?.scheme?.price).not.toEqual(before);
  });

  it('is looked at again when the papers are looked at, which are made with the server’s', async () => {
    const { api, line } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const theirs = new OpenLibrary(api);
    (await theirs.open()).edit({
      label: 'Rename',
      change: ({ firm }) => {
        firm.name = 'Renamed';
      },
    });
    await theirs.keep();
    desk.look({ ...route, step: 'kit' });
    await clock.settle(0);
    expect(desk.view?.library.firm.name).not.toBe('Renamed');
    desk.look({ ...route, step: 'papers' });
    await clock.settle(0);
    expect(desk.view?.library.firm.name).toBe('Renamed');
    const asked = line.requests.length;
    desk.look({ ...route, step: 'papers', scheme: 'another' });
    expect(line.requests).toHaveLength(asked);
  });

  it('counts as not kept for the papers while the server has not got it', async () => {
    const { api, line } = await beginServer();
    const { desk, clock, library } = await beginDesk(api);
    const session = await library.open();
    line.cut = true;
    session.edit({
      label: 'Rename',
      change: ({ firm }) => {
        firm.name = 'Renamed';
      },
    });
    await clock.settle(1000);
    expect(desk.session?.keeping).toBe('kept');
    expect(desk.view?.keeping).toBe('not-kept');
  });

  it('is told no desk that was put away', async () => {
    const { api } = await beginServer();
    const { desk, library } = await beginDesk(api);
    desk.close();
    const { view } = desk;
    library.session?.edit({
      label: 'Rename',
      change: ({ firm }) => {
        firm.name = 'Renamed';
      },
    });
    expect(desk.view).toBe(view);
  });
});

describe('an answer that is lost', () => {
  it('raises no false alarm after an edit that puts a key at the end', async () => {
    const { api, line } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    const terms = ['minimumPence', 'validDays', 'travelMin', 'markupPercent'] as const;
    for (const term of terms) desk.edit(setTerm(term, null));
    for (const term of terms) desk.edit(setTerm(term, 7));
    line.loseNextSave = true;
    await clock.settle(1000);
    expect(desk.view?.keeping).toBe('not-kept');
    await clock.settle(5000);
    expect(desk.view?.keeping).toBe('kept');
    expect((await api.readJob(job.id)).value.terms).toMatchObject({ minimumPence: 7, travelMin: 7 });
  });
});

describe('keeping by hand', () => {
  const puts = (requests: readonly string[]): string[] =>
    requests.filter((request) => request.startsWith('PUT')).map((request) => request.replace(/^.*how=/, ''));

  it('pins what was kept by itself, and tells the state by the name that papers carry', async () => {
    const { api, line } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    desk.edit(titled('One'));
    await clock.settle(1000);
    await desk.keepByHand();
    await desk.keepByHand();
    expect(puts(line.requests)).toEqual(['autosave', 'by-hand']);
    expect(desk.view?.revision).toBe(3);
    expect(desk.said).toContain(stateTag({ ...job, title: 'One' }));
    expect(desk.isSaidInPassing).toBe(true);
  });

  it('points to the notice while nobody has decided between two states', async () => {
    const { api, line } = await beginServer();
    const mine = await beginDesk(api);
    await api.saveJob({ ...job, title: 'Theirs' }, (await api.readJob(job.id)).etag, 'by-hand');
    mine.desk.edit(titled('Mine'));
    await mine.clock.settle(1000);
    const asked = line.requests.length;
    await mine.desk.keepByHand();
    expect(mine.desk.said).toMatch(/changed elsewhere/);
    expect(line.requests).toHaveLength(asked);
  });

  it('says so when it did not get through', async () => {
    const { api, line } = await beginServer();
    const { desk } = await beginDesk(api);
    desk.edit(titled('One'));
    line.cut = true;
    await desk.keepByHand();
    expect(desk.said).toMatch(/^Not saved/);
  });
});

describe('a job that is deleted elsewhere', () => {
  it('is brought back with what was saved before it went as a copy, where that was not seen here', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    await api.saveJob({ ...job, title: 'Theirs' }, (await api.readJob(job.id)).etag, 'by-hand');
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    desk.edit(titled('Mine'));
    await clock.settle(1000);
    await desk.bringBack();
    expect(desk.view?.keeping).toBe('kept');
    const [first, second, ...more] = await titles(api);
    expect(first).toBe('Mine');
    expect(second).toMatch(/^Theirs \(/);
    expect(more).toEqual([]);
  });

  it('can be brought back with what was changed here', async () => {
    const { api } = await beginServer();
    const { desk, clock } = await beginDesk(api);
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    desk.edit(titled('Mine'));
    await clock.settle(1000);
    expect(desk.view?.keeping).toBe('gone');
    expect(desk.session?.troubleCode).toBe('no-such-job');
    await desk.bringBack();
    expect(await titles(api)).toEqual(['Mine']);
    expect(desk.view?.keeping).toBe('kept');
  });

  it('is no longer called saved once it is looked at, and goes on when it is put back', async () => {
    const { api, line } = await beginServer();
    const { desk, clock, jobs } = await beginDesk(api);
    const look = () => jobs.lookAgain();
    await look();
    expect(desk.view?.keeping).toBe('kept');
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    line.cut = true;
    await look();
    expect(desk.view?.keeping).toBe('kept');
    line.cut = false;
    await look();
    expect(desk.view?.keeping).toBe('gone');
    desk.edit(titled('Mine'));
    await clock.settle(1000);
    expect(desk.view?.keeping).toBe('gone');
    await api.restoreJob(job.id);
    await look();
    expect(desk.view?.keeping).toBe('keeping');
    await clock.settle(1000);
    expect(desk.view?.keeping).toBe('kept');
    expect(await titleOf(api)).toBe('Mine');
  });

  it('can be kept as a copy, which is gone on with', async () => {
    const { api } = await beginServer();
    const { desk, jobs } = await beginDesk(api);
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    await jobs.lookAgain();
    const id = await desk.settle('mine-as-copy');
    expect(id).not.toBe(job.id);
    expect(await titleOf(api, id)).toContain('copy of a deleted job');
  });

  it('can be brought back when it is opened by its address', async () => {
    const { api } = await beginServer();
    await api.removeJob(job.id, (await api.readJob(job.id)).etag);
    const { desk } = await beginDesk(api);
    expect(desk.view).toBeNull();
    expect(desk.refusal?.code).toBe('no-such-job');
    await desk.bringBack();
    expect(desk.view?.job.title).toBe(job.title);
    expect(desk.refusal).toBeNull();
  });
});
