import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { bundledServer } from './bundled-server.ts';
import { lossesOf } from './ledger.ts';
import { trialClients } from './trial-clients.ts';

/** How long a stop may take with saves under way, ms: an issued quotation is a second of work on a busy machine. */
const MOST_STOP_MS = 25_000;

describe('a server that is told to stop while jobs, library, photos and quotations are saved', () => {
  it('answers all that it does, does nothing that it has not answered, and ends with 0', async () => {
    const bundled = await bundledServer();
    try {
      const clients = trialClients();
      for (const restMs of [1500, 300, 40]) {
        const server = await bundled.start();
        const works = Promise.allSettled(clients.map(({ work }) => work(server.url)));
        await pause(restMs);
        const began = performance.now();
        server.child.kill('SIGTERM');
        expect(await server.ended).toBe(0);
        expect(performance.now() - began).toBeLessThan(MOST_STOP_MS);
        expect((await works).filter(({ status }) => status === 'rejected')).toEqual([]);
        await expect(fetch(`${server.url}/api/health`)).rejects.toThrow();
        // What is left without an answer never got in: so it is there under no revision.
        for (const { ledger } of clients) ledger.sent.clear();
        const again = await bundled.start();
        for (const { ledger, newest, read } of clients) {
          const losses = await lossesOf(ledger, await newest(again.url), (revision) =>
            read(again.url, revision),
          );
          expect(losses).toEqual([]);
        }
        again.child.kill('SIGTERM');
        expect(await again.ended).toBe(0);
      }
      const told = clients.map(({ ledger }) => ledger.told.size);
      expect(told.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(5);
    } finally {
      await bundled.clear();
    }
  });
});
