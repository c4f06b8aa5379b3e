import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Guesses of late, by whom they were aimed at or where they came from: of no firm, as a guess names none. */
export const attempts = sqliteTable('attempts', {
  /** What is counted, and the hash of the name or address that it is counted by. */
  counted: text('counted').primaryKey(),
  failures: integer('failures').notNull(),
  /** When the last one was. */
  lastAt: text('last_at').notNull(),
});
