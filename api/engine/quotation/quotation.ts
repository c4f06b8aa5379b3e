import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { agreedTerms } from '../price/agreed-terms.ts';
import { dayAfter } from '../price/list/day-count.ts';
import type { Estimate } from '../schemes/estimate-result.ts';
import { aboutOf, acceptanceOf, customerCautions, ownWords, rulesWords } from './about.ts';
import { assumptionsOf } from './assumptions.ts';
import { beforeSending, withheldWords } from './before-sending.ts';
import { cancellationOf, mayCancel } from './cancellation.ts';
import { comparedRows, weighedPassages } from './compared.ts';
import type { BeforeSending, QuotationDocument, QuotedScheme } from './document.ts';
import { feltInRooms } from './felt.ts';
import { glossaryOf } from './glossary.ts';
import { howSaid, nicknameOf, remediesSaid } from './how-said.ts';
import { kindOfPaper } from './kind-of-paper.ts';
import { observationsOf } from './observations.ts';
import { type Offered, offeredSchemes } from './offered.ts';
import { paperworkOf } from './paperwork.ts';
import { customerParty, firmParty } from './parties.ts';
import { paymentOf, unexpectedOf } from './payment.ts';
import { quotedPrice } from './quoted-price.ts';
import { dayWords } from './said.ts';
import { excludedOf, includedOf } from './scope.ts';
import { askedFor } from './thing-said.ts';
import { timeSaid } from './time-said.ts';

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

const isRegistered = ({ terms }: Library): boolean => terms.vat !== 'not-registered';

/** What a paper says of itself until it goes out. */
function standingWords(toDo: readonly BeforeSending[]): Pick<QuotationDocument, 'draft' | 'notIssued'> {
  return toDo.some(({ weight }) => weight === 'must')
    ? { draft: 'Draft: not to be sent or accepted as it stands.' }
    : { draft: null, notIssued: 'Not issued: for reading through. It binds nobody until it is issued.' };
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
        : `You can accept until ${dayWords(validUntil)}`,
    engine: estimate.engine,
    edition: estimate.edition,
    rulesWords: rulesWords(estimate.edition),
    firm: firmParty(library.firm, isRegistered(library)),
    customer: customerParty(job),
    place: job.site.address,
    asked: [...askedFor(estimate.asFound.worked, library.terms), ...ownWords(job)],
  };
}

/** A scheme as it is offered. */
function quotedScheme(
  { letter, scheme }: Offered,
  {
    library,
    kind,
    alone,
  }: { readonly library: Library; readonly kind: QuotationDocument['kind']; readonly alone: boolean },
): QuotedScheme {
  return {
    schemeId: scheme.id,
    letter,
    heading: alone ? 'The work' : `Option ${letter}`,
    nickname: nicknameOf(scheme),
    how: howSaid(scheme),
    youGet: remediesSaid(scheme),
    felt: feltInRooms(scheme.worked),
    time: timeSaid(scheme),
    hours: scheme.totals.hours,
    visits: scheme.price.visits.count,
    price: quotedPrice(kind, scheme, isRegistered(library)),
    withheld: withheldWords(scheme),
  };
}

/**
 * The customer's paper of a job: the schemes that it offers (`job.quoting`, three at most), in words and sums. Equal
 * arguments give equal documents. What the firm or the job has not said stands as "to be agreed", and what has to be
 * seen to first is in `beforeSending`.
 */
export function quotationOf(request: QuotationRequest): QuotationDocument {
  const { job, library, estimate, demoNote } = request;
  const offered = offeredSchemes(job, estimate);
  const { kind, title, kindWords, reason } = kindOfPaper(
    agreedTerms(job.terms, library.terms),
    offered.map(({ scheme }) => scheme.complies),
  );
  const alone = offered.length === 1;
  const schemes = offered.map((one) => quotedScheme(one, { library, kind, alone }));
  const head = headOf(request);
  const toDo = beforeSending({ job, library, offered, reason, demoNote, date: estimate.date });
  const grossPences = schemes.map(({ price }) => price.grossPence);
  const paper = {
    ...head,
    kind,
    title,
    kindWords,
    ...standingWords(toDo),
    schemes,
    compared: comparedRows(offered, schemes),
    weighed: weighedPassages(offered),
    included: includedOf(offered),
    excluded: excludedOf(offered),
    assumed: assumptionsOf(offered),
    extras: observationsOf(offered),
    unexpected: unexpectedOf(kind),
    payment: paymentOf(library.firm, schemes),
    papers: paperworkOf(offered, library.firm, job.site.nation),
    about: aboutOf(library.firm, isRegistered(library), job.quoting),
    cautions: customerCautions,
    cancellation: mayCancel(job.quoting, grossPences)
      ? cancellationOf({
          firm: library.firm,
          customer: head.customer,
          reference: job.reference,
          quoting: job.quoting,
          schemes,
        })
      : null,
    acceptance: acceptanceOf(
      { kind, validWords: head.validWords },
      schemes.map(({ letter }) => letter),
      library.firm,
    ),
  };
  return { ...paper, glossary: glossaryOf(paper), beforeSending: toDo };
}
