import { estimate } from '#engine/estimate.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { stateTag } from '#engine/state-tag.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { estimateData } from './estimate-json.ts';
import { packingOf } from './packing-of.ts';
import { papersOf } from './papers.ts';

/** How many findings there are of each outcome, and how many stop gates are shut. */
type FindingCounts = Readonly<Record<Outcome | 'stopGates', number>>;

/** What one line of a batch says of a job that could be read; pence and hours as in `estimate.json`. */
export interface BatchJob {
  readonly id: string;
  readonly reference: string;
  /** The name of the job's state, as its papers carry it. */
  readonly state: string;
  readonly asFound: FindingCounts;
  readonly schemes: readonly (Pick<
    SchemeEstimate,
    'id' | 'name' | 'complies' | 'totals' | 'range' | 'messPoints'
  > & { readonly findings: FindingCounts })[];
  readonly cheapestId: string | null;
  /** All that `estimate.json` of the job has; absent unless it was asked for. */
  readonly estimate?: object;
}

function countsOf(findings: readonly Finding[]): FindingCounts {
  const of = (outcome: Outcome): number => findings.filter((finding) => finding.outcome === outcome).length;
  return {
    fails: of('fails'),
    decide: of('decide'),
    'not-proven': of('not-proven'),
    advice: of('advice'),
    passes: of('passes'),
    stopGates: findings.filter(({ stopGate }) => stopGate).length,
  };
}

function summaryOf(job: Job, { asFound, schemes, cheapestId }: Estimate): BatchJob {
  return {
    id: job.id,
    reference: job.reference,
    state: stateTag(job),
    asFound: countsOf(asFound.findings),
    schemes: schemes.map(({ id, name, complies, totals, range, messPoints, findings }) => ({
      id,
      name,
      complies,
      totals,
      range,
      messPoints,
      findings: countsOf(findings),
    })),
    cheapestId,
  };
}

/**
 * One job of a batch. Totals, ranges and findings are those of the whole estimate to the penny; what the line does not carry (the
 * worth of what is open, the pence of remedies) is not worked out for it.
 *
 * @param isFull with `estimate`: then all of it is.
 */
export function batchJob(
  job: Job,
  library: Library,
  { date, isFull }: { readonly date: string; readonly isFull: boolean },
): BatchJob {
  const when = { date, revision: 1 };
  if (!isFull) return summaryOf(job, estimate(job, library, when, { depth: 'live' }));
  const papers = papersOf(job, library, { ...when, schemeId: null });
  if (papers === null) throw new Error(`The job "${job.id}" has no papers.`);
  const packing = packingOf(job, library, papers);
  return { ...summaryOf(job, papers.result), estimate: estimateData(papers.result, { packing }) };
}
