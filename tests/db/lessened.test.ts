import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Lessening, NewQuotation } from '../../api/db/quotation-stores.ts';
import type { Version } from '../../api/db/stores.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

const lessen: Lessening = {
  job: (text) => text.replaceAll('Ann', '-'),
  document: (text) => text.replaceAll('Ann', '-'),
  note: (note) => ('by' in note ? { ...note, by: '-' } : note),
  reason: '-',
  heading: { title: 't', customer: '-' },
};

/** A job with a quotation that names somebody, and a variation with a photo of theirs. */
async function quoted(jobId: string): Promise<{ readonly base: Version; readonly photo: string }> {
  const { jobs, quotations, assets } = store.stores;
  const base = await jobs.create(heading(jobId), 'Ann’s job');
  if (base.outcome !== 'created') throw new Error('it was there');
  const photo = (await assets.keep(new TextEncoder().encode(jobId), 'image/png')).id;
  const made: NewQuotation = {
    id: 'q1',
    jobId,
    revision: 1,
    date: '2026-03-02',
    heading: 'quotation',
    validUntil: null,
    offers: [{ schemeId: 's1', name: 'One', grossPence: 80_000 }],
    engine: '0.1.0',
    edition: 'an edition',
    libraryRevision: 0,
    base,
    texts: { document: 'Ann’s paper', drawings: '[]', job: 'Ann’s job', library: 'the library' },
    replaces: [],
  };
  await quotations.issue(made);
  await quotations.note(
    jobId,
    { id: 'q1', seq: 1 },
    {
      kind: 'accepted',
      schemeId: 's1',
      by: 'Ann',
      how: 'signed',
      on: '2026-03-03',
    },
  );
  const variation = {
    id: 'v1',
    reason: 'Ann’s wall',
    beforePence: 80_000,
    afterPence: 83_000,
    engine: '0.1.0',
  };
  await quotations.offerVariation(
    jobId,
    { id: 'q1', seq: 2 },
    {
      ...variation,
      parts: [{ words: 'Wall', pence: 3000 }],
      work: { before: ['Ann’s wall is cut by hand'], now: ['Ann’s wall is cut by machine'] },
      photos: [photo],
      beforeJobRevision: 1,
      base,
      jobText: 'Ann’s job',
    },
  );
  return { base, photo };
}

const run = (statement: string): Promise<unknown> => store.database.write((writer) => writer.run(statement));

describe('what is frozen', () => {
  it('goes on without its customer, once, all of it or nothing', async () => {
    const { quotations, jobs } = store.stores;
    const { base } = await quoted('forgotten');
    expect(
      await quotations.forgetCustomer('forgotten', { base: { ...base, tag: 'other' }, lessen }),
    ).toMatchObject({
      outcome: 'stale',
    });
    expect(await quotations.readText('forgotten', 'q1', 'document')).toBe('Ann’s paper');
    expect(await quotations.forgetCustomer('forgotten', { base, lessen })).toMatchObject({
      outcome: 'saved',
    });
    const read = await quotations.read('forgotten', 'q1');
    expect(JSON.stringify(read)).not.toContain('Ann');
    expect(read).toMatchObject({
      lessened: { what: 'customer', at: store.clock.now().toISOString() },
      offers: [{ grossPence: 80_000 }],
      variations: [{ afterPence: 83_000, photos: [], reason: '-', work: null }],
    });
    expect(await quotations.readText('forgotten', 'q1', 'document')).toBe('-’s paper');
    expect(await quotations.readVariationJob('forgotten', 'q1', 'v1')).toBe('-’s job');
    expect((await jobs.read('forgotten'))?.text).toBe('-’s job');
    expect((await jobs.list()).find(({ id }) => id === 'forgotten')?.customer).toBe('-');
    // A second time finds nothing to take out, and changes no row again.
    const head = await jobs.read('forgotten');
    if (head === null) throw new Error('gone');
    expect(await quotations.forgetCustomer('forgotten', { base: head, lessen })).toMatchObject({
      outcome: 'saved',
    });
  });

  it('is erased whole on the history that was seen, also after its customer', async () => {
    const { quotations, jobs } = store.stores;
    await quoted('erased');
    expect(await quotations.erase('erased', { id: 'q1', seq: 2 })).toBe('moved-on');
    const head = await jobs.read('erased');
    if (head === null) throw new Error('gone');
    await quotations.forgetCustomer('erased', { base: head, lessen });
    expect(await quotations.erase('erased', { id: 'q1', seq: 3 })).toBe('written');
    expect(await quotations.erase('erased', { id: 'q1', seq: 3 })).toBe('moved-on');
    for (const which of ['document', 'drawings', 'job', 'library'] as const)
      expect(await quotations.readText('erased', 'q1', which)).toBe('');
    expect(await quotations.read('erased', 'q1')).toMatchObject({
      revision: 1,
      offers: [],
      lessened: { what: 'whole' },
      events: [
        { note: { kind: 'issued' } },
        { note: { kind: 'accepted' } },
        { note: { kind: 'variation-offered' } },
      ],
    });
  });

  it.each([
    "update quotations set offers = '[]', lessened = 'customer', lessened_at = 'x'",
    "update quotations set library_text = '', lessened = 'customer', lessened_at = 'x'",
    "update quotations set date = '2020-01-01', lessened = 'whole', lessened_at = 'x'",
    "update quotations set revision = 7, lessened = 'customer', lessened_at = 'x'",
    "update quotations set document = 'x', lessened = 'customer'",
    "update variations set after_pence = 1, lessened = 'customer', lessened_at = 'x'",
    `update variations set work = '{"before":[],"now":[]}', lessened = 'customer', lessened_at = 'x'`,
    "update variations set parts = '[]', lessened = 'whole', lessened_at = 'x', job_text = ''",
    `update quotation_events set note = '{"kind":"declined"}', lessened = 'customer', lessened_at = 'x'`,
    'delete from quotation_events',
    'delete from variations',
    'delete from quotations',
  ])('keeps figures, days, numbers and rows, past all routes: %s', async (statement) => {
    const { quotations, jobs } = store.stores;
    const jobId = `past-${statement.length}-${statement.replace(/\W+/g, '-').toLowerCase().slice(0, 60)}`;
    await quoted(jobId);
    const before = await quotations.read(jobId, 'q1');
    await expect(run(`${statement} where job_id = '${jobId}'`)).rejects.toThrow();
    expect(await quotations.read(jobId, 'q1')).toEqual(before);
    expect((await jobs.read(jobId))?.text).toBe('Ann’s job');
  });
});

describe('photos that nothing refers to', () => {
  const later = (): string => new Date(store.clock.now().getTime() + 1).toISOString();

  it('are removed, and none that a job, a quotation, a variation or a library names, also of an earlier state', async () => {
    const { jobs } = store.stores;
    const own = await store.firm('photos');
    const keep = async (words: string): Promise<string> =>
      (await own.assets.keep(new TextEncoder().encode(words), 'image/png')).id;
    const [inJob, inPast, inLibrary, loose] = await Promise.all(
      ['job', 'past', 'library', 'loose'].map(keep),
    );
    await own.jobs.create(heading('pictured'), `{"assets":["${inPast}"]}`);
    await own.jobs.save(heading('pictured'), `{"assets":["${inJob}"]}`, 1, 'by-hand');
    await own.library.save(`{"logo":"${inLibrary}"}`, 0);
    // Another firm's words keep nothing of this one.
    await jobs.create(heading('elsewhere'), `${loose}`);
    expect(await own.assets.sweep({ keptBefore: later() })).toEqual({ removed: 1, bytes: 5 });
    expect(await own.assets.known([inJob, inPast, inLibrary, loose].map(String))).toEqual(
      new Set([inJob, inPast, inLibrary]),
    );
    expect(await own.assets.sweep({ keptBefore: later() })).toEqual({ removed: 0, bytes: 0 });
  });

  it('go with a variation that no longer shows them, and stay while it does', async () => {
    const { assets, quotations } = store.stores;
    const { base, photo } = await quoted('shown');
    await assets.sweep({ keptBefore: later() });
    expect(await assets.known([photo])).toEqual(new Set([photo]));
    await quotations.forgetCustomer('shown', { base, lessen });
    await assets.sweep({ keptBefore: later() });
    expect(await assets.known([photo])).toEqual(new Set());
  });

  it('stay while they are new, and are new again once they were sent again', async () => {
    const { assets } = store.stores;
    const content = new TextEncoder().encode('being made');
    const { id } = await assets.keep(content, 'image/png');
    const then = store.clock.now().toISOString();
    expect(await assets.sweep({ keptBefore: then })).toMatchObject({ removed: 0 });
    store.clock.pass(1000);
    await assets.keep(content, 'image/png');
    expect(await assets.sweep({ keptBefore: new Date(Date.parse(then) + 500).toISOString() })).toMatchObject({
      removed: 0,
    });
    expect(await assets.known([id])).toEqual(new Set([id]));
    expect(await assets.sweep({ ids: [] })).toEqual({ removed: 0, bytes: 0 });
    expect(await assets.sweep({ ids: [id] })).toEqual({ removed: 1, bytes: content.length });
  });
});
