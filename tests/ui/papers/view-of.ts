import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type DemoName, demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import type { JobView } from '../../../ui/job-view.ts';

/** What sheets read of a view, of a demo job with a scheme shown; null: none. */
export function viewOf(name: DemoName, schemeId: string | null): JobView {
  const estimate = demoEstimate(name);
  const { job } = estimate.asFound.worked;
  const scheme = schemeId === null ? null : schemeOf(estimate, schemeId);
  const shown: Partial<JobView> = {
    job,
    estimate,
    scheme,
    library: demoLibrary(),
    date: '2026-11-27',
    revision: 1,
  };
  // The rest of a view is of the plan and of what is being done to it: no sheet reads it.
  return shown as JobView;
}
