import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

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
  });

  it('on fifty jobs: none is refused', async () => {
    const { jobs } = store.stores;
    await Promise.all(fifty.map((i) => jobs.create(heading(`own${i}`), 'start')));
    const outcomes = await Promise.all(
      fifty.map((i) => jobs.save(heading(`own${i}`), 'next', 1, 'autosave')),
    );
    expect(new Set(outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['saved']));
    const texts = await Promise.all(fifty.map((i) => jobs.read(`own${i}`)));
    expect(texts.every((one) => one?.text === 'next' && one.revision === 2)).toBe(true);
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

  it('from two openings of one file: each waits for the other', async () => {
    const second = await openDatabase(store.url);
    try {
      const { jobs } = await storesOf(second, 'own', store.clock.now);
      await store.stores.jobs.create(heading('shared'), 'start');
      const outcomes = await Promise.all(
        fifty.map((i) => (i % 2 === 0 ? jobs : store.stores.jobs).create(heading(`two${i}`), 'x')),
      );
      expect(new Set(outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['created']));
      expect((await jobs.read('shared'))?.text).toBe('start');
    } finally {
      await second.close();
    }
  });
});
