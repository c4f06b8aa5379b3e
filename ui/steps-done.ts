import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Job } from '#model/job.ts';
import { type Step, steps } from './job-view.ts';

/** Something was found, and somebody has told how it hangs together or answered what the checks ask. */
const isFound = (job: Job): boolean =>
  job.circuits.length > 0 &&
  job.points.some(({ status }) => status === 'existing') &&
  (job.legs.length > 0 || job.answers.length > 0);

function isWanted({ points }: Job): boolean {
  const wanted = points.filter(({ status }) => status === 'wanted' || status === 'replaced');
  return wanted.length > 0 && wanted.every(({ place }) => place !== undefined);
}

/** The scheme does something and fails nothing; to leave a wanted point unconnected would be to fail. */
const isWay = ({ complies, worked: { scheme } }: SchemeEstimate): boolean =>
  complies !== 'no' && scheme !== null && scheme.connections.length + scheme.remedies.length > 0;

const isPriced = ({ price, labour }: SchemeEstimate): boolean =>
  price.bill.every(({ priced, quantity }) => priced || quantity === 0) &&
  labour.every(({ typicalMin }) => typicalMin !== null);

/**
 * The steps that the job has got through, as far as they follow each other from the first: a later step counts
 * only when all before it do. Papers are never ticked off: whether they went out is not recorded.
 *
 * @param schemes of the job as they stand; kit and price want one that joins everything and fails nothing.
 */
export function stepsDone(job: Job, schemes: readonly SchemeEstimate[]): ReadonlySet<Step> {
  const ways = schemes.filter(isWay);
  const isDone: Readonly<Record<Step, boolean>> = {
    'as-found': isFound(job),
    wanted: isWanted(job),
    ways: ways.length > 0,
    kit: ways.some(({ price }) => price.bill.length > 0),
    price: ways.some((scheme) => scheme.price.bill.length > 0 && isPriced(scheme)),
    papers: false,
  };
  const firstOpen = steps.findIndex((step) => !isDone[step]);
  return new Set(steps.slice(0, firstOpen));
}
