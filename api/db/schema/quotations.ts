import { foreignKey, integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { QuotedOffer } from '../quotation-stores.ts';
import { jobs } from './jobs.ts';
import { lessenedColumns } from './lessened.ts';

/**
 * Quotations as they were issued, with all that they rest on. A row never changes and never goes, but for what is taken out of
 * it (`lessened`): triggers of the database refuse all else (migration `lessened`), here as in the two tables beside it. What
 * became of it is in `quotation_events`.
 */
export const quotations = sqliteTable(
  'quotations',
  {
    firmId: text('firm_id').notNull(),
    jobId: text('job_id').notNull(),
    quotationId: text('quotation_id').notNull(),
    /** From 1, one for each quotation of the job. */
    revision: integer('revision').notNull(),
    /** The day that it carries, ISO. */
    date: text('date').notNull(),
    issuedAt: text('issued_at').notNull(),
    /** `quotation` or `estimate`: what it is headed. */
    heading: text('heading').notNull(),
    /** The last day on which it may be taken up, ISO; null: none is named. */
    validUntil: text('valid_until'),
    /** What it offers, for the list. */
    offers: text('offers', { mode: 'json' }).$type<readonly QuotedOffer[]>().notNull(),
    /** The document as it was sent, JSON. */
    document: text('document').notNull(),
    /** Its drawings, JSON: a list of SVG texts, each with its name. */
    drawings: text('drawings').notNull(),
    engine: text('engine').notNull(),
    edition: text('edition').notNull(),
    jobRevision: integer('job_revision').notNull(),
    jobTag: text('job_tag').notNull(),
    /** The job file that it was made from, to the byte. */
    jobText: text('job_text').notNull(),
    libraryRevision: integer('library_revision').notNull(),
    /** Prices, norms and terms that it was made with, to the byte. */
    libraryText: text('library_text').notNull(),
    ...lessenedColumns,
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.jobId, table.quotationId] }),
    unique().on(table.firmId, table.jobId, table.revision),
    foreignKey({ columns: [table.firmId, table.jobId], foreignColumns: [jobs.firmId, jobs.jobId] }),
  ],
);
