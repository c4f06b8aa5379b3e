import { sql } from 'drizzle-orm';
import { primaryKey, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { firms } from './firms.ts';

/** The people of each firm. A closed account stays, so that what it did keeps its name; its address may then be used anew. */
export const accounts = sqliteTable(
  'accounts',
  {
    firmId: text('firm_id')
      .notNull()
      .references(() => firms.firmId),
    accountId: text('account_id').notNull(),
    name: text('name').notNull(),
    /** In lower case: what somebody signs in with. */
    email: text('email').notNull(),
    role: text('role', { enum: ['owner', 'estimator', 'read-only'] }).notNull(),
    /** With its salt and what it cost to make. */
    passwordHash: text('password_hash').notNull(),
    since: text('since').notNull(),
    closedAt: text('closed_at'),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.accountId] }),
    uniqueIndex('accounts_open_email').on(table.email).where(sql`closed_at is null`),
  ],
);
