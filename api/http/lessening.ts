import type { QuotationDocument } from '#engine/quotation/document.ts';
import {
  ERASED,
  noteWithoutNames,
  paperWithoutCustomer,
  withoutCustomer,
} from '#engine/quotation/erasure.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import type { Lessening } from '../db/quotation-stores.ts';
import { headingOf } from './readable-job.ts';

/** A job file without its customer; of one that this version cannot read nothing is left, since it might name them anywhere. */
function jobTextWithout(text: string): string {
  const read = readJobText(text);
  return read.ok ? `${JSON.stringify(withoutCustomer(read.job), null, 2)}\n` : '{}\n';
}

/** A frozen document without its customer, who is named as the job file has them that it was made from. */
function documentWithout(text: string, jobText: string): string {
  const read = readJobText(jobText);
  if (!read.ok) return '';
  // Written by `issueQuotation` and by nothing else, as this type.
  return JSON.stringify(paperWithoutCustomer(JSON.parse(text) as QuotationDocument, read.job));
}

/** How the texts of a job go on without its customer. */
export function lesseningOf(job: Job): Lessening {
  const { title, customer } = headingOf(withoutCustomer(job));
  return {
    job: jobTextWithout,
    document: documentWithout,
    note: noteWithoutNames,
    reason: ERASED,
    heading: { title, customer },
  };
}
