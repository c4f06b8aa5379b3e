import { text } from 'drizzle-orm/sqlite-core';

/**
 * What was taken out of a frozen row since it was written: the customer's data, figures left as they were; or whatever the
 * paper said. A trigger of the database lets a row change by this alone.
 */
export const lessenedColumns = {
  lessened: text('lessened', { enum: ['customer', 'whole'] }),
  lessenedAt: text('lessened_at'),
};
