import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tagOf } from '../../api/db/tag-of.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

const minute = 60_000;

describe('the jobs of a store', () => {
  it('gives a text back exactly as it was sent', async () => {
    const { jobs } = store.stores;
    const text = JSON.stringify(
      { title: 'Ω ½ naïve 日本 🔌 \u2028', lines: 'é½日🔌\t\r\n '.repeat(130_000) },
      null,
      1,
    );
    expect(await jobs.create(heading('exact'), text)).toMatchObject({ outcome: 'created', revision: 1 });
    await jobs.save(heading('exact'), ` ${text}\n`, 1, 'by-hand');
    expect((await jobs.read('exact'))?.text === ` ${text}\n`).toBe(true);
    expect((await jobs.readRevision('exact', 1))?.text === text).toBe(true);
    const bytes = Buffer.byteLength(text);
    expect(bytes).toBeGreaterThan(2_000_000);
    expect((await jobs.revisions('exact'))?.map((one) => one.bytes)).toEqual([bytes + 2, bytes]);
  });

  it('lists the newest save first, and what is said of each', async () => {
    const { jobs } = await store.firm('list');
    await jobs.create(heading('b', 'Older'), '1');
    store.clock.pass(minute);
    await jobs.create(heading('a', 'Newer'), '2');
    const list = await jobs.list();
    expect(list.map(({ id, title, revision, wantedPoints }) => [id, title, revision, wantedPoints])).toEqual([
      ['a', 'Newer', 1, 1],
      ['b', 'Older', 1, 1],
    ]);
  });

  it('refuses an id that is taken and leaves what is there', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('taken'), 'first');
    expect(await jobs.create(heading('taken'), 'second')).toEqual({ outcome: 'id-taken' });
    expect((await jobs.read('taken'))?.text).toBe('first');
  });

  it('says when and how each revision was saved', async () => {
    const { jobs } = store.stores;
    const created = await jobs.create(heading('when'), '1');
    store.clock.pass(minute);
    const saved = await jobs.save(heading('when', 'New title'), '22', 1, 'autosave');
    const at = store.clock.now();
    expect(saved).toEqual({ outcome: 'saved', revision: 2, tag: tagOf('22'), savedAt: at.toISOString() });
    expect(created).toMatchObject({ savedAt: new Date(at.getTime() - minute).toISOString() });
    expect(await jobs.revisions('when')).toEqual([
      { revision: 2, savedAt: at.toISOString(), how: 'autosave', keptFor: null, bytes: 2 },
      { revision: 1, savedAt: expect.any(String), how: 'by-hand', keptFor: null, bytes: 1 },
    ]);
    expect((await jobs.list()).find(({ id }) => id === 'when')).toEqual({
      id: 'when',
      reference: 'R-1',
      title: 'New title',
      customer: 'C',
      revision: 2,
      tag: tagOf('22'),
      savedAt: at.toISOString(),
      removedAt: null,
      wantedPoints: 1,
      schemes: 2,
    });
  });

  it('refuses a stale save, says what is there now, and changes nothing', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('stale'), 'one');
    await jobs.save(heading('stale'), 'two', 1, 'by-hand');
    expect(await jobs.save(heading('stale', 'Other'), 'three', 1, 'by-hand')).toMatchObject({
      outcome: 'stale',
      revision: 2,
    });
    expect((await jobs.read('stale'))?.text).toBe('two');
    expect((await jobs.revisions('stale'))?.map(({ revision }) => revision)).toEqual([2, 1]);
    expect((await jobs.list()).find(({ id }) => id === 'stale')?.title).toBe('A job');
  });

  it('says that there is no such job', async () => {
    const { jobs } = store.stores;
    expect(await jobs.read('none')).toBeNull();
    expect(await jobs.revisions('none')).toBeNull();
    expect(await jobs.save(heading('none'), 'x', 1, 'by-hand')).toEqual({ outcome: 'no-such-job' });
    expect(await jobs.remove('none', 1)).toEqual({ outcome: 'no-such-job' });
    expect(await jobs.restore('none')).toEqual({ outcome: 'no-such-job' });
    expect(await jobs.keep('none', 1, 'named')).toBe(false);
  });

  it('takes a job off the list and brings it back as it was', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('gone'), 'kept text');
    expect(await jobs.remove('gone', 9)).toMatchObject({ outcome: 'stale', revision: 1 });
    expect(await jobs.remove('gone', 1)).toMatchObject({ outcome: 'saved' });
    expect(await jobs.read('gone')).toBeNull();
    expect((await jobs.list()).some(({ id }) => id === 'gone')).toBe(false);
    expect(await jobs.save(heading('gone'), 'x', 1, 'by-hand')).toEqual({ outcome: 'no-such-job' });
    expect(await jobs.restore('gone')).toMatchObject({ outcome: 'saved', revision: 1 });
    expect((await jobs.read('gone'))?.text).toBe('kept text');
  });

  it('lists the removed jobs on their own, last removed first', async () => {
    const { jobs } = await store.firm('removed');
    for (const id of ['a', 'b', 'c']) await jobs.create(heading(id), id);
    await jobs.remove('b', 1);
    store.clock.pass(minute);
    await jobs.remove('a', 1);
    const at = store.clock.now();
    const removed = await jobs.list({ removed: true });
    expect(removed.map(({ id, removedAt }) => [id, removedAt])).toEqual([
      ['a', at.toISOString()],
      ['b', new Date(at.getTime() - minute).toISOString()],
    ]);
    expect((await jobs.list()).map(({ id }) => id)).toEqual(['c']);
    await jobs.restore('b');
    expect((await jobs.list({ removed: true })).map(({ id }) => id)).toEqual(['a']);
    expect((await jobs.list({ removed: false })).map(({ id }) => id)).toEqual(['b', 'c']);
  });

  it('counts on when a removed id is used again, and keeps what was', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('again'), 'old');
    await jobs.remove('again', 1);
    expect(await jobs.create(heading('again'), 'new')).toMatchObject({ outcome: 'created', revision: 2 });
    expect((await jobs.read('again'))?.text).toBe('new');
    expect((await jobs.readRevision('again', 1))?.text).toBe('old');
  });

  it('coalesces the autosaves of one hand, and keeps the last and the one before', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('auto'), '1');
    for (let base = 1; base <= 6; base++) {
      store.clock.pass(minute);
      await jobs.save(heading('auto'), String(base + 1), base, 'autosave');
    }
    expect((await jobs.revisions('auto'))?.map(({ revision }) => revision)).toEqual([7, 6, 1]);
  });

  it('begins a new chain after ten minutes, so that an afternoon leaves its steps', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('long'), '1');
    for (let base = 1; base <= 24; base++) {
      store.clock.pass(minute);
      await jobs.save(heading('long'), String(base + 1), base, 'autosave');
    }
    expect((await jobs.revisions('long'))?.map(({ revision }) => revision)).toEqual([25, 24, 21, 11, 1]);
  });

  it('never lets go of a revision that was handed out, quoted or named', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('held'), '1');
    store.clock.pass(1000);
    await jobs.save(heading('held'), '2', 1, 'autosave');
    await jobs.read('held');
    store.clock.pass(1000);
    await jobs.save(heading('held'), '3', 2, 'autosave');
    await jobs.keep('held', 3, 'quoted');
    store.clock.pass(1000);
    await jobs.save(heading('held'), '4', 3, 'autosave');
    store.clock.pass(1000);
    await jobs.save(heading('held'), '5', 4, 'autosave');
    store.clock.pass(1000);
    await jobs.save(heading('held'), '6', 5, 'autosave');
    expect((await jobs.revisions('held'))?.map(({ revision }) => revision)).toEqual([6, 5, 3, 2, 1]);
    expect((await jobs.revisions('held'))?.find(({ revision }) => revision === 3)?.keptFor).toBe('quoted');
  });

  it('keeps what was named and what was quoted; what was quoted stays so when it is named', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('kept'), '1');
    expect(await jobs.keep('kept', 1, 'named')).toBe(true);
    expect((await jobs.revisions('kept'))?.[0]?.keptFor).toBe('named');
    expect(await jobs.keep('kept', 1, 'quoted')).toBe(true);
    expect(await jobs.keep('kept', 1, 'named')).toBe(true);
    expect((await jobs.revisions('kept'))?.[0]?.keptFor).toBe('quoted');
    expect(await jobs.keep('kept', 2, 'named')).toBe(false);
  });

  it('lets go of no autosave whose maker may still wait for the answer to his next', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('quiet'), '1');
    await jobs.save(heading('quiet'), '2', 1, 'autosave');
    // Its maker holds 2: the answer to this one never arrives. Another reads it and saves on and on.
    await jobs.save(heading('quiet'), '3', 2, 'autosave');
    await jobs.read('quiet');
    for (let base = 3; base <= 8; base++) await jobs.save(heading('quiet'), `${base + 1}`, base, 'autosave');
    expect((await jobs.readRevision('quiet', 2))?.text).toBe('2');
    expect((await jobs.revisions('quiet'))?.map(({ revision }) => revision)).toEqual([9, 8, 3, 2, 1]);
  });

  it('counts the revision that a refusal names as handed out', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('told'), '1');
    await jobs.save(heading('told'), '2', 1, 'autosave');
    await jobs.save(heading('told'), '3', 2, 'autosave');
    // The maker of 3 holds 2 as long as he has no answer; whoever is told of 3 saves on it unread.
    expect(await jobs.save(heading('told'), 'x', 1, 'autosave')).toMatchObject({
      outcome: 'stale',
      revision: 3,
    });
    await jobs.save(heading('told'), '4', 3, 'autosave');
    await jobs.save(heading('told'), '5', 4, 'autosave');
    expect((await jobs.revisions('told'))?.map(({ revision }) => revision)).toEqual([5, 4, 3, 2, 1]);
  });

  it('counts the revision that a restoring names as handed out', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('brought'), '1');
    await jobs.save(heading('brought'), '2', 1, 'autosave');
    await jobs.save(heading('brought'), '3', 2, 'autosave');
    await jobs.remove('brought', 3);
    expect(await jobs.restore('brought')).toMatchObject({ outcome: 'saved', revision: 3 });
    await jobs.save(heading('brought'), '4', 3, 'autosave');
    await jobs.save(heading('brought'), '5', 4, 'autosave');
    expect((await jobs.revisions('brought'))?.map(({ revision }) => revision)).toEqual([5, 4, 3, 2, 1]);
  });

  it('lets go of nothing for a save that does not go in', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('refused'), '1');
    await jobs.save(heading('refused'), '2', 1, 'autosave');
    await jobs.save(heading('refused'), '3', 2, 'autosave');
    await jobs.remove('refused', 3);
    expect(await jobs.save(heading('refused'), 'x', 3, 'autosave')).toEqual({ outcome: 'no-such-job' });
    expect((await jobs.revisions('refused'))?.map(({ revision }) => revision)).toEqual([3, 2, 1]);
  });

  it('lets go by what one firm did, whatever another did to its job of the same id', async () => {
    const [one, other] = [await store.firm('goes'), await store.firm('stays')];
    for (const { jobs } of [one, other]) {
      await jobs.create(heading('same'), '1');
      await jobs.save(heading('same'), '2', 1, 'autosave');
      await jobs.save(heading('same'), '3', 2, 'autosave');
    }
    await other.jobs.read('same');
    for (const { jobs } of [other, one]) await jobs.save(heading('same'), '4', 3, 'autosave');
    expect((await one.jobs.revisions('same'))?.map(({ revision }) => revision)).toEqual([4, 3, 1]);
    expect((await other.jobs.revisions('same'))?.map(({ revision }) => revision)).toEqual([4, 3, 2, 1]);
  });

  it('begins a new chain when the clock was put back', async () => {
    const { jobs } = await store.firm('clock');
    await jobs.create(heading('back'), '1');
    for (const [base, ms] of [
      [1, 0],
      [2, 1000],
      [3, -3_600_000],
      [4, 1000],
      [5, 1000],
    ] as const) {
      store.clock.pass(ms);
      await jobs.save(heading('back'), 'x', base, 'autosave');
    }
    store.clock.pass(3_600_000);
    expect((await jobs.revisions('back'))?.map(({ revision }) => revision)).toEqual([6, 5, 3, 1]);
  });

  it('keeps the base of an answer that was lost on the way', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('lost'), '1');
    await jobs.save(heading('lost'), '2', 1, 'autosave');
    // The answer to this one never arrives: its sender still holds revision 2 and tries again.
    await jobs.save(heading('lost'), '3', 2, 'autosave');
    expect(await jobs.save(heading('lost'), '3', 2, 'autosave')).toMatchObject({
      outcome: 'stale',
      revision: 3,
    });
    expect((await jobs.readRevision('lost', 2))?.text).toBe('2');
  });

  it('never shows one firm what another has', async () => {
    const [one, other] = [await store.firm('one'), await store.firm('other')];
    await one.jobs.create(heading('same'), 'of one');
    expect(await other.jobs.read('same')).toBeNull();
    await other.jobs.create(heading('same'), 'of the other');
    await other.jobs.save(heading('same'), 'changed', 1, 'by-hand');
    expect((await one.jobs.read('same'))?.text).toBe('of one');
    expect(await one.jobs.readRevision('same', 2)).toBeNull();
    expect((await one.jobs.list()).map(({ id }) => id)).toEqual(['same']);
    await one.library.save('prices of one', 0);
    expect(await other.library.read()).toBeNull();
  });
});

describe('the library of a store', () => {
  it('keeps every revision and refuses a stale save', async () => {
    const { library } = await store.firm('library');
    expect(await library.read()).toBeNull();
    expect(await library.save('a', 0)).toMatchObject({ outcome: 'saved', revision: 1 });
    expect(await library.save('b', 0)).toMatchObject({ outcome: 'stale', revision: 1 });
    expect(await library.save('b', 1)).toMatchObject({ outcome: 'saved', revision: 2 });
    expect((await library.read())?.text).toBe('b');
    expect((await library.readRevision(1))?.text).toBe('a');
    expect(await library.readRevision(3)).toBeNull();
  });

  it('knows whether the demo jobs were put in', async () => {
    const { firm } = await store.firm('demos');
    expect(await firm.demosOffered()).toBe(false);
    await firm.noteDemosOffered();
    expect(await firm.demosOffered()).toBe(true);
  });
});
