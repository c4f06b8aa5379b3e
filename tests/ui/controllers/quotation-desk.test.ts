import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { standingOf } from '#engine/quotation/standing.ts';
import type { QuotationEvent, QuotationNote } from '#model/quotation-notes.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { ServerRefusal } from '../../../ui/controllers/api-client.ts';
import { DraftPhotos } from '../../../ui/controllers/draft-photos.ts';
import { Pictures } from '../../../ui/controllers/pictures.ts';
import type { QuotationClient, VariationOffer } from '../../../ui/controllers/quotation-client.ts';
import { type OnTheDesk, QuotationDesk } from '../../../ui/controllers/quotation-desk.ts';
import { TextsByJob } from '../../../ui/controllers/texts-by-job.ts';
import { memoryStore } from '../../../ui/device/device-store.ts';
import type { JobView } from '../../../ui/job-view.ts';
import type { QuotationRecord } from '../../../ui/quotations/quotation-record.ts';

const job = demoJob('fernlow-close');
const library = demoLibrary();
const schemeId = job.schemes[0]?.id ?? '';
const [scheme] = estimate(
  job,
  library,
  { date: '2026-11-26', revision: 1 },
  { schemeIds: [schemeId], depth: 'live' },
).schemes;
const grossPence = scheme?.totals.grossPence ?? 0;

const accepted: QuotationNote = { kind: 'accepted', schemeId, by: 'A', how: 'signed', on: '2026-11-26' };

const recordOf = (notes: readonly QuotationNote[]): QuotationRecord => {
  const offers = [{ schemeId, name: 'One', grossPence }];
  const events = [{ kind: 'issued' } as const, ...notes].map(
    (note, index): QuotationEvent => ({ seq: index + 1, at: '', note }),
  );
  return {
    ...standingOf({ offers, events, variations: [] }),
    id: 'q1',
    etag: `"${events.length}-a"`,
    revision: 1,
    date: '2026-11-26',
    issuedAt: '',
    heading: 'quotation',
    validUntil: null,
    offers,
    engine: '0.1.0',
    lessened: null,
    events,
    variations: [],
  };
};

/** A server that answers as a test has it; null: it cannot be reached. */
function setUp(answers: { list?: readonly QuotationRecord[]; refuse?: () => ServerRefusal | null } = {}) {
  const sent: { what: string; body: unknown; tag: string }[] = [];
  const may = async (what: string, body: unknown, tag: string): Promise<void> => {
    sent.push({ what, body, tag });
    const refusal = answers.refuse?.() ?? null;
    if (refusal !== null) throw refusal;
  };
  const client = {
    list: async () => answers.list ?? [],
    issue: (body: object, tag: string) => may('issue', body, tag),
    note: (_: string, note: QuotationNote, tag: string) => may('note', note, tag),
    offerVariation: (_: string, offer: VariationOffer, tag: string) => may('vary', offer, tag),
    frozen: async (_: string, which: string) => JSON.stringify(which === 'job' ? job : library),
    variationJob: async () => JSON.stringify(job),
    erase: (id: string, tag: string) => may('erase', id, tag),
    forgetCustomer: (tag: string) => may('forget', null, tag),
    keepPhoto: async () => 'f'.repeat(64),
  } as unknown as QuotationClient;
  const texts = new Map<string, string>();
  const reasons = new TextsByJob('variation', () => ({
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
  }));
  const store = memoryStore();
  const photos = new DraftPhotos(
    Promise.resolve(store),
    new Pictures({
      store: Promise.resolve(store),
      client: { keep: async () => 'f'.repeat(64), read: async () => new Blob() },
      wait: () => () => {},
    }),
  );
  let settled = (): void => {};
  const desk = new QuotationDesk(
    {
      jobId: job.id,
      client,
      reasons,
      photos,
      smaller: async (file) => file,
      clock: {
        wait: (_, then) => {
          queueMicrotask(then);
          return () => {};
        },
      },
    },
    () => settled(),
  );
  const until = async (isSo: () => boolean): Promise<void> => {
    while (!isSo())
      await new Promise<void>((resolve) => {
        settled = resolve;
      });
  };
  const taken: string[] = [];
  const kept = {
    etag: '"1-job"',
    unkept: false,
    keep: async () => {},
    takeTheirs: async () => void taken.push('theirs'),
  };
  const on = (changes: Partial<JobView> = {}): OnTheDesk => ({
    view: { job, library, date: '2026-11-26', step: 'papers', moving: false, ...changes } as JobView,
    job: kept,
    library: { ...kept, etag: '"1-library"' },
  });
  return { desk, sent, on, until, reasons, taken, photos, store };
}

const dearerJob = { ...job, terms: { ...job.terms, travelMin: 99, filling: 'bonding-and-finish' as const } };

describe('the quotations on the desk', () => {
  it('are fetched once the papers are looked at, not before', async () => {
    const { desk, on, until } = setUp({ list: [recordOf([])] });
    desk.take(on({ step: 'price' }));
    expect(desk.view.state).toBe('fetching');
    desk.take(on());
    await until(() => desk.view.state === 'there' && desk.view.moved !== null);
    expect(desk.view.moved).toEqual([
      { schemeId, moved: { beforePence: grossPence, afterPence: grossPence, parts: [], idle: [] } },
    ]);
  });

  it('say what has moved when the job does', async () => {
    const { desk, on, until } = setUp({ list: [recordOf([])] });
    desk.take(on());
    await until(() => desk.view.moved !== null && !desk.view.working);
    desk.take(on({ job: dearerJob }));
    await until(() => (desk.view.moved?.[0]?.moved?.parts.length ?? 0) > 0);
    const [{ moved } = { moved: null }] = desk.view.moved ?? [];
    const sum = moved?.parts.reduce((all, { figures }) => all + figures.grossPence, 0);
    expect(sum).toBe((moved?.afterPence ?? 0) - grossPence);
  });

  it('are issued under one id until there is an answer, and under another afterwards', async () => {
    let refusal: ServerRefusal | null = new ServerRefusal(0, {});
    const { desk, on, until, sent } = setUp({ refuse: () => refusal });
    desk.take(on());
    await until(() => desk.view.state === 'there');
    await desk.do({ do: 'issue' });
    expect(desk.view.trouble).toMatch(/no connection/);
    refusal = null;
    await desk.do({ do: 'issue' });
    expect(desk.view.trouble).toBe('');
    await desk.do({ do: 'issue' });
    const ids = sent.map(({ body }) => (body as { id: string }).id);
    expect([ids[0] === ids[1], ids[1] === ids[2]]).toEqual([true, false]);
    expect(sent[0]).toMatchObject({
      what: 'issue',
      tag: '"1-job"',
      body: { date: '2026-11-26', library: '"1-library"' },
    });
  });

  it('keep what is typed of a variation until it is offered, with its sum and its photos', async () => {
    let refusal: ServerRefusal | null = new ServerRefusal(0, {});
    const { desk, on, until, sent, reasons, photos } = setUp({
      list: [recordOf([accepted])],
      refuse: () => refusal,
    });
    desk.take(on({ job: dearerJob }));
    await until(() => desk.view.variation !== null);
    const variation = desk.view.variation;
    await desk.do({ do: 'type-reason', reason: ' Blown plaster. ' });
    await desk.do({ do: 'add-photo', file: new Blob(['a picture']) });
    await desk.do({ do: 'vary', quotationId: 'q1' });
    expect([desk.view.reason, desk.view.photos.length]).toEqual([' Blown plaster. ', 1]);
    expect(reasons.of(job.id)).toBe(' Blown plaster. ');
    expect(desk.view.trouble).toMatch(/not put to the customer yet.*waits on this device.*Press again/);
    // As an earlier page left it: the next one finds it.
    expect((await photos.of(job.id)).map(({ id }) => id)).toEqual([desk.view.photos[0]?.id]);
    refusal = null;
    await desk.do({ do: 'vary', quotationId: 'q1' });
    expect([desk.view.reason, desk.view.photos.length, reasons.of(job.id)]).toEqual(['', 0, '']);
    expect(await photos.of(job.id)).toEqual([]);
    const [first, second] = sent;
    expect(second?.body).toEqual(first?.body);
    expect(second).toMatchObject({
      what: 'vary',
      tag: '"2-a"',
      body: {
        reason: 'Blown plaster.',
        photos: ['f'.repeat(64)],
        job: '"1-job"',
        differencePence: (variation?.afterPence ?? 0) - (variation?.beforePence ?? 0),
      },
    });
    // Travel is a term of the quotation: only the filling is a variation of it.
    expect(variation?.moved.parts.map(({ words }) => words)).toEqual(['Plaster for cuts in walls']);
    desk.stop();
  });

  it('are erased on the history that was seen, and the customer on the job that was seen', async () => {
    const { desk, on, until, sent, reasons, taken } = setUp({ list: [recordOf([])] });
    desk.take(on());
    await until(() => desk.view.state === 'there' && !desk.view.working);
    await desk.do({ do: 'erase', quotationId: 'q1' });
    expect(sent.at(-1)).toEqual({ what: 'erase', body: 'q1', tag: '"1-a"' });
    await desk.do({ do: 'type-reason', reason: 'of theirs' });
    await desk.do({ do: 'forget' });
    expect(sent.at(-1)).toEqual({ what: 'forget', body: null, tag: '"1-job"' });
    // No step back on this screen brings the customer in again.
    expect([taken, desk.view.reason, reasons.of(job.id)]).toEqual([['theirs'], '', '']);
  });

  it('of which the newest was erased are not priced against anything', async () => {
    const erased = { ...recordOf([]), lessened: { what: 'whole' as const, at: '2026-11-26' } };
    const { desk, on, until } = setUp({ list: [erased] });
    desk.take(on());
    await until(() => desk.view.state === 'there');
    expect([desk.view.moved, desk.view.variation, desk.view.trouble]).toEqual([null, null, '']);
  });
});
