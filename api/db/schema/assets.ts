import { blob, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { firms } from './firms.ts';

/** Photos, each under the hash of its bytes; kept once however often they are sent. */
export const assets = sqliteTable(
  'assets',
  {
    firmId: text('firm_id')
      .notNull()
      .references(() => firms.firmId),
    /** SHA-256 of the bytes, hexadecimal. */
    assetId: text('asset_id').notNull(),
    /** By its bytes, not by what its sender called it. */
    mediaType: text('media_type').notNull(),
    bytes: integer('bytes').notNull(),
    content: blob('content', { mode: 'buffer' }).notNull(),
    keptAt: text('kept_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.firmId, table.assetId] })],
);
