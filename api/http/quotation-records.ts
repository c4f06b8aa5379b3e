import { z } from '@hono/zod-openapi';
import { type Standing, standingOf } from '#engine/quotation/standing.ts';
import { id } from '#model/primitives.ts';
import { quotationNote, saidHow } from '#model/quotation-notes.ts';
import type { QuotationStore, StoredQuotation } from '../db/quotation-stores.ts';
import { tagOf } from '../db/tag-of.ts';
import { Problem } from './problems.ts';
import { etagOf } from './revision-headers.ts';

/** A job's id and a quotation's in an address. */
export const quotationAddress = z.object({ id, quotation: id });

const decided = z.object({
  by: z.string(),
  how: saidHow,
  on: z.string(),
  words: z.string().optional(),
});

const variationRecord = z
  .object({
    id: z.string(),
    number: z.int(),
    offeredAt: z.string(),
    reason: z.string(),
    beforePence: z.int(),
    afterPence: z.int(),
    parts: z.array(z.object({ words: z.string(), pence: z.int() })).meta({
      description: 'They add up to the difference.',
    }),
    work: z
      .object({ before: z.array(z.string()), now: z.array(z.string()) })
      .nullable()
      .meta({
        description: 'What is done otherwise, in the customer’s words; null: it was not written down.',
      }),
    photos: z.array(z.string()),
    engine: z.string(),
    beforeJobRevision: z.int(),
    jobRevision: z.int(),
    status: z.enum(['offered', 'agreed', 'refused', 'withdrawn']),
    decision: decided.nullable(),
  })
  .openapi('Variation');

/** A quotation as it is answered: what it froze, in short, and how it stands. */
export const quotationRecord = z
  .object({
    id: z.string(),
    etag: z.string().meta({ description: 'Of its history: what a note on it sends as If-Match.' }),
    revision: z.int().meta({ description: 'From 1, in its job.' }),
    date: z.string(),
    issuedAt: z.string(),
    heading: z.string(),
    validUntil: z.string().nullable(),
    offers: z.array(z.object({ schemeId: z.string(), name: z.string(), grossPence: z.int() })),
    engine: z.string(),
    edition: z.string(),
    jobRevision: z.int(),
    libraryRevision: z.int(),
    lessened: z
      .object({ what: z.enum(['customer', 'whole']), at: z.string() })
      .nullable()
      .meta({ description: 'What was erased of it: whose it was, or all that it said; null: nothing.' }),
    status: z.enum(['issued', 'accepted', 'declined', 'withdrawn', 'replaced']),
    acceptance: decided.extend({ schemeId: z.string(), earlyStart: z.boolean().optional() }).nullable(),
    replacedById: z.string().nullable(),
    contractPence: z
      .int()
      .nullable()
      .meta({ description: 'The accepted offer and every agreed variation; null: nothing is accepted.' }),
    restsOn: z.string().nullable().meta({
      description: 'The agreed variation whose job is agreed by now; null: the job as it was quoted.',
    }),
    mayTakeBack: z
      .int()
      .nullable()
      .meta({ description: 'The event that a note `taken-back` may name; null: none.' }),
    events: z.array(z.object({ seq: z.int(), at: z.string(), note: z.looseObject({ kind: z.string() }) })),
    variations: z.array(variationRecord),
  })
  .openapi('Quotation');
export type QuotationRecord = z.infer<typeof quotationRecord>;

/** The body of a note; the model says what may stand there. */
export const noteBody = quotationNote;

/** The last line of a quotation's history. */
export const seqOf = ({ events }: StoredQuotation): number => events.at(-1)?.seq ?? 0;

/** The version of a quotation's history. */
export const versionOf = (stored: StoredQuotation) => ({ revision: seqOf(stored), tag: tagOf(stored.id) });

/** A stored quotation with how it stands. */
export function recordOf(stored: StoredQuotation, standing: Standing = standingOf(stored)): QuotationRecord {
  const { jobId: _, variations, events, ...head } = stored;
  const said = new Map(standing.variations.map((one) => [one.id, one]));
  return {
    ...head,
    etag: etagOf(versionOf(stored)),
    offers: [...head.offers],
    status: standing.status,
    acceptance: standing.acceptance,
    replacedById: standing.replacedById,
    contractPence: standing.contractPence,
    restsOn: standing.restsOn,
    // What was erased is not on offer any more, whatever is taken back.
    mayTakeBack: stored.lessened?.what === 'whole' ? null : standing.mayTakeBack,
    events: [...events],
    variations: variations.map(({ parts, work, photos, ...one }) => ({
      ...one,
      parts: [...parts],
      work: work === null ? null : { before: [...work.before], now: [...work.now] },
      photos: [...photos],
      status: said.get(one.id)?.status ?? 'offered',
      decision: said.get(one.id)?.decision ?? null,
    })),
  };
}

/** A quotation of a job that still says what it said; a missing or an erased one is a problem. */
export async function wholeQuotation(
  store: QuotationStore,
  address: { readonly id: string; readonly quotation: string },
): Promise<StoredQuotation> {
  const stored = await storedQuotation(store, address);
  if (stored.lessened?.what === 'whole')
    throw new Problem(
      'quotation-erased',
      `Revision ${stored.revision} was erased on ${stored.lessened.at.slice(0, 10)}.`,
    );
  return stored;
}

/** A quotation of a job; a missing one is a problem. */
export async function storedQuotation(
  store: QuotationStore,
  { id: jobId, quotation }: { readonly id: string; readonly quotation: string },
): Promise<StoredQuotation> {
  const stored = await store.read(jobId, quotation);
  if (stored === null)
    throw new Problem('no-such-quotation', `Job "${jobId}" has no quotation "${quotation}".`);
  return stored;
}
