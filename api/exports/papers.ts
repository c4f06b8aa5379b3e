import { drawingStatus } from '#drawing/plan/plan-sheets.ts';
import { demoMarksOf, demoNotice } from '#engine/demo-marks.ts';
import { estimate } from '#engine/estimate.ts';
import { dayWords } from '#engine/quotation/said.ts';
import type { Estimate, SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { stateTag } from '#engine/state-tag.ts';
import type { Built, Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';

/** What a job's papers are made from. */
export interface Papers {
  /** The estimate of the job as it is. */
  readonly result: Estimate;
  /** The scheme asked for, else the cheapest that does not fail, else the first; null when the job has none. */
  readonly chosen: SchemeEstimate | null;
  /** The estimate that workbook and plans are drawn from: `result`, or that of a job without a scheme as it stands. */
  readonly drawn: Estimate;
  /** The scheme of `drawn` that workbook and plans show. */
  readonly shown: SchemeEstimate;
  /** The name of the job's state, which papers for people carry in the place of a count of saves. */
  readonly state: string;
  /** Whose papers they are. */
  readonly firm: string;
  /** How far it has got, in a few words: the status of drawings. */
  readonly status: string;
  /** The work as it was carried out; null where the shown scheme is not, or not yet. */
  readonly built: Built | null;
  /** What they say of a firm and prices that are the demo's still; null when nothing is. */
  readonly demoNote: string | null;
}

/** A job without a scheme is drawn and counted as it stands: nothing joined. */
const withoutScheme = (job: Job): Job => ({
  ...job,
  schemes: [
    { id: 'as-found--', name: 'As found: nothing joined yet', connections: [], remedies: [], locks: [] },
  ],
});

const statusOf = (chosen: SchemeEstimate | null, built: Built | null): string =>
  built !== null
    ? `As built, ${dayWords(built.on)}`
    : chosen === null
      ? 'As found'
      : drawingStatus(chosen.complies);

/**
 * Estimates a job and settles which scheme its workbook and plans show.
 *
 * @param options.schemeId null: the cheapest that does not fail, else the first.
 * @returns null when the job has no scheme of that id.
 */
export function papersOf(
  job: Job,
  library: Library,
  options: { readonly date: string; readonly revision: number; readonly schemeId: string | null },
): Papers | null {
  const { schemeId } = options;
  if (schemeId !== null && !job.schemes.some(({ id }) => id === schemeId)) return null;
  const when = { date: options.date, revision: options.revision };
  const result = estimate(job, library, when);
  const id = schemeId ?? result.cheapestId ?? result.schemes[0]?.id;
  const chosen = result.schemes.find((scheme) => scheme.id === id) ?? null;
  const drawn = chosen === null ? estimate(withoutScheme(job), library, when) : result;
  const shown = chosen ?? drawn.schemes[0];
  if (shown === undefined) throw new Error(`The job "${job.id}" with a scheme gave no estimate.`);
  const demoNote = demoNotice(demoMarksOf(drawn.schemes, library));
  const built = chosen !== null && job.built?.scheme === chosen.id ? job.built : null;
  const status = statusOf(chosen, built);
  return {
    result,
    chosen,
    drawn,
    shown,
    status,
    built,
    state: stateTag(job),
    firm: library.firm.name,
    demoNote,
  };
}
