import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NewQuotation, NewVariation } from '../../api/db/quotation-stores.ts';
import type { Version } from '../../api/db/stores.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

/** A job on the list, and the version that it is. */
async function savedJob(jobId: string, text = 'the job'): Promise<Version> {
  const made = await store.stores.jobs.create(heading(jobId), text);
  if (made.outcome !== 'created') throw new Error(`Job ${jobId} was there already.`);
  return made;
}

const newQuotation = (jobId: string, base: Version, changes: Partial<NewQuotation> = {}): NewQuotation => ({
  id: 'q1',
  jobId,
  revision: 1,
  date: '2026-03-02',
  heading: 'quotation',
  validUntil: '2026-04-01',
  offers: [{ schemeId: 's1', name: 'One', grossPence: 80_000 }],
  engine: '0.1.0',
  edition: 'an edition',
  libraryRevision: 0,
  base,
  texts: { document: '{"the":"document"}', drawings: '[]', job: 'the job', library: 'the library' },
  replaces: [],
  ...changes,
});

const newVariation = (base: Version, changes: Partial<NewVariation> = {}): NewVariation => ({
  id: 'v1',
  reason: 'A wall of another kind',
  beforePence: 80_000,
  afterPence: 83_000,
  parts: [{ words: 'Wall', pence: 3000 }],
  work: { before: ['The wall is cut by hand.'], now: [] },
  photos: [],
  engine: '0.1.0',
  beforeJobRevision: 1,
  base,
  jobText: 'the job, changed',
  ...changes,
});

describe('a quotation that is issued', () => {
  it('is there with all that it froze, to the byte', async () => {
    const { quotations } = store.stores;
    const odd = '{"words":"½ Ω 日本 \\u2028 🔌"}\r\n\t ';
    const base = await savedJob('frozen');
    const texts = { document: `${odd}1`, drawings: `${odd}2`, job: `${odd}3`, library: `${odd}4` };
    expect(await quotations.issue(newQuotation('frozen', base, { texts }))).toBe('written');
    for (const which of ['document', 'drawings', 'job', 'library'] as const)
      expect(await quotations.readText('frozen', 'q1', which)).toBe(texts[which]);
    expect(await quotations.list('frozen')).toEqual([
      {
        id: 'q1',
        jobId: 'frozen',
        revision: 1,
        date: '2026-03-02',
        issuedAt: store.clock.now().toISOString(),
        heading: 'quotation',
        validUntil: '2026-04-01',
        offers: [{ schemeId: 's1', name: 'One', grossPence: 80_000 }],
        engine: '0.1.0',
        edition: 'an edition',
        jobRevision: 1,
        libraryRevision: 0,
        lessened: null,
        events: [{ seq: 1, at: store.clock.now().toISOString(), note: { kind: 'issued' } }],
        variations: [],
      },
    ]);
  });

  it('keeps the revision of the job that it was made from, however many autosaves follow', async () => {
    const { jobs, quotations } = store.stores;
    await savedJob('kept');
    const saved = await jobs.save(heading('kept'), '2', 1, 'autosave');
    if (saved.outcome !== 'saved') throw new Error(saved.outcome);
    await quotations.issue(newQuotation('kept', saved));
    for (let base = 2; base < 7; base++) await jobs.save(heading('kept'), `${base + 1}`, base, 'autosave');
    const revisions = await jobs.revisions('kept');
    expect(revisions?.map(({ revision }) => revision)).not.toContain(4);
    expect(revisions?.find(({ revision }) => revision === 2)?.keptFor).toBe('quoted');
    expect((await jobs.readRevision('kept', 2))?.text).toBe('2');
  });

  it('is refused whole where the job was saved since, and where it was taken off the list', async () => {
    const { jobs, quotations } = store.stores;
    const base = await savedJob('late');
    await jobs.save(heading('late'), 'newer', 1, 'by-hand');
    expect(await quotations.issue(newQuotation('late', base))).toBe('moved-on');
    await savedJob('off');
    await jobs.remove('off', 1);
    expect(await quotations.issue(newQuotation('off', base))).toBe('moved-on');
    for (const jobId of ['late', 'off']) {
      expect(await quotations.list(jobId)).toEqual([]);
      expect((await jobs.revisions(jobId))?.map(({ keptFor }) => keptFor)).not.toContain('quoted');
    }
  });

  it('takes the next number of its job and no other', async () => {
    const { quotations } = store.stores;
    const base = await savedJob('numbers');
    expect(await quotations.issue(newQuotation('numbers', base, { revision: 2 }))).toBe('moved-on');
    expect(await quotations.issue(newQuotation('numbers', base))).toBe('written');
    expect(await quotations.issue(newQuotation('numbers', base, { id: 'q2' }))).toBe('moved-on');
    expect(await quotations.issue(newQuotation('numbers', base, { id: 'q2', revision: 2 }))).toBe('written');
    expect((await quotations.list('numbers')).map(({ id, revision }) => [id, revision])).toEqual([
      ['q1', 1],
      ['q2', 2],
    ]);
  });

  it('is written once of many at the same moment', async () => {
    const { quotations } = store.stores;
    const base = await savedJob('race');
    const ids = Array.from({ length: 8 }, (_, index) => `q${index}`);
    const written = await Promise.all(ids.map((id) => quotations.issue(newQuotation('race', base, { id }))));
    expect(written.filter((one) => one === 'written')).toHaveLength(1);
    expect(await quotations.list('race')).toHaveLength(1);
  });

  it('replaces earlier ones, unless something was noted of one since it was seen', async () => {
    const { quotations } = store.stores;
    const base = await savedJob('replacing');
    await quotations.issue(newQuotation('replacing', base));
    const next = newQuotation('replacing', base, {
      id: 'q2',
      revision: 2,
      replaces: [{ id: 'q1', seq: 1 }],
    });
    await quotations.note('replacing', { id: 'q1', seq: 1 }, { kind: 'declined', on: '2026-03-03' });
    expect(await quotations.issue(next)).toBe('moved-on');
    expect(await quotations.issue({ ...next, replaces: [{ id: 'q1', seq: 2 }] })).toBe('written');
    const [first] = await quotations.list('replacing');
    expect(first?.events.map(({ note }) => note)).toEqual([
      { kind: 'issued' },
      { kind: 'declined', on: '2026-03-03' },
      { kind: 'replaced', byId: 'q2' },
    ]);
  });

  it('belongs to its firm', async () => {
    const { quotations } = store.stores;
    const base = await savedJob('mine');
    await quotations.issue(newQuotation('mine', base));
    const other = await store.firm('another');
    expect(await other.quotations.list('mine')).toEqual([]);
    expect(await other.quotations.readText('mine', 'q1', 'document')).toBeNull();
    expect(
      await other.quotations.note('mine', { id: 'q1', seq: 1 }, { kind: 'declined', on: '2026-03-03' }),
    ).toBe('moved-on');
  });
});

describe('what is noted of a quotation', () => {
  it('is a line more, after the last that was seen', async () => {
    const { quotations } = store.stores;
    const base = await savedJob('noted');
    await quotations.issue(newQuotation('noted', base));
    const yes = {
      kind: 'accepted',
      schemeId: 's1',
      by: 'A. Customer',
      how: 'signed',
      on: '2026-03-04',
      earlyStart: true,
    } as const;
    expect(await quotations.note('noted', { id: 'q1', seq: 1 }, yes)).toBe('written');
    expect(await quotations.note('noted', { id: 'q1', seq: 1 }, yes)).toBe('moved-on');
    expect((await quotations.read('noted', 'q1'))?.events.map(({ seq, note }) => [seq, note.kind])).toEqual([
      [1, 'issued'],
      [2, 'accepted'],
    ]);
    expect(await quotations.note('noted', { id: 'nowhere', seq: 0 }, yes).catch(() => 'refused')).toBe(
      'refused',
    );
  });
});

describe('a variation', () => {
  it('is kept with its numbers, its photos and the job that it is priced as', async () => {
    const { jobs, quotations, assets } = store.stores;
    const photo = (await assets.keep(new TextEncoder().encode('a photo'), 'image/png')).id;
    const base = await savedJob('varied');
    await quotations.issue(newQuotation('varied', base));
    const saved = await jobs.save(heading('varied'), 'the job, changed', 1, 'autosave');
    if (saved.outcome !== 'saved') throw new Error(saved.outcome);
    expect(await quotations.offerVariation('varied', { id: 'q1', seq: 1 }, newVariation(base))).toBe(
      'moved-on',
    );
    const lost = newVariation(saved, { photos: [photo, 'a'.repeat(64)] });
    expect(await quotations.offerVariation('varied', { id: 'q1', seq: 1 }, lost)).toBe('moved-on');
    const offered = newVariation(saved, { photos: [photo] });
    expect(await quotations.offerVariation('varied', { id: 'q1', seq: 1 }, offered)).toBe('written');
    expect(await quotations.offerVariation('varied', { id: 'q1', seq: 1 }, { ...offered, id: 'v2' })).toBe(
      'moved-on',
    );
    expect(await quotations.offerVariation('varied', { id: 'q1', seq: 2 }, { ...offered, id: 'v2' })).toBe(
      'written',
    );
    const read = await quotations.read('varied', 'q1');
    expect(
      read?.variations.map(({ id, number, jobRevision, photos }) => [id, number, jobRevision, photos]),
    ).toEqual([
      ['v1', 1, 2, [photo]],
      ['v2', 2, 2, [photo]],
    ]);
    expect(await quotations.readVariationJob('varied', 'q1', 'v1')).toBe('the job, changed');
    const revisions = await jobs.revisions('varied');
    expect(revisions?.map(({ revision, keptFor }) => [revision, keptFor])).toEqual([
      [2, 'quoted'],
      [1, 'quoted'],
    ]);
  });
});

describe('what is frozen', () => {
  it.each([
    ['quotations', 'document'],
    ['quotations', 'job_text'],
    ['quotations', 'offers'],
    ['quotation_events', 'note'],
    ['variations', 'after_pence'],
  ])('is not changed by anybody who writes to %s.%s, past all routes', async (table, column) => {
    const { quotations } = store.stores;
    const jobId = `past-${table}-${column}`;
    const base = await savedJob(jobId);
    await quotations.issue(newQuotation(jobId, base));
    await quotations.offerVariation(jobId, { id: 'q1', seq: 1 }, newVariation(base));
    const before = await quotations.read(jobId, 'q1');
    const written = store.database.write((writer) =>
      writer.run(`update ${table} set ${column} = 'otherwise' where job_id = '${jobId}'`),
    );
    await expect(written).rejects.toThrow();
    expect(await quotations.read(jobId, 'q1')).toEqual(before);
    expect(await quotations.readText(jobId, 'q1', 'document')).toBe('{"the":"document"}');
  });
});

describe('photos', () => {
  it('come back as they were, once each, to their firm alone', async () => {
    const { assets } = store.stores;
    const content = Uint8Array.from({ length: 5000 }, (_, index) => index % 256);
    const kept = await assets.keep(content, 'image/jpeg');
    expect(await assets.keep(content, 'image/jpeg')).toEqual(kept);
    const read = await assets.read(kept.id);
    expect(read?.mediaType).toBe('image/jpeg');
    expect(Buffer.from(read?.content ?? []).equals(Buffer.from(content))).toBe(true);
    // SHA-256 of "abc". Source: FIPS 180-4, example of the standard's test vectors.
    const abc = await assets.keep(new TextEncoder().encode('abc'), 'image/png');
    expect(abc.id).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await assets.known([kept.id, abc.id, 'none'])).toEqual(new Set([kept.id, abc.id]));
    expect(await (await store.firm('others')).assets.read(kept.id)).toBeNull();
  });
});
