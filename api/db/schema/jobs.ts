import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { firms } from './firms.ts';

/** Jobs with the revision that counts and what the list of jobs shows of it; the text is in `job_revisions`. */
export const jobs = sqliteTable(
  'jobs',
  {
    firmId: text('firm_id')
      .notNull()
      .references(() => firms.firmId),
    jobId: text('job_id').notNull(),
    revision: integer('revision').notNull(),
    savedAt: text('saved_at').notNull(),
    /** When it was taken off the list; null while it is on it. */
    removedAt: text('removed_at'),
    reference: text('reference').notNull(),
    title: text('title').notNull(),
    customer: text('customer').notNull(),
    wantedPoints: integer('wanted_points').notNull(),
    schemes: integer('schemes').notNull(),
    /** The tag of the revision that counts. */
    tag: text('tag').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.firmId, table.jobId] })],
);
