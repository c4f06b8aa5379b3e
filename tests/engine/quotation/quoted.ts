import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { quote } from '#engine/quote.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Job, Quoting } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { type DemoName, demoJob } from '../demo-jobs/demo-estimates.ts';

/** A job's paper with the estimate that it was made of. */
export interface Quoted {
  readonly job: Job;
  readonly library: Library;
  readonly result: Estimate;
  readonly paper: QuotationDocument;
}

/** A job quoted on a fixed date. */
export function quoted(job: Job, library: Library = demoLibrary()): Quoted {
  const result = estimate(job, library, { date: '2026-11-25', revision: 1 });
  return { job, library, result, paper: quote(job, library, result) };
}

/** A demo job that offers these schemes. */
export const offering = (name: DemoName, quoting: Quoting): Job => ({ ...demoJob(name), quoting });

/** Every text of a plain value. */
export function textOf(value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value !== 'object' || value === null) return '';
  return Object.values(value).map(textOf).join('\n');
}
