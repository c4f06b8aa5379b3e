import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { createClient } from '@libsql/client';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { crashText, openTestStore, type SavingProgram, startSaving } from './test-store.ts';

/** Kills without warning, and waits until the program is gone. */
async function kill({ child, ended }: SavingProgram): Promise<void> {
  child.kill('SIGKILL');
  expect(await ended).toBeNull();
}

describe('a program killed while it saves', () => {
  it('leaves every save that it was told of, whole, and a sound file', async () => {
    const store = await openTestStore();
    try {
      const told = new Set<number>();
      // From the first acknowledgement; how far it gets by then differs from run to run.
      for (const ms of [0, 41, 17, 88, 29, 5, 63, 12, 34, 7, 111, 2]) {
        const program = startSaving(store.url, 'crash');
        if (program.child.stdout !== null) await once(program.child.stdout, 'data');
        await pause(ms);
        await kill(program);
        for (const revision of program.told()) told.add(revision);
        const kept = new Map((await store.stores.jobs.revisions('crash'))?.map((one) => [one.revision, one]));
        expect([...told].filter((revision) => !kept.has(revision))).toEqual([]);
        // Each save is whole or not there: no gap, and nothing but the last that nobody was told of.
        expect(kept.size).toBe((await store.stores.jobs.read('crash'))?.revision);
      }
      expect(told.size).toBeGreaterThan(20);
      for (const revision of told)
        expect((await store.stores.jobs.readRevision('crash', revision))?.text).toBe(crashText(revision));
      await store.database.close();
      const client = createClient({ url: store.url });
      const { rows } = await client.execute('pragma integrity_check');
      expect(rows.map((row) => row.integrity_check)).toEqual(['ok']);
      client.close();
    } finally {
      await store.close();
    }
  }, 120_000);

  it('may be killed while it makes its tables: the next one finds nothing half done', async () => {
    const store = await openTestStore();
    try {
      for (const [i, ms] of [250, 290, 330, 370, 410, 450].entries()) {
        const url = store.url.replace(/store\.db$/, `new${i}.db`);
        const program = startSaving(url, 'crash');
        await pause(ms);
        await kill(program);
        const database = await openDatabase(url);
        const { jobs } = await storesOf(database, 'own', store.clock.now);
        const last = program.told().at(-1) ?? 0;
        expect((await jobs.read('crash'))?.revision ?? 0).toBeGreaterThanOrEqual(last);
        await database.close();
      }
    } finally {
      await store.close();
    }
  }, 60_000);
});
