import type { Job } from '#model/job.ts';
import type { QuotationEvent } from '#model/quotation-notes.ts';
import { withoutPictures } from '../plan/without-pictures.ts';
import type { QuotationDocument } from './document.ts';
import type { QuotationStatus } from './standing.ts';

/** What stands in the place of a name, an address or a title that was erased. */
export const ERASED = '(erased)';

/** Shorter words of a customer's stand in too many places to be theirs. */
const FEWEST_LETTERS = 3;

/** Why a quotation cannot be erased whole; null where it can. */
export function eraseRefusal(status: QuotationStatus): string | null {
  if (status === 'issued')
    return 'It is open: the customer may still take it up. Record their no, or withdraw it and tell them, first.';
  if (status === 'accepted')
    return 'It is accepted: it is the record of what was agreed, and figures of it are kept. The customer’s data alone can be erased.';
  return null;
}

/** Why a customer's data cannot be erased yet; null where it can. */
export function forgetRefusal(
  quotations: readonly { readonly revision: number; readonly status: QuotationStatus }[],
): string | null {
  const open = quotations.find(({ status }) => status === 'issued');
  if (open === undefined) return null;
  return `Revision ${open.revision} is open: record the customer’s answer, or withdraw it, first.`;
}

/**
 * A job without whose it is: name, address, title, notes, what was said to and of the customer, photos and underlays. House,
 * circuits, schemes and terms stay, and so does every figure.
 */
export function withoutCustomer(job: Job): Job {
  const { quoting, built, ...rest } = withoutPictures(job);
  const { notes: _, ...site } = job.site;
  const { start: _start, remarks: _remarks, ...kept } = quoting ?? {};
  return {
    ...rest,
    title: ERASED,
    site: { ...site, customer: ERASED, address: [] },
    ...(quoting === undefined ? {} : { quoting: kept }),
    ...(built === undefined ? {} : { built: { scheme: built.scheme, on: built.on } }),
  };
}

/** Every text of a plain value with these words taken out of it. */
function without<T>(value: T, words: readonly string[]): T {
  if (typeof value === 'string')
    return words.reduce((text, word) => text.replaceAll(word, ERASED), value) as typeof value;
  if (Array.isArray(value)) return value.map((one) => without(one, words)) as typeof value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, without(one, words)])) as T;
}

/** A customer's paper without the customer, wherever in it they are named; every figure stays. */
export function paperWithoutCustomer(
  paper: QuotationDocument,
  { site, title, quoting }: Pick<Job, 'site' | 'title' | 'quoting'>,
): QuotationDocument {
  const words = [site.customer, ...site.address, title, quoting?.remarks ?? '', quoting?.start ?? '']
    .map((word) => word.trim())
    .filter((word) => word.length >= FEWEST_LETTERS)
    .toSorted((a, b) => b.length - a.length);
  return {
    ...without(paper, words),
    firm: paper.firm,
    jobTitle: ERASED,
    customer: { name: ERASED, lines: [] },
    place: [],
  };
}

/** A line of a quotation's history without who said it and in which words. */
export function noteWithoutNames(note: QuotationEvent['note']): QuotationEvent['note'] {
  const nameless = 'by' in note ? { ...note, by: ERASED } : { ...note };
  if ('words' in nameless) delete nameless.words;
  return nameless;
}
