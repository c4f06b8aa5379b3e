import { quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import { quote } from '#engine/quote.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { quotationPdf } from './quotation-pdf.ts';

/** What a job's paper is made from, and its number: 1 where none has gone out. */
interface OfJob {
  readonly job: Job;
  readonly library: Library;
  readonly estimate: Estimate;
  readonly revision?: number;
}

/** The customer's PDF of a job as it stands, of what it offers (`job.quoting`). */
export const quotationOfJob = ({ job, library, estimate, revision = 1 }: OfJob): Promise<Uint8Array> => {
  const paper = quote(job, library, estimate, revision);
  return quotationPdf(paper, quotationDrawings(paper, estimate));
};
