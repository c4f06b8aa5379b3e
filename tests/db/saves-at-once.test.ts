import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StoredText } from '../../api/db/stores.ts';
import { crashText, heading, openTestStore, startSaving, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

const fifty = Array.from({ length: 50 }, (_, i) => i);

describe('fifty saves at once', () => {
  it('on one job from one base: one is saved, the others are told what is there', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('race'), 'start');
    const outcomes = await Promise.all(fifty.map((i) => jobs.save(heading('race'), `by ${i}`, 1, 'by-hand')));
    const winners = fifty.filter((i) => outcomes[i]?.outcome === 'saved');
    expect(winners).toHaveLength(1);
    expect(outcomes.filter((one) => one.outcome === 'stale' && one.revision === 2)).toHaveLength(49);
    expect((await jobs.read('race'))?.text).toBe(`by ${winners[0]}`);
    expect((await jobs.readRevision('race', 1))?.text).toBe('start');
  });

  it('on fifty jobs: none is refused', async () => {
    const { jobs } = store.stores;
    await Promise.all(fifty.map((i) => jobs.create(heading(`own${i}`), 'start')));
    const outcomes = await Promise.all(
      fifty.map((i) => jobs.save(heading(`own${i}`), `next ${i}`, 1, 'autosave')),
    );
    expect(new Set(outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['saved']));
    const texts = await Promise.all(fifty.map((i) => jobs.read(`own${i}`)));
    expect(texts.map((one) => [one?.text, one?.revision])).toEqual(fifty.map((i) => [`next ${i}`, 2]));
  });

  it('of new jobs under one id: one is made', async () => {
    const { jobs } = store.stores;
    const outcomes = await Promise.all(fifty.map((i) => jobs.create(heading('one-id'), `by ${i}`)));
    const winners = fifty.filter((i) => outcomes[i]?.outcome === 'created');
    expect(winners).toHaveLength(1);
    expect((await jobs.read('one-id'))?.text).toBe(`by ${winners[0]}`);
  });

  it('of the library from one base: one is saved', async () => {
    const { library } = await store.firm('race');
    const outcomes = await Promise.all(fifty.map((i) => library.save(`by ${i}`, 0)));
    const winners = fifty.filter((i) => outcomes[i]?.outcome === 'saved');
    expect(winners).toHaveLength(1);
    expect(outcomes.filter((one) => one.outcome === 'stale' && one.revision === 1)).toHaveLength(49);
    expect((await library.read())?.text).toBe(`by ${winners[0]}`);
  });

  it('that try again until they are in: every mark is there', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('marks'), '');
    const mark = async (i: number): Promise<void> => {
      for (;;) {
        const now = await jobs.read('marks');
        const next = `${now?.text ?? ''} ${i}`;
        const saved = await jobs.save(heading('marks'), next, now?.revision ?? 0, 'autosave');
        if (saved.outcome === 'saved') return;
      }
    };
    await Promise.all(fifty.map(mark));
    const marks = (await jobs.read('marks'))?.text.trim().split(' ').map(Number) ?? [];
    expect(marks.sort((a, b) => a - b)).toEqual(fifty);
  });

  it('by hands that save on and on: whoever is refused finds the base of the merge', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('bases'), '');
    let refused = 0;
    const work = async (i: number): Promise<void> => {
      let mine: StoredText | null = await jobs.read('bases');
      for (let step = 0; step < 20 && mine !== null; step++) {
        const text: string = `${mine.text}${i},`;
        const saved = await jobs.save(heading('bases'), text, mine.revision, 'autosave');
        if (saved.outcome === 'saved') mine = { ...saved, text };
        else {
          refused += 1;
          expect((await jobs.readRevision('bases', mine.revision))?.text).toBe(mine.text);
          mine = await jobs.read('bases');
        }
        // Some rest, so that others come between and some do not.
        for (let rest = 0; rest < (i * step) % 7; rest++) await new Promise((turn) => setImmediate(turn));
      }
    };
    await Promise.all(fifty.slice(0, 6).map(work));
    expect(refused).toBeGreaterThan(0);
  });
});

describe('programs that write one store at once', () => {
  it('each get every save in, and start together on a store that is not there yet', async () => {
    const url = store.url.replace(/store\.db$/, 'new/programs.db');
    const opensAtMs = Date.now() + 1500;
    const programs = ['a', 'b', 'c', 'a'].map((id) => startSaving(url, id, 60, opensAtMs));
    expect(await Promise.all(programs.map(({ ended }) => ended))).toEqual([0, 0, 0, 0]);
    const second = await openTestStore(url);
    try {
      for (const [id, saves] of [
        ['a', 120],
        ['b', 60],
        ['c', 60],
      ] as const) {
        const revisions = (await second.stores.jobs.revisions(id))?.map(({ revision }) => revision) ?? [];
        expect(revisions).toEqual(Array.from({ length: saves + 1 }, (_, i) => saves + 1 - i));
        expect((await second.stores.jobs.read(id))?.text).toBe(crashText(saves + 1));
      }
    } finally {
      await second.close();
    }
  }, 60_000);

  it('see what the other has saved', async () => {
    const other = startSaving(store.url, 'seen', 3);
    expect(await other.ended).toBe(0);
    expect((await store.stores.jobs.read('seen'))?.revision).toBe(4);
  });
});
