import type { Library } from '#model/library.ts';
import type { Stores } from '../db/stores.ts';
import type { Reach } from './guards.ts';
import type { Log } from './log.ts';

/** What the app needs to know of its surroundings. */
export interface AppSettings extends Reach {
  /** The folder of the built screen, absolute. */
  readonly screenFolder: string;
  readonly version: string;
}

/** Everything that the routes work with. */
export interface AppParts {
  readonly stores: Stores;
  /** The texts of the demo jobs' files. */
  readonly demoJobs: readonly string[];
  readonly demoLibrary: Library;
  readonly settings: AppSettings;
  readonly now: () => Date;
  readonly log: Log;
  /** Rejects with `StoreTrouble` while the store does not answer, is not up to date or takes no write. */
  readonly probe: () => Promise<void>;
}
