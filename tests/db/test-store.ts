import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import type { JobHeading } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { type NumberedStores, numberedStores } from './numbered-stores.ts';

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
  readonly stores: NumberedStores;
  readonly clock: TestClock;
  readonly firm: (firmId: string) => Promise<NumberedStores>;
  readonly close: () => Promise<void>;
}

/** A store that is new, or the one at an address, which then stays. */
export async function openTestStore(there?: string): Promise<TestStore> {
  const folder = await mkdtemp(join(tmpdir(), 'store-'));
  const url = there ?? pathToFileURL(join(folder, 'deep', 'store.db')).href;
  const database = await openDatabase(url);
  const clock = testClock();
  const firm = async (firmId: string): Promise<NumberedStores> =>
    numberedStores(await storesOf(database, firmId, clock.now));
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

/** The text that a saving program gives a revision: long enough for several pages of the file. */
export const crashText = (revision: number): string =>
  JSON.stringify({ revision, filler: `${revision} `.repeat(4000) });

/** The revisions that a saving program said were in, on whole lines: one that was cut short was not heard. */
export interface SavingProgram {
  readonly child: ChildProcess;
  readonly told: () => readonly number[];
  /** Its exit code; null when it was killed. */
  readonly ended: Promise<number | null>;
}

/** Starts a program of its own that saves one job of a store, so many times or until it is killed; it opens the store no earlier than told. */
export function startSaving(
  url: string,
  id: string,
  saves = Number.POSITIVE_INFINITY,
  opensAtMs = 0,
): SavingProgram {
  const script = fileURLToPath(new URL('./saving-child.ts', import.meta.url));
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', script, url, id, String(saves), String(opensAtMs)],
    {
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  return {
    child,
    told: () => said.split('\n').slice(0, -1).map(Number),
    ended: new Promise((resolve) => child.once('close', resolve)),
  };
}
