import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import type { JobHeading, Stores } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';

/** A clock that a test sets. */
export interface TestClock {
  readonly now: () => Date;
  readonly pass: (ms: number) => void;
}

export function testClock(start = '2026-03-02T08:00:00.000Z'): TestClock {
  let at = Date.parse(start);
  return {
    now: () => new Date(at),
    pass: (ms) => {
      at += ms;
    },
  };
}

/** A store in a folder of its own, on the disk as in use. */
export interface TestStore {
  readonly url: string;
  readonly database: Database;
  readonly stores: Stores;
  readonly clock: TestClock;
  readonly firm: (firmId: string) => Promise<Stores>;
  readonly close: () => Promise<void>;
}

export async function openTestStore(): Promise<TestStore> {
  const folder = await mkdtemp(join(tmpdir(), 'store-'));
  const url = pathToFileURL(join(folder, 'deep', 'store.db')).href;
  const database = await openDatabase(url);
  const clock = testClock();
  const firm = (firmId: string): Promise<Stores> => storesOf(database, firmId, clock.now);
  return {
    url,
    database,
    clock,
    firm,
    stores: await firm('own'),
    close: async () => {
      await database.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export const heading = (id: string, title = 'A job'): JobHeading => ({
  id,
  reference: 'R-1',
  title,
  customer: 'C',
  wantedPoints: 1,
  schemes: 2,
});
