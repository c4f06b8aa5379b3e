import { quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import { quote } from '#engine/quote.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { quotationPdf } from './quotation-pdf.ts';

/** The customer's PDF of a job as it stands, of what it offers (`job.quoting`). */
export const quotationOfJob = (job: Job, library: Library, estimate: Estimate): Promise<Uint8Array> => {
  const paper = quote(job, library, estimate);
  return quotationPdf(paper, quotationDrawings(paper, estimate));
};
