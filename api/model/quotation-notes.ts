import { z } from 'zod';
import { id, isoDate } from './primitives.ts';

/** Words of a line or two. */
const words = z.string().max(2000);
/** Somebody's name; a yes or a no is worth nothing without one. */
const name = z.string().trim().min(1, 'must name somebody').max(200);

/** How somebody told the firm. */
export const saidHow = z.enum(['signed', 'message', 'in-person', 'telephone']);
export type SaidHow = z.infer<typeof saidHow>;

const accepted = z.strictObject({
  kind: z.literal('accepted'),
  /** The scheme of the quotation that was chosen. */
  schemeId: id,
  by: name,
  how: saidHow,
  on: isoDate,
  /** Whether the customer asked in so many words that work begin before the days to cancel are over; absent: nobody said. */
  earlyStart: z.boolean().optional(),
  words: words.optional(),
});
export type Acceptance = z.infer<typeof accepted>;

const variationAgreed = z.strictObject({
  kind: z.literal('variation-agreed'),
  variationId: id,
  by: name,
  how: saidHow,
  on: isoDate,
  words: words.optional(),
});
export type VariationAgreed = z.infer<typeof variationAgreed>;

const variationRefused = z.strictObject({
  kind: z.literal('variation-refused'),
  variationId: id,
  by: name,
  how: saidHow,
  on: isoDate,
  words: words.optional(),
});
export type VariationRefused = z.infer<typeof variationRefused>;

/** What people note on a quotation once it was issued; nothing of the quotation itself changes by it. */
export const quotationNote = z
  .discriminatedUnion('kind', [
    accepted,
    z.strictObject({ kind: z.literal('declined'), on: isoDate, words: words.optional() }),
    z.strictObject({ kind: z.literal('withdrawn'), on: isoDate, words: words.optional() }),
    variationAgreed,
    variationRefused,
    z.strictObject({
      kind: z.literal('variation-withdrawn'),
      variationId: id,
      on: isoDate,
      words: words.optional(),
    }),
    /** An earlier note was made by mistake: it counts no longer, and both stay on record. */
    z.strictObject({ kind: z.literal('taken-back'), of: z.int().min(1) }),
  ])
  .meta({ id: 'QuotationNote' });
export type QuotationNote = z.infer<typeof quotationNote>;

/** What the store notes by itself. */
export type StoreNote =
  | { readonly kind: 'issued' }
  | { readonly kind: 'replaced'; readonly byId: string }
  | { readonly kind: 'variation-offered'; readonly variationId: string };

/** One line of a quotation's history: numbered from 1, in the order in which things were noted; never changed. */
export interface QuotationEvent {
  readonly seq: number;
  /** When it was noted, ISO 8601 in UTC. */
  readonly at: string;
  readonly note: QuotationNote | StoreNote;
}
