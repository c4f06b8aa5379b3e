import { foreignKey, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { quotations } from './quotations.ts';

/** Links by which a customer sees one quotation. */
export const quotationLinks = sqliteTable(
  'quotation_links',
  {
    firmId: text('firm_id').notNull(),
    linkId: text('link_id').notNull(),
    /** SHA-256 of the link's token, hexadecimal. */
    tokenHash: text('token_hash').notNull(),
    jobId: text('job_id').notNull(),
    quotationId: text('quotation_id').notNull(),
    madeAt: text('made_at').notNull(),
    expiresAt: text('expires_at').notNull(),
    withdrawnAt: text('withdrawn_at'),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.linkId] }),
    unique().on(table.tokenHash),
    foreignKey({
      columns: [table.firmId, table.jobId, table.quotationId],
      foreignColumns: [quotations.firmId, quotations.jobId, quotations.quotationId],
    }),
  ],
);
