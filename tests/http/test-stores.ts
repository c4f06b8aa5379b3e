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

/** The empty stores of a firm of its own, in one database file for all tests of a process. */
export async function freshStores(): Promise<Stores> {
  opened ??= openDatabase(`file:${join(folder, 'jobs.db')}`);
  firms += 1;
  return storesOf(await opened, `firm-${firms}`, ticking());
}
