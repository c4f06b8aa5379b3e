import { eq } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import { firms } from './schema/firms.ts';
import type { FirmStore } from './stores.ts';

/** Facts of one firm's store in a database. */
export function firmStore(database: Database, firmId: string): FirmStore {
  return {
    demosOffered: async () => {
      const [row] = await database.reader
        .select({ demosOffered: firms.demosOffered })
        .from(firms)
        .where(eq(firms.firmId, firmId));
      return row?.demosOffered ?? false;
    },
    noteDemosOffered: async () => {
      await database.write((writer) =>
        writer.update(firms).set({ demosOffered: true }).where(eq(firms.firmId, firmId)),
      );
    },
  };
}
