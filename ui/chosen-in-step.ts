import { labelsOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Job } from '#model/job.ts';
import type { Step } from './job-view.ts';
import { thingFacts } from './thing-facts.ts';

/** Whether a thing is there to be told of: an edit, or another scheme, may have taken it away. */
export function isKnown(worked: Worked, id: string | null): id is string {
  return id !== null && (thingFacts(worked, id) !== null || labelsOf(worked)(id) !== id);
}

/** Whether a step works on a chosen thing; where not, whoever goes to the step has done with it. */
export function isChosenIn(job: Job, step: Step, id: string | null): boolean {
  if (id === null) return false;
  const status = job.points.find((point) => point.id === id)?.status;
  const isWanted = status === 'wanted' || status === 'replaced';
  const isLeg = job.legs.some((leg) => leg.id === id);
  const [base] = id.split('/');
  const isNew = job.schemes.some(({ connections }) => connections.some((one) => one.id === base));
  switch (step) {
    case 'as-found':
      return status !== 'wanted' && !isNew;
    case 'wanted':
      return isWanted;
    case 'ways':
      return isWanted || isLeg || isNew;
    case 'kit':
    case 'price':
    case 'papers':
      return false;
  }
}
