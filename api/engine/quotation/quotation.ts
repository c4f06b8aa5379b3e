import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { agreedTerms } from '../price/agreed-terms.ts';
import { dayAfter } from '../price/list/day-count.ts';
import type { Estimate } from '../schemes/estimate-result.ts';
import type { QuotationDocument, QuotedPrice, QuotedScheme } from './document.ts';
import { kindOfPaper } from './kind-of-paper.ts';
import { type Offered, offeredSchemes } from './offered.ts';
import { customerParty, firmParty } from './parties.ts';
import { quotedPrice } from './quoted-price.ts';
import { dayWords } from './said.ts';

/** What a quotation is made from. */
export interface QuotationRequest {
  readonly job: Job;
  readonly library: Library;
  /** Of that job with that library, in whole: with the worth of open questions and the pence of remedies. */
  readonly estimate: Estimate;
  /** Of the paper, 1 for the first. */
  readonly revision: number;
  /** The name of the job's state. */
  readonly state: string;
  /** What papers say of a demo library; null: nothing. */
  readonly demoNote: string | null;
}

/** What the head of the paper says. */
function headOf({ job, library, estimate, revision, state, demoNote }: QuotationRequest) {
  const { validDays } = agreedTerms(job.terms, library.terms);
  const validUntil = validDays === null ? null : dayAfter(estimate.date, validDays);
  return {
    demoNote,
    reference: job.reference,
    jobTitle: job.title,
    revision,
    state,
    date: estimate.date,
    dateWords: dayWords(estimate.date),
    validUntil,
    validWords:
      validUntil === null
        ? 'How long it holds: to be agreed'
        : `Can be accepted until ${dayWords(validUntil)}`,
    engine: estimate.engine,
    edition: estimate.edition,
    editionNote: estimate.editionNote,
    firm: firmParty(library.firm, isRegistered(library)),
    customer: customerParty(job),
    place: job.site.address,
  };
}

const isRegistered = ({ terms }: Library): boolean => terms.vat !== 'not-registered';

/** A scheme as it is offered. */
function schemeOf({ letter, scheme }: Offered, alone: boolean, price: QuotedPrice): QuotedScheme {
  return {
    schemeId: scheme.id,
    letter,
    heading: alone ? 'The work' : `Option ${letter}`,
    how: '',
    youGet: [],
    felt: [],
    feltEverywhere: [],
    time: [],
    hours: scheme.totals.hours,
    visits: scheme.price.visits,
    price,
    withheld: null,
  };
}

/**
 * The customer's paper of a job: the schemes that it offers (`job.quoting`, three at most), in words and sums. Equal
 * arguments give equal documents. What the firm or the job has not said stands as "to be agreed", and what has to be
 * seen to first is in `beforeSending`.
 */
export function quotationOf(request: QuotationRequest): QuotationDocument {
  const { job, library, estimate } = request;
  const offered = offeredSchemes(job, estimate);
  const { kind, title, kindWords } = kindOfPaper(
    agreedTerms(job.terms, library.terms),
    offered.map(({ scheme }) => scheme.complies),
  );
  return {
    ...headOf(request),
    kind,
    title,
    kindWords,
    draft: null,
    asked: [],
    schemes: offered.map((one) =>
      schemeOf(one, offered.length === 1, quotedPrice(kind, one.scheme, isRegistered(library))),
    ),
    compared: [],
    weighed: [],
    included: [],
    excluded: [],
    assumed: [],
    extras: [],
    unexpected: { heading: 'If something unexpected is found', paragraphs: [] },
    payment: { heading: 'Payment', paragraphs: [] },
    papers: [],
    about: { heading: 'About us', paragraphs: [] },
    cautions: [],
    cancellation: null,
    acceptance: { heading: 'Acceptance', intro: [], lines: [] },
    glossary: [],
    beforeSending: [],
  };
}
