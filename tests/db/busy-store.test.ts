import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StoreTrouble } from '../../api/db/store-trouble.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

/** Does the steps while another connection, as another program would, is in the middle of a write. */
async function whileAnotherWrites(steps: () => Promise<void>): Promise<void> {
  const other = createClient({ url: store.url });
  const transaction = await other.transaction('write');
  try {
    await transaction.execute("update jobs set title = 'held'");
    await steps();
  } finally {
    await transaction.rollback();
    other.close();
  }
}

describe('while another program holds the store', () => {
  it('a job saved by hand is read at once, and so is one that was read before', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('made'), '1');
    await jobs.create(heading('by-hand'), '1');
    await jobs.save(heading('by-hand'), '2', 1, 'by-hand');
    await jobs.create(heading('read'), '1');
    await jobs.save(heading('read'), '2', 1, 'autosave');
    await jobs.read('read');
    await whileAnotherWrites(async () => {
      const started = performance.now();
      expect((await jobs.read('made'))?.text).toBe('1');
      expect((await jobs.read('by-hand'))?.text).toBe('2');
      expect((await jobs.read('read'))?.text).toBe('2');
      expect((await jobs.readRevision('by-hand', 1))?.text).toBe('1');
      expect(performance.now() - started).toBeLessThan(1000);
    });
  });

  it('a save is refused as trouble of the store, and goes in when it is sent again', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('held-up'), '1');
    await whileAnotherWrites(async () => {
      await expect(jobs.save(heading('held-up'), '2', 1, 'autosave')).rejects.toThrow(StoreTrouble);
    });
    expect(await jobs.save(heading('held-up'), '2', 1, 'autosave')).toMatchObject({ outcome: 'saved' });
    expect((await jobs.read('held-up'))?.text).toBe('2');
    expect(await store.database.write((writer) => writer.all('pragma synchronous'))).toEqual([
      { synchronous: 2 },
    ]);
  }, 20_000);

  it('an autosave that nobody has read is not handed out unmarked: the store says what to do', async () => {
    const { jobs } = store.stores;
    await jobs.create(heading('unread'), '1');
    await jobs.save(heading('unread'), '2', 1, 'autosave');
    await whileAnotherWrites(async () => {
      const trouble: unknown = await jobs.read('unread').catch((error: unknown) => error);
      expect(trouble).toBeInstanceOf(StoreTrouble);
      expect(trouble).toMatchObject({ withoutPlace: expect.stringContaining('another program') });
      expect(trouble).not.toMatchObject({ withoutPlace: expect.stringContaining('store.db') });
    });
    expect((await jobs.read('unread'))?.text).toBe('2');
    await jobs.save(heading('unread'), '3', 2, 'autosave');
    await jobs.save(heading('unread'), '4', 3, 'autosave');
    expect((await jobs.readRevision('unread', 2))?.text).toBe('2');
  }, 20_000);
});
