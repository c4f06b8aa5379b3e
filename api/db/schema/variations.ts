import { foreignKey, integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { VariationPart, VariationWork } from '../quotation-stores.ts';
import { lessenedColumns } from './lessened.ts';
import { quotations } from './quotations.ts';

/** Changes of accepted work as they were priced on site; never changed. Whether they were agreed is in `quotation_events`. */
export const variations = sqliteTable(
  'variations',
  {
    firmId: text('firm_id').notNull(),
    jobId: text('job_id').notNull(),
    quotationId: text('quotation_id').notNull(),
    variationId: text('variation_id').notNull(),
    /** From 1, in each quotation. */
    number: integer('number').notNull(),
    offeredAt: text('offered_at').notNull(),
    /** What was found and why it costs what it does, in a person's words. */
    reason: text('reason').notNull(),
    /** The contract before it and with it, VAT included. */
    beforePence: integer('before_pence').notNull(),
    afterPence: integer('after_pence').notNull(),
    /** What moved; the parts add up to the difference. */
    parts: text('parts', { mode: 'json' }).$type<readonly VariationPart[]>().notNull(),
    /** Photos of it, by the hash of their bytes. */
    photos: text('photos', { mode: 'json' }).$type<readonly string[]>().notNull(),
    engine: text('engine').notNull(),
    /** The state of the job that it starts from and the one that it is priced as. */
    beforeJobRevision: integer('before_job_revision').notNull(),
    jobRevision: integer('job_revision').notNull(),
    jobTag: text('job_tag').notNull(),
    jobText: text('job_text').notNull(),
    ...lessenedColumns,
    /** What is done otherwise, in the customer's words; null: it was not written down. */
    work: text('work', { mode: 'json' }).$type<VariationWork>(),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.jobId, table.quotationId, table.variationId] }),
    unique().on(table.firmId, table.jobId, table.quotationId, table.number),
    foreignKey({
      columns: [table.firmId, table.jobId, table.quotationId],
      foreignColumns: [quotations.firmId, quotations.jobId, quotations.quotationId],
    }),
  ],
);
