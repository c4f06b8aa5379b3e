import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoMarksOf, demoNotice } from './demo-marks.ts';
import type { QuotationDocument } from './quotation/document.ts';
import { offeredSchemes } from './quotation/offered.ts';
import { quotationOf } from './quotation/quotation.ts';
import type { Estimate } from './schemes/estimate-result.ts';
import { stateTag } from './state-tag.ts';

/**
 * The customer's paper of a job that is estimated: the front door to quotations, in the browser and in the server.
 *
 * @param estimate of this job with this library, in whole.
 * @param revision of the paper, 1 for the first.
 */
export function quote(job: Job, library: Library, estimate: Estimate, revision = 1): QuotationDocument {
  const offered = offeredSchemes(job, estimate).map(({ scheme }) => scheme);
  const demoNote = demoNotice(demoMarksOf(offered, library));
  return quotationOf({ job, library, estimate, revision, state: stateTag(job), demoNote });
}
