import { foreignKey, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { accounts } from './accounts.ts';

/** Who is signed in, on which device: the device has the token, and here is its hash alone. */
export const sessions = sqliteTable(
  'sessions',
  {
    firmId: text('firm_id').notNull(),
    /** SHA-256 of the token, hexadecimal. */
    tokenHash: text('token_hash').notNull(),
    accountId: text('account_id').notNull(),
    beganAt: text('began_at').notNull(),
    /** When it was used last, to within some minutes. */
    seenAt: text('seen_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.tokenHash] }),
    unique().on(table.tokenHash),
    foreignKey({
      columns: [table.firmId, table.accountId],
      foreignColumns: [accounts.firmId, accounts.accountId],
    }),
  ],
);
