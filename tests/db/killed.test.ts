import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as after } from 'node:timers/promises';
import { createClient } from '@libsql/client';
import { describe, expect, it } from 'vitest';
import { heading, openTestStore } from './test-store.ts';

/** Runs the saving program on the store until it is killed without warning; the last revision that it was told is kept. */
async function saveUntilKilled(url: string, from: number, ms: number): Promise<number> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/db/saving-child.ts', url, String(from)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  await once(child.stdout, 'data');
  await after(ms);
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
  // A line that was cut short was not heard.
  return Number(said.split('\n').slice(0, -1).at(-1));
}

describe('a program killed while it saves', () => {
  it('leaves every save that it was told of, and a sound file', async () => {
    const store = await openTestStore();
    try {
      await store.stores.jobs.create(heading('crash'), '{}');
      let from = 1;
      for (const ms of [3, 41, 17, 88, 29, 5, 63, 12, 34, 7]) {
        const told = await saveUntilKilled(store.url, from, ms);
        const found = await store.stores.jobs.read('crash');
        expect(found?.revision).toBeGreaterThanOrEqual(told);
        expect(JSON.parse(found?.text ?? '{}')).toMatchObject({ revision: found?.revision });
        const kept = await store.stores.jobs.revisions('crash');
        expect(kept?.length).toBe(found?.revision);
        from = found?.revision ?? 1;
      }
      expect(from).toBeGreaterThan(10);
      const client = createClient({ url: store.url });
      const { rows } = await client.execute('pragma integrity_check');
      expect(rows.map((row) => row.integrity_check)).toEqual(['ok']);
      client.close();
    } finally {
      await store.close();
    }
  }, 60_000);
});
