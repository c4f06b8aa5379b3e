import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { etagFor, saltglass, saltglassId, testApp } from '../http/test-app.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
const others: Database[] = [];
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(async () => {
  for (const other of others) await other.close();
  await store.close();
});

/** A server's app with connections of its own on the store: nothing is shared but the file. */
async function appOfItsOwn() {
  const database = await openDatabase(store.url);
  others.push(database);
  return testApp({ stores: await storesOf(database, 'shared', () => new Date('2026-11-25T09:00:00Z')) });
}

describe('two servers on one store', () => {
  it('answer alike: what one has saved the other reads, and refuses what is stale', async () => {
    const [one, two] = [await appOfItsOwn(), await appOfItsOwn()];
    await one.send('POST', '/api/jobs', saltglass);
    const path = `/api/jobs/${saltglassId}`;
    let last = saltglass;
    for (let revision = 1; revision < 6; revision += 1) {
      const [saving, reading] = revision % 2 === 0 ? [one, two] : [two, one];
      const text = `${saltglass}${' '.repeat(revision)}`;
      const saved = await saving.send('PUT', path, text, { 'if-match': etagFor(revision, last) });
      expect(saved.status).toBe(200);
      expect(await (await reading.get(path)).text()).toBe(text);
      const stale = await reading.send('PUT', path, text, { 'if-match': etagFor(revision, last) });
      expect([stale.status, (await stale.json()).currentEtag]).toEqual([412, etagFor(revision + 1, text)]);
      last = text;
    }
  });

  it('let one of twenty saves from one base through, whichever they are sent to', async () => {
    const [one, two] = [await appOfItsOwn(), await appOfItsOwn()];
    const path = `/api/jobs/${saltglassId}`;
    const base = (await one.get(path)).headers.get('etag') ?? '';
    const statuses = await Promise.all(
      Array.from({ length: 20 }, async (_, i) => {
        const text = `${saltglass}${'\n'.repeat(i + 1)}`;
        return (await (i % 2 === 0 ? one : two).send('PUT', path, text, { 'if-match': base })).status;
      }),
    );
    expect(statuses.filter((status) => status === 200)).toHaveLength(1);
    expect(statuses.filter((status) => status === 412)).toHaveLength(19);
  });

  it('forget a customer only if no quotation was written meanwhile', async () => {
    const { jobs, quotations } = await storesOf(store.database, 'own', () => new Date(0));
    const made = await jobs.create(heading('job'), 'the customer');
    if (made.outcome !== 'created') throw new Error('not made');
    const other = createClient({ url: store.url });
    let quoted: Promise<unknown> | null = null;
    const quote = async (): Promise<void> => {
      await other.executeMultiple(`
        insert into quotations (firm_id, job_id, quotation_id, revision, date, issued_at, heading, offers, document, drawings, engine,
          edition, job_revision, job_tag, job_text, library_revision, library_text) values
          ('own', 'job', 'q', 1, '', '', '', '[]', 'the customer', '', '', '', 1, '', 'the customer', 0, '');
        insert into quotation_events (firm_id, job_id, quotation_id, seq, at, note) values ('own', 'job', 'q', 1, '', '{"kind":"issued"}');`);
    };
    const forget = (job: (text: string) => string) =>
      quotations.forgetCustomer('job', {
        base: made,
        lessen: {
          job,
          document: () => '',
          note: (note) => note,
          reason: '',
          heading: { title: '', customer: '' },
        },
      });
    // Between the reading of the job's states and that of its papers, as another server would.
    const first = await forget(() => {
      quoted ??= quote();
      return 'nobody';
    });
    await quoted;
    expect(first.outcome).toBe('stale');
    expect((await jobs.read('job'))?.text).toBe('the customer');
    expect((await forget(() => 'nobody')).outcome).toBe('saved');
    expect(await quotations.readText('job', 'q', 'document')).toBe('');
    other.close();
  });
});
