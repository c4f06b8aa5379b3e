import type { Job } from '#model/job.ts';
import { isChosenIn } from '../chosen-in-step.ts';
import { hrefOf, type JobRoute } from '../controllers/router.ts';
import { type Step, steps } from '../job-view.ts';

/** Where each step is from here; what is looked at is let go of in steps that have nothing to do with it. */
export function stepHrefs(job: Job, route: JobRoute): Readonly<Record<Step, string>> {
  const hrefTo = (step: Step): string => {
    const on = isChosenIn(job, step, route.on) ? route.on : null;
    return hrefOf({ ...route, step, compare: false, on });
  };
  // Object.fromEntries forgets that the keys are all steps.
  return Object.fromEntries(steps.map((step) => [step, hrefTo(step)])) as Record<Step, string>;
}
