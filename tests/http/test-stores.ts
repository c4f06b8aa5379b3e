import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import type { Stores } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';

// Cleared away with the whole scratch folder: files of tests come and go in one process, and the database serves them all.
const folder = mkdtempSync(join(process.env.SCRATCH_FOLDER ?? tmpdir(), 'http-'));
let opened: Promise<Database> | null = null;
let firms = 0;

/** A clock that goes on by a second at each look, from nine o'clock on 25 November 2026. */
function ticking(): () => Date {
  let at = Date.UTC(2026, 10, 25, 9, 0, 0);
  return () => {
    at += 1000;
    return new Date(at);
  };
}

/** The one database of all tests of a process. */
export function testDatabase(): Promise<Database> {
  opened ??= openDatabase(`file:${join(folder, 'jobs.db')}`);
  return opened;
}

/** The empty stores of a firm of its own, in one database file for all tests of a process. */
export async function freshStores(): Promise<Stores> {
  firms += 1;
  return storesOf(await testDatabase(), `firm-${firms}`, ticking());
}
