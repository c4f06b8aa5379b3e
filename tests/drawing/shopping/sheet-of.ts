import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type ShoppingSheet, shoppingSheetOf } from '#drawing/shopping/shopping-sheet.ts';
import { estimate } from '#engine/estimate.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

/** A scheme with the shopping list that it comes to. */
export interface Shopped {
  readonly scheme: SchemeEstimate;
  readonly sheet: ShoppingSheet;
}

/** What is changed of the demo before it is shopped for. */
export interface ShoppedOtherwise {
  readonly job?: (job: Job) => Job;
  readonly library?: (library: Library) => Library;
  /** Absent: the first. */
  readonly schemeId?: string;
}

/** The shopping list of a scheme of 3 Saltglass Row. */
export function saltglassShopped({ job, library, schemeId }: ShoppedOtherwise = {}): Shopped {
  const own = library?.(demoLibrary()) ?? demoLibrary();
  const changed = job?.(demoJob('saltglass-row')) ?? demoJob('saltglass-row');
  const result = estimate(changed, own, { date: '2026-11-25', revision: 1 });
  const scheme = result.schemes.find(({ id }) => id === schemeId) ?? result.schemes[0];
  if (scheme === undefined) throw new Error('no scheme');
  const sheet = shoppingSheetOf({
    reference: changed.reference,
    title: changed.title,
    scheme,
    taken: changed.actuals?.instead,
    prices: own.prices,
    date: '2026-11-25',
    state: 'AAAA-BBBB',
    demoNote: null,
  });
  return { scheme, sheet };
}
