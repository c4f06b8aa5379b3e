import { foreignKey, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { jobs } from './jobs.ts';

/** Saved states of jobs, each as its text was sent. */
export const jobRevisions = sqliteTable(
  'job_revisions',
  {
    firmId: text('firm_id').notNull(),
    jobId: text('job_id').notNull(),
    revision: integer('revision').notNull(),
    text: text('text').notNull(),
    savedAt: text('saved_at').notNull(),
    how: text('how', { enum: ['by-hand', 'autosave'] }).notNull(),
    /** When the chain of autosaves that this one belongs to began. */
    chainBegan: text('chain_began').notNull(),
    /** True once it was read by anybody: it may be the base of a merge. */
    handedOut: integer('handed_out', { mode: 'boolean' }).notNull().default(false),
    keptFor: text('kept_for', { enum: ['quoted', 'named'] }),
    bytes: integer('bytes').notNull(),
    /** Tells its text from another under the same number. */
    tag: text('tag').notNull().default(''),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.jobId, table.revision] }),
    foreignKey({ columns: [table.firmId, table.jobId], foreignColumns: [jobs.firmId, jobs.jobId] }),
  ],
);
