import { foreignKey, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { QuotationEvent } from '#model/quotation-notes.ts';
import { lessenedColumns } from './lessened.ts';
import { quotations } from './quotations.ts';

/** What became of a quotation, line by line; lines are only ever added. */
export const quotationEvents = sqliteTable(
  'quotation_events',
  {
    firmId: text('firm_id').notNull(),
    jobId: text('job_id').notNull(),
    quotationId: text('quotation_id').notNull(),
    /** From 1, without gaps. */
    seq: integer('seq').notNull(),
    at: text('at').notNull(),
    note: text('note', { mode: 'json' }).$type<QuotationEvent['note']>().notNull(),
    ...lessenedColumns,
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.jobId, table.quotationId, table.seq] }),
    foreignKey({
      columns: [table.firmId, table.jobId, table.quotationId],
      foreignColumns: [quotations.firmId, quotations.jobId, quotations.quotationId],
    }),
  ],
);
