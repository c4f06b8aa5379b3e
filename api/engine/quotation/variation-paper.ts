import type { VariationAgreed, VariationRefused } from '#model/quotation-notes.ts';
import { vatWithinPence } from '../price/money.ts';
import type { QuotationDocument } from './document.ts';
import { dayWords, pounds, poundsMore } from './said.ts';
import { saidHowWords } from './said-how.ts';
import type { VariationStatus } from './standing.ts';
import { type SumHeads, sumHeads } from './sum-heads.ts';
import type { VariationDocument, VariedSum } from './variation-document.ts';
import type { WorkMoved } from './work-said.ts';

/** A variation with what it changes. */
export interface VariationPaperRequest {
  /** The paper that was accepted, as it was issued. */
  readonly paper: QuotationDocument;
  readonly acceptance: { readonly schemeId: string; readonly on: string } | null;
  readonly variation: {
    readonly number: number;
    /** The day that it was put to the customer, ISO. */
    readonly date: string;
    readonly reason: string;
    readonly beforePence: number;
    readonly afterPence: number;
    /** Null: it was not written down. */
    readonly work: WorkMoved | null;
    readonly parts: readonly { readonly words: string; readonly pence: number }[];
  };
  readonly status: VariationStatus;
  readonly decision: VariationAgreed | VariationRefused | null;
}

const statuses: Readonly<Record<VariationStatus, string>> = {
  offered: 'It waits for your answer. Until you have agreed, we do not go on with this part of the work.',
  agreed: 'You have agreed to it.',
  refused: 'You have not agreed to it: the work stays as it was agreed before.',
  withdrawn: 'We have withdrawn it: it does not count any more.',
};

/** A change of agreed work for the customer, from the paper that was accepted and from what was written down on site. */
export function variationPaper(request: VariationPaperRequest): VariationDocument {
  const { paper, variation, status, decision } = request;
  const { number, date, reason } = variation;
  return {
    title: `Variation ${number}`,
    number,
    jobTitle: paper.jobTitle,
    reference: paper.reference,
    date,
    dateWords: dayWords(date),
    ofWords: ofWords(request),
    demoNote: paper.demoNote,
    firm: paper.firm,
    customer: paper.customer,
    place: paper.place,
    statusWords: statuses[status],
    found: {
      heading: 'What was found, and what is done about it',
      paragraphs: reason.split(/\n+/).filter((line) => line.trim() !== ''),
    },
    work: workPassage(variation.work),
    priceHeading: 'What it does to the price',
    sums: sumsOf(variation, sumHeads(paper)),
    vatWords: vatWords(request),
    howPriced: `Priced at the prices, rates and terms of that ${paper.kind}; only what changes in the work is counted.`,
    photosHeading: 'Photos',
    acceptance: answerForm(paper, number, decision),
    cautions: paper.cautions,
  };
}

function ofWords({ paper, acceptance }: VariationPaperRequest): string {
  const head = `Changes the work of ${paper.kind} ${paper.reference}, revision ${paper.revision}, ${paper.dateWords}`;
  const scheme = paper.schemes.find(({ schemeId }) => schemeId === acceptance?.schemeId);
  if (acceptance === null || scheme === undefined) return `${head}.`;
  return `${head}, accepted on ${dayWords(acceptance.on)}: ${paper.schemes.length === 1 ? '' : `${scheme.heading}, `}${scheme.nickname}.`;
}

/** Of both sides what there is, in sentences. */
function workPassage(work: WorkMoved | null): VariationDocument['work'] {
  if (work === null || (work.before.length === 0 && work.now.length === 0)) return null;
  const said = (head: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : [`${head}: ${lines.map(withoutStop).join('. ')}.`];
  return {
    heading: 'What is done otherwise',
    paragraphs: [...said('As agreed before', work.before), ...said('Now', work.now)],
  };
}

const withoutStop = (line: string): string => line.replace(/\.$/, '');

function sumsOf(
  { parts, beforePence, afterPence }: VariationPaperRequest['variation'],
  { after }: SumHeads,
): readonly VariedSum[] {
  return [
    ...parts.map(({ words, pence }) => ({ words, sumWords: poundsMore(pence), isSum: false })),
    { words: `This change${after}`, sumWords: poundsMore(afterPence - beforePence), isSum: true },
    { words: 'The work as agreed before it', sumWords: pounds(beforePence), isSum: false },
    { words: `The work with it${after}`, sumWords: pounds(afterPence), isSum: true },
  ];
}

/** The VAT of the difference at the rate that was quoted. */
function vatWords({ paper, acceptance, variation }: VariationPaperRequest): string {
  const scheme = paper.schemes.find(({ schemeId }) => schemeId === acceptance?.schemeId) ?? paper.schemes[0];
  const vatPercent = scheme?.price.vatPercent ?? 0;
  if (vatPercent === 0) return 'No VAT is charged.';
  const vatPence = vatWithinPence(variation.afterPence - variation.beforePence, vatPercent);
  return `VAT is in every sum, at ${vatPercent} %: in this change ${poundsMore(vatPence)}.`;
}

function answerForm(
  { firm, kind }: QuotationDocument,
  number: number,
  decision: VariationPaperRequest['decision'],
): VariationDocument['acceptance'] {
  const isNo = decision?.kind === 'variation-refused';
  return {
    heading: decision === null ? 'If you agree' : isNo ? 'Your answer: no' : 'Your answer: yes',
    intro:
      decision === null
        ? [
            `Sign here, or write to ${firm.name} that you agree to variation ${number}: a message will do.`,
            `By this the ${kind} stands with this change, and with no other.`,
          ]
        : [`As it was recorded. ${saidHowWords[decision.how]}.`],
    lines: [
      { label: 'Name', value: decision?.by ?? '' },
      { label: 'Signature', value: '' },
      { label: 'Date', value: decision === null ? '' : dayWords(decision.on) },
    ],
  };
}
