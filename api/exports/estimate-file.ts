import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { estimateJson } from './estimate-json.ts';
import { packingOf } from './packing-of.ts';
import type { Papers } from './papers.ts';

/** What `estimate.json` is made from: a job and the library it was priced with, with the papers of both. */
interface EstimateFileRequest {
  readonly job: Job;
  readonly library: Library;
  readonly papers: Pick<Papers, 'result' | 'chosen'>;
  /** What a search for schemes found; absent: nobody asked. */
  readonly found?: SearchResult | null;
}

/** `estimate.json`, the same wherever it is asked for: the estimate, and for the shown scheme what to buy while things are open. */
export const estimateFile = ({ job, library, papers, found = null }: EstimateFileRequest): string =>
  estimateJson(papers.result, { found, packing: packingOf(job, library, papers) });
