import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { testApp } from '#tests/http/test-app.ts';
import { ApiClient } from '../../../ui/controllers/api-client.ts';
import { mergeOf, saveDecided } from '../../../ui/controllers/merged-save.ts';
import { OpenJobs } from '../../../ui/controllers/open-jobs.ts';
import { setTerm } from '../../../ui/edits/terms.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import type { Side } from '../../../ui/merging/three-states.ts';
import { TestClock } from './test-clock.ts';

const job = demoJob('fernlow-close');

/** Two windows with one job open, and what the server has of it. */
async function twoWindows() {
  const { app } = await testApp();
  const api = new ApiClient(async (input, init) => app.request(String(input), init));
  await api.createJob(job);
  const open = async () => {
    const clock = new TestClock();
    const session = await new OpenJobs(api, clock.wait).open(job.id);
    return {
      session,
      save: async (...edits: readonly JobEdit[]) => {
        for (const edit of edits) session.edit(edit);
        await session.keep('autosave');
      },
    };
  };
  const terms = async () => (await api.readJob(job.id)).value.terms;
  return { mine: await open(), theirs: await open(), terms };
}

const allAs = (session: Parameters<typeof mergeOf>[0], side: Side): ReadonlyMap<string, Side> =>
  new Map(mergeOf(session)?.clashes.map(({ key }) => [key, side]));

describe('a stale save', () => {
  it('is merged and saved without a question where nothing clashes, and told once', async () => {
    const { mine, theirs, terms } = await twoWindows();
    await theirs.save(setTerm('travelMin', 75));
    await mine.save(setTerm('minimumPence', 222));
    expect(mine.session.keeping).toBe('kept');
    expect(await terms()).toMatchObject({ travelMin: 75, minimumPence: 222 });
    expect(mine.session.revision).toBe(3);
    expect([mine.session.takeCameIn(), mine.session.takeCameIn()]).toEqual(['travel', null]);
  });

  it('leaves steps back that take back what was done here, also what was saved before, and nothing of theirs', async () => {
    const { mine, theirs, terms } = await twoWindows();
    await mine.save(setTerm('validDays', 5));
    const other = theirs.session;
    // The other window is opened on that state.
    other.take(await other.readTheirs());
    await theirs.save(setTerm('travelMin', 75));
    await mine.save(setTerm('minimumPence', 111), setTerm('minimumPence', 222));
    for (const minimumPence of [111, job.terms.minimumPence]) {
      mine.session.undo();
      expect(mine.session.now.terms.minimumPence).toBe(minimumPence);
      expect(mine.session.now.terms).toMatchObject({ travelMin: 75, validDays: 5 });
    }
    mine.session.undo();
    expect(mine.session.now.terms).toEqual({ ...job.terms, travelMin: 75 });
    expect(mine.session.undoLabel).toBeNull();
    for (const _ of [1, 2, 3]) mine.session.redo();
    await mine.session.keep('autosave');
    expect(await terms()).toMatchObject({ minimumPence: 222, travelMin: 75, validDays: 5 });
  });

  it('is not saved where something clashes, before every row is decided', async () => {
    const { mine, theirs, terms } = await twoWindows();
    await theirs.save(setTerm('travelMin', 75), setTerm('minimumPence', 111));
    await mine.save(setTerm('travelMin', 33), setTerm('minimumPence', 222), setTerm('validDays', 3));
    expect(mine.session.keeping).toBe('changed-elsewhere');
    const [[key] = ['']] = allAs(mine.session, 'mine');
    expect(await saveDecided(mine.session, new Map([[key, 'mine']]))).toContain('Nothing was saved');
    expect(await terms()).toMatchObject({ travelMin: 75, minimumPence: 111 });
    expect(await saveDecided(mine.session, allAs(mine.session, 'mine'))).toBe('Saved as you decided.');
    expect(await terms()).toMatchObject({ travelMin: 33, minimumPence: 222, validDays: 3 });
    mine.session.undo();
    mine.session.undo();
    expect(mine.session.now.terms).toMatchObject({ travelMin: 33, minimumPence: 111 });
  });

  it('is decided anew where they went on meanwhile', async () => {
    const { mine, theirs, terms } = await twoWindows();
    await theirs.save(setTerm('travelMin', 75));
    await mine.save(setTerm('travelMin', 33));
    await theirs.save(setTerm('travelMin', 80));
    expect(await saveDecided(mine.session, allAs(mine.session, 'mine'))).toContain('Nothing was saved');
    expect(await terms()).toMatchObject({ travelMin: 80 });
    await saveDecided(mine.session, allAs(mine.session, 'theirs'));
    expect(mine.session.keeping).toBe('kept');
    expect(mine.session.undoLabel).toBeNull();
  });
});
