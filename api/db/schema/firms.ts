import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Firms; a store on one's own machine holds one. Every other table names its firm. */
export const firms = sqliteTable('firms', {
  firmId: text('firm_id').primaryKey(),
  /** True from the moment the demo jobs were put in once. */
  demosOffered: integer('demos_offered', { mode: 'boolean' }).notNull().default(false),
});
