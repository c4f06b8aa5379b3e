import { attemptStore } from '../db/attempt-store.ts';
import { linkedQuotation } from '../db/link-store.ts';
import type { Database } from '../db/open-database.ts';
import { signInStore } from '../db/sign-in-store.ts';
import { OWN_FIRM, storesOf } from '../db/stores-of.ts';
import { type App, createApp } from './app.ts';
import type { AppParts } from './app-parts.ts';
import { firmStores } from './firm-stores.ts';
import { scryptPasswords } from './sign-in/password-hash.ts';

/** What is told when the server is to listen to others and nobody could sign in. */
export const NO_OWNER =
  'Others are to reach this server, and nobody is set up who could sign in. Set up the first owner: npm run people -- owner --name "Your Name" --email you@firm.example';

/** What an app over a database is made of beside it. */
export type AppSurroundings = Pick<AppParts, 'demoJobs' | 'demoLibrary' | 'settings' | 'now' | 'log'> &
  Partial<Pick<AppParts, 'passwords'>>;

/** The app over an open database. Rejects where it is to listen to others and nobody could sign in. */
export async function appOver(database: Database, surroundings: AppSurroundings): Promise<App> {
  const { now, settings, demoJobs } = surroundings;
  const signIn = signInStore(database, now);
  if (settings.signIn && !(await signIn.hasOwner())) throw new Error(NO_OWNER);
  const storesFor = firmStores((firmId) => storesOf(database, firmId, now), demoJobs);
  // Asked for before anybody does, so that a store that cannot be used is told at the start.
  await storesFor(OWN_FIRM);
  return createApp({
    passwords: scryptPasswords(),
    ...surroundings,
    storesFor,
    signIn,
    probe: database.probe,
    attempts: attemptStore(database, now),
    linked: (tokenHash) => linkedQuotation(database, tokenHash),
  });
}
