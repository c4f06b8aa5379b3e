import type { Context } from 'hono';
import type { Library } from '#model/library.ts';
import type { AttemptStore, LinkedQuotation, SignInStore } from '../db/people-stores.ts';
import type { Stores } from '../db/stores.ts';
import type { AppEnv } from './access-guard.ts';
import type { Reach } from './guards.ts';
import type { Log } from './log.ts';
import type { Passwords } from './sign-in/password-hash.ts';

/** What the app needs to know of its surroundings. */
export interface AppSettings extends Reach {
  /** The folder of the built screen, absolute. */
  readonly screenFolder: string;
  readonly version: string;
  /** False where only its own machine reaches the server: whoever sits there is the owner. */
  readonly signIn: boolean;
  /** True where browsers reach it by TLS alone. */
  readonly secureCookies: boolean;
}

/** Everything that the routes work with. */
export interface AppParts {
  /** What one firm has stored; no handler asks for another than the asker's. */
  readonly storesFor: (firmId: string) => Promise<Stores>;
  readonly signIn: SignInStore;
  readonly attempts: AttemptStore;
  readonly passwords: Passwords;
  /** Where a customer's link leads, by the hash of its token. */
  readonly linked: (tokenHash: string) => Promise<LinkedQuotation | null>;
  /** The texts of the demo jobs' files. */
  readonly demoJobs: readonly string[];
  readonly demoLibrary: Library;
  readonly settings: AppSettings;
  readonly now: () => Date;
  readonly log: Log;
  /** Rejects with `StoreTrouble` while the store does not answer, is not up to date or takes no write. */
  readonly probe: () => Promise<void>;
}

/** As the handlers of one request have it: with the stores of the asker's firm. */
export interface FirmParts extends Omit<AppParts, 'storesFor'> {
  readonly stores: Stores;
}

/** The parts that a request is answered with. */
export function firmParts({ storesFor: _, ...parts }: AppParts, c: Context<AppEnv>): FirmParts {
  return { ...parts, stores: c.var.stores };
}
