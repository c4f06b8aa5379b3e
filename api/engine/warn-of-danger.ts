import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoMarksOf, demoNotice } from './demo-marks.ts';
import { type DangerLetter, dangerLetterOf } from './quotation/danger/danger-letter.ts';
import { isDangerous } from './quotation/danger/dangers.ts';
import type { Estimate } from './schemes/estimate-result.ts';
import { stateTag } from './state-tag.ts';

/**
 * The letter to the customer on what was found dangerous: the front door to it, in the browser and in the server. It goes by the
 * house as found, whatever a scheme would put right.
 *
 * @param estimate of this job with this library; its depth is no matter.
 * @returns null where no stop gate is shut by something found.
 */
export function warnOfDanger(job: Job, library: Library, estimate: Estimate): DangerLetter | null {
  const { findings } = estimate.asFound;
  // Most jobs have none, and the name of a job's state takes its time.
  if (!findings.some(isDangerous)) return null;
  return dangerLetterOf({
    job,
    library,
    findings,
    date: estimate.date,
    state: stateTag(job),
    // No price is in it.
    demoNote: demoNotice({ ...demoMarksOf([], library), prices: false, norms: false }),
  });
}
