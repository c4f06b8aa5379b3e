import { createHash } from 'node:crypto';
import { and, eq, inArray } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import type { AssetStore } from './quotation-stores.ts';
import { assets } from './schema/assets.ts';

const hashOf = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');

/** The photos of one firm in a database. */
export function assetStore(database: Database, firmId: string, now: () => Date): AssetStore {
  const thisAsset = (id: string) => and(eq(assets.firmId, firmId), eq(assets.assetId, id));
  return {
    keep: async (content, mediaType) => {
      const id = hashOf(content);
      const kept = { id, mediaType, bytes: content.byteLength };
      await database.write((writer) =>
        writer
          .insert(assets)
          .values({
            firmId,
            assetId: id,
            mediaType,
            bytes: content.byteLength,
            content: Buffer.from(content),
            keptAt: now().toISOString(),
          })
          .onConflictDoNothing(),
      );
      return kept;
    },
    read: async (id) => {
      const [row] = await database.reader.select().from(assets).where(thisAsset(id));
      if (row === undefined) return null;
      const { mediaType, bytes, content } = row;
      return { id, mediaType, bytes, content };
    },
    known: async (ids) => {
      if (ids.length === 0) return new Set();
      const rows = await database.reader
        .select({ id: assets.assetId })
        .from(assets)
        .where(and(eq(assets.firmId, firmId), inArray(assets.assetId, [...ids])));
      return new Set(rows.map(({ id }) => id));
    },
  };
}
