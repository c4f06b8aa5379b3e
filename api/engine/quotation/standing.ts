import type {
  Acceptance,
  QuotationEvent,
  QuotationNote,
  VariationAgreed,
  VariationRefused,
} from '#model/quotation-notes.ts';

/** How a quotation stands with the customer. `replaced`: a later one took its place before it was accepted. */
export type QuotationStatus = 'issued' | 'accepted' | 'declined' | 'withdrawn' | 'replaced';

/** How a variation stands; `offered`: nobody has said yes or no yet. */
export type VariationStatus = 'offered' | 'agreed' | 'refused' | 'withdrawn';

/** What is known of a quotation and of what became of it. */
export interface QuotationHistory {
  readonly offers: readonly { readonly schemeId: string; readonly grossPence: number }[];
  /** In the order of their numbers, from 1. */
  readonly events: readonly QuotationEvent[];
  readonly variations: readonly {
    readonly id: string;
    readonly beforePence: number;
    readonly afterPence: number;
  }[];
}

/** A variation and what was said of it. */
export interface VariationStanding {
  readonly id: string;
  readonly status: VariationStatus;
  /** The yes or the no; null while there is none, and for one that was withdrawn. */
  readonly decision: VariationAgreed | VariationRefused | null;
}

/** Where a quotation has got to. */
export interface Standing {
  readonly status: QuotationStatus;
  readonly acceptance: Acceptance | null;
  readonly replacedById: string | null;
  /** In the order offered. */
  readonly variations: readonly VariationStanding[];
  /** What the accepted work comes to with every agreed variation, VAT included; null while nothing is accepted. */
  readonly contractPence: number | null;
  /** The agreed variation whose job is what is agreed by now; null: the job as it was quoted. */
  readonly restsOn: string | null;
  /** The number of the last yes or no, which may be taken back as a mistake; null where there is none to take back. */
  readonly mayTakeBack: number | null;
}

const decisions: readonly string[] = [
  'accepted',
  'declined',
  'withdrawn',
  'variation-agreed',
  'variation-refused',
  'variation-withdrawn',
];

/** Without what was taken back, and without the taking back. */
function standingEvents(events: readonly QuotationEvent[]): readonly QuotationEvent[] {
  const back = new Set(events.flatMap(({ note }) => (note.kind === 'taken-back' ? [note.of] : [])));
  return events.filter(({ seq, note }) => note.kind !== 'taken-back' && !back.has(seq));
}

function statusOf(
  events: readonly QuotationEvent[],
): Pick<Standing, 'status' | 'acceptance' | 'replacedById'> {
  let now: Pick<Standing, 'status' | 'acceptance' | 'replacedById'> = {
    status: 'issued',
    acceptance: null,
    replacedById: null,
  };
  for (const { note } of events) {
    if (note.kind === 'accepted') now = { ...now, status: 'accepted', acceptance: note };
    else if (note.kind === 'declined' || note.kind === 'withdrawn')
      now = { ...now, status: note.kind, acceptance: null };
    else if (note.kind === 'replaced') now = { ...now, status: 'replaced', replacedById: note.byId };
  }
  return now;
}

function variationStanding(id: string, events: readonly QuotationEvent[]): VariationStanding {
  let now: VariationStanding = { id, status: 'offered', decision: null };
  for (const { note } of events) {
    if (!('variationId' in note) || note.variationId !== id) continue;
    if (note.kind === 'variation-agreed') now = { id, status: 'agreed', decision: note };
    else if (note.kind === 'variation-refused') now = { id, status: 'refused', decision: note };
    else if (note.kind === 'variation-withdrawn') now = { id, status: 'withdrawn', decision: null };
  }
  return now;
}

/** The last yes or no, unless a variation that was priced upon it is still about, or the quotation is replaced. */
function takeBackOf(
  events: readonly QuotationEvent[],
  { status, variations }: Pick<Standing, 'status' | 'variations'>,
): number | null {
  const last = events.filter(({ note }) => decisions.includes(note.kind)).at(-1);
  if (last === undefined || status === 'replaced') return null;
  const isAbout = (id: string): boolean =>
    variations.some((one) => one.id === id && (one.status === 'offered' || one.status === 'agreed'));
  const restsOnIt = events.some(
    ({ seq, note }) => seq > last.seq && note.kind === 'variation-offered' && isAbout(note.variationId),
  );
  return restsOnIt ? null : last.seq;
}

/** Where a quotation has got to, by its history: what was taken back counts no longer. */
export function standingOf({ offers, events, variations }: QuotationHistory): Standing {
  const counting = standingEvents(events);
  const head = statusOf(counting);
  const standings = variations.map(({ id }) => variationStanding(id, counting));
  const agreed = standings.filter(({ status }) => status === 'agreed').map(({ id }) => id);
  const offer = offers.find(({ schemeId }) => schemeId === head.acceptance?.schemeId);
  const addedPence = variations
    .filter(({ id }) => agreed.includes(id))
    .reduce((sum, { beforePence, afterPence }) => sum + afterPence - beforePence, 0);
  return {
    ...head,
    variations: standings,
    contractPence: head.status === 'accepted' && offer !== undefined ? offer.grossPence + addedPence : null,
    restsOn: agreed.at(-1) ?? null,
    mayTakeBack: takeBackOf(counting, { ...head, variations: standings }),
  };
}

const statusWords: Readonly<Record<QuotationStatus, string>> = {
  issued: 'It is open: nobody has said yes or no',
  accepted: 'It is accepted',
  declined: 'It is declined',
  withdrawn: 'It is withdrawn',
  replaced: 'A later one has taken its place',
};

/** Why a variation cannot be offered; null where it can. */
export function variationRefusal({ status, variations }: Standing): string | null {
  if (status !== 'accepted')
    return `${statusWords[status]}; a variation changes work that is agreed, so record the acceptance first.`;
  return variations.some((one) => one.status === 'offered')
    ? 'A variation is open already: record the customer’s answer to it, or withdraw it, first.'
    : null;
}

/** Why a new quotation cannot be issued in the place of this one; null where it can. */
export function revisionRefusal({ status }: Standing): string | null {
  return status === 'accepted'
    ? 'It is accepted: what changes now is a variation of it, agreed with the customer before work goes on.'
    : null;
}

/** Why something cannot be noted of a quotation; null where it can. */
export function noteRefusal(
  standing: Standing,
  note: QuotationNote,
  offers: QuotationHistory['offers'],
): string | null {
  const { status, variations, mayTakeBack } = standing;
  switch (note.kind) {
    case 'accepted':
      // Who said no may think again; what is withdrawn or replaced is no longer on offer.
      if (status !== 'issued' && status !== 'declined') return `${statusWords[status]}.`;
      return offers.some(({ schemeId }) => schemeId === note.schemeId)
        ? null
        : 'It does not offer that scheme.';
    case 'declined':
    case 'withdrawn':
      return status === 'issued' ? null : `${statusWords[status]}.`;
    case 'taken-back':
      return note.of === mayTakeBack
        ? null
        : 'Only the last yes or no can be taken back, while nothing rests on it.';
    default: {
      const one = variations.find(({ id }) => id === note.variationId);
      if (one === undefined) return 'It has no such variation.';
      return one.status === 'offered' ? null : `That variation is ${one.status}.`;
    }
  }
}

/** The number that the next paper of a job gets. @param issued those that went out, the first one first. */
export const nextRevision = (issued: readonly { readonly revision: number }[]): number =>
  (issued.at(-1)?.revision ?? 0) + 1;
