import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { firms } from './firms.ts';

/** Saved states of each firm's library; none is pruned, as a quotation may rest on it. */
export const libraries = sqliteTable(
  'libraries',
  {
    firmId: text('firm_id')
      .notNull()
      .references(() => firms.firmId),
    revision: integer('revision').notNull(),
    text: text('text').notNull(),
    savedAt: text('saved_at').notNull(),
    /** Tells its text from another under the same number. */
    tag: text('tag').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.firmId, table.revision] })],
);
