import { assetStore } from './asset-store.ts';
import { firmStore } from './firm-store.ts';
import { jobStore } from './job-store.ts';
import { libraryStore } from './library-store.ts';
import { linkStore } from './link-store.ts';
import type { Database } from './open-database.ts';
import { peopleStore } from './people-store.ts';
import { quotationStore } from './quotation-store.ts';
import { firms } from './schema/firms.ts';
import type { Stores } from './stores.ts';

/** The firm that a store on one's own machine belongs to. */
export const OWN_FIRM = 'own';

/**
 * What one firm has stored in a database; the firm is entered where it is not known yet.
 *
 * @param now the clock: the store has none of its own.
 */
export async function storesOf(database: Database, firmId: string, now: () => Date): Promise<Stores> {
  await database.write((writer) => writer.insert(firms).values({ firmId }).onConflictDoNothing());
  return {
    jobs: jobStore(database, firmId, now),
    library: libraryStore(database, firmId, now),
    quotations: quotationStore(database, firmId, now),
    assets: assetStore(database, firmId, now),
    firm: firmStore(database, firmId),
    people: peopleStore(database, firmId, now),
    links: linkStore(database, firmId, now),
  };
}
