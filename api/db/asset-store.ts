import { createHash } from 'node:crypto';
import { and, type Column, eq, inArray, lt, sql } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import type { AssetStore } from './quotation-stores.ts';
import { assets } from './schema/assets.ts';
import { jobRevisions } from './schema/job-revisions.ts';
import { libraries } from './schema/libraries.ts';
import { quotations } from './schema/quotations.ts';
import { variations } from './schema/variations.ts';

const hashOf = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');

/** Every text that may name a photo. A photo is named by the hash of its bytes, which stands nowhere by chance. */
const referring: readonly Column[] = [
  jobRevisions.text,
  quotations.document,
  quotations.drawings,
  quotations.jobText,
  variations.photos,
  variations.jobText,
  libraries.text,
];

const isIn = (column: Column) => sql`not exists (
  select 1 from ${column.table} as other where other.firm_id = ${assets.firmId}
    and instr(other.${sql.identifier(column.name)}, ${assets.assetId}) > 0)`;

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
          // Sent again, it is wanted again: nobody removes it meanwhile.
          .onConflictDoUpdate({
            target: [assets.firmId, assets.assetId],
            set: { keptAt: now().toISOString() },
          }),
      );
      return kept;
    },
    read: async (id) => {
      const [row] = await database.reader.select().from(assets).where(thisAsset(id));
      if (row === undefined) return null;
      const { mediaType, bytes, content } = row;
      return { id, mediaType, bytes, content };
    },
    sweep: async (which) => {
      const meant =
        'ids' in which ? inArray(assets.assetId, [...which.ids]) : lt(assets.keptAt, which.keptBefore);
      const gone = await database.write((writer) =>
        writer
          .delete(assets)
          .where(and(eq(assets.firmId, firmId), meant, ...referring.map(isIn)))
          .returning({ bytes: assets.bytes }),
      );
      return { removed: gone.length, bytes: gone.reduce((sum, { bytes }) => sum + bytes, 0) };
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
