import { getTableConfig } from 'drizzle-orm/sqlite-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accounts } from '../../api/db/schema/accounts.ts';
import { assets } from '../../api/db/schema/assets.ts';
import { firms } from '../../api/db/schema/firms.ts';
import { invitations } from '../../api/db/schema/invitations.ts';
import { jobRevisions } from '../../api/db/schema/job-revisions.ts';
import { jobs } from '../../api/db/schema/jobs.ts';
import { libraries } from '../../api/db/schema/libraries.ts';
import { quotationEvents } from '../../api/db/schema/quotation-events.ts';
import { quotationLinks } from '../../api/db/schema/quotation-links.ts';
import { quotations } from '../../api/db/schema/quotations.ts';
import { sessions } from '../../api/db/schema/sessions.ts';
import { variations } from '../../api/db/schema/variations.ts';
import { openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

interface Column {
  readonly name: string;
  readonly notnull: number;
  readonly pk: number;
}

const columnsOf = (table: string): Promise<Column[]> =>
  store.database.write((writer) => writer.all<Column>(`pragma table_info(${table})`));

describe('the tables that the migrations make', () => {
  it('are those of the schema, and no others', async () => {
    const made = await store.database.write((writer) =>
      writer.all<{ name: string }>(
        "select name from sqlite_master where type = 'table' and name not like '\\_\\_%' escape '\\' order by name",
      ),
    );
    expect(made.map(({ name }) => name)).toEqual([
      'accounts',
      'assets',
      'attempts',
      'firms',
      'invitations',
      'job_revisions',
      'jobs',
      'libraries',
      'quotation_events',
      'quotation_links',
      'quotations',
      'sessions',
      'variations',
    ]);
  });

  it.each([
    ...[firms, jobs, jobRevisions, libraries, quotations, quotationEvents, variations, assets],
    ...[accounts, sessions, invitations, quotationLinks],
  ])('have the columns of the schema, and name the firm first', async (table) => {
    const config = getTableConfig(table);
    const made = await columnsOf(config.name);
    const wanted = config.columns.map(({ name, notNull }) => [name, notNull ? 1 : 0]);
    expect(made.map(({ name, notnull }) => [name, notnull])).toEqual(wanted);
    expect(made.find(({ pk }) => pk === 1)?.name).toBe('firm_id');
  });
});
