import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { JobDesk } from '../../../ui/controllers/job-desk.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { OpenLibrary } from '../../../ui/controllers/open-library.ts';
import { type JobRoute, routeOf } from '../../../ui/controllers/router.ts';
import { lastSchemes, type TextStore } from '../../../ui/controllers/texts-by-job.ts';
import { removeScheme } from '../../../ui/edits/schemes.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');

function store(): TextStore {
  const texts = new Map<string, string>();
  return { getItem: (key) => texts.get(key) ?? null, setItem: (key, text) => void texts.set(key, text) };
}

function at(query: string): JobRoute {
  const route = routeOf(new URL(`http://localhost/jobs/${job.id}/papers${query}`));
  if (route.page !== 'job') throw new Error('no job');
  return route;
}

/** A device that the job is opened on, as often as wanted, each time as if the page was loaded anew. */
async function device() {
  const { app } = await testApp();
  const api = new ApiClient(async (input, init) => app.request(String(input), init));
  await api.createJob(job);
  const forgetful = lastSchemes(store);
  const kept = store();
  const remembered = lastSchemes(() => kept);
  const open = async (query: string, schemes = remembered) => {
    const clock = new TestClock();
    const parts = { api, jobs: new OpenJobs(api, clock.wait), library: new OpenLibrary(api, clock.wait) };
    const desk = new JobDesk(at(query), { ...parts, clock, lastSchemes: schemes }, () => {});
    await desk.open();
    return { desk, clock, shown: desk.view?.scheme?.id, cheapest: desk.view?.estimate.cheapestId };
  };
  return { open, forgetful };
}

const otherThan = (id: string | null | undefined): string =>
  job.schemes.find((scheme) => scheme.id !== id)?.id ?? '';

describe('the scheme that a job is opened with', () => {
  it('is the one that was chosen last on the device; the address still comes first', async () => {
    const { open } = await device();
    const first = await open('');
    expect(first.shown).toBe(first.cheapest);
    const chosen = otherThan(first.cheapest);
    first.desk.look(at(`?scheme=${chosen}`));
    first.desk.close();
    expect((await open('')).shown).toBe(chosen);
    expect((await open(`?scheme=${first.cheapest}`)).shown).toBe(first.cheapest);
  });

  it('is the cheapest where none was chosen, or the device keeps nothing', async () => {
    const { open, forgetful } = await device();
    const { desk, cheapest } = await open('', forgetful);
    desk.look(at(`?scheme=${otherThan(cheapest)}`));
    expect((await open('', forgetful)).shown).toBe(cheapest);
    expect((await open('')).shown).toBe(cheapest);
    const refuses = lastSchemes(() => {
      throw new Error('no store');
    });
    expect((await open('', refuses)).shown).toBe(cheapest);
  });

  it('is the cheapest where the one that was chosen is gone', async () => {
    const { open } = await device();
    const { desk, clock, cheapest } = await open('');
    const chosen = otherThan(cheapest);
    desk.look(at(`?scheme=${chosen}`));
    desk.edit(removeScheme({ id: chosen, name: 'chosen' }));
    await clock.settle(5000);
    expect((await open('')).shown).toBe(cheapest);
  });
});
