import { fileURLToPath } from 'node:url';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import type { SignInStore } from '../../api/db/people-stores.ts';
import { signInStore } from '../../api/db/sign-in-store.ts';
import type { Stores } from '../../api/db/stores.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { databaseUrlFrom } from '../../api/http/settings.ts';
import { Refused } from '../product/job-file.ts';
import type { PeopleArguments } from './arguments.ts';

/** What a verb works with. */
export interface PeopleStores {
  readonly signIn: SignInStore;
  readonly firm: (firmId: string) => Promise<Stores>;
}

/** A verb: does it, and gives the exit code. */
export type PeopleCommand = (stores: PeopleStores, args: PeopleArguments) => Promise<number>;

export const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

/** Says why it cannot be done; gives the exit code for that. */
export function refuse(line: string): number {
  process.stderr.write(`${line}\n`);
  return 1;
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const now = (): Date => new Date();

const storesIn = (database: Database): PeopleStores => ({
  signIn: signInStore(database, now),
  firm: (firmId) => storesOf(database, firmId, now),
});

/** Opens the store that the server has, and closes it after. */
export async function withStore(task: (stores: PeopleStores) => Promise<number>): Promise<number> {
  const url = databaseUrlFrom(process.env, root);
  if ('fault' in url) throw new Refused(url.fault);
  const database = await openDatabase(url.value);
  try {
    return await task(storesIn(database));
  } finally {
    await database.close();
  }
}
