import { foreignKey, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { accounts } from './accounts.ts';
import { firms } from './firms.ts';

/** Links by which somebody sets a password, once: of a new account, or of the one that is named. */
export const invitations = sqliteTable(
  'invitations',
  {
    firmId: text('firm_id')
      .notNull()
      .references(() => firms.firmId),
    invitationId: text('invitation_id').notNull(),
    /** SHA-256 of the link's token, hexadecimal. */
    tokenHash: text('token_hash').notNull(),
    /** Whom it is for, as the owner wrote it. */
    name: text('name').notNull(),
    role: text('role', { enum: ['owner', 'estimator', 'read-only'] }).notNull(),
    /** The account whose password is to be set anew; null: a new one. */
    accountId: text('account_id'),
    madeAt: text('made_at').notNull(),
    expiresAt: text('expires_at').notNull(),
    usedAt: text('used_at'),
  },
  (table) => [
    primaryKey({ columns: [table.firmId, table.invitationId] }),
    unique().on(table.tokenHash),
    foreignKey({
      columns: [table.firmId, table.accountId],
      foreignColumns: [accounts.firmId, accounts.accountId],
    }),
  ],
);
