import type { LabourTask } from '../labour/task.ts';
import type { PriceBuildUp } from './totals.ts';

/** Lines that count as nothing because nobody said what they cost. */
export interface Unpriced {
  /** Of the bill; what only may turn out to be needed is not among them. */
  readonly materials: number;
  /** Of the labour: tasks that the firm has no minutes for. */
  readonly tasks: number;
  /** Of the other sums: notification, parking. */
  readonly sums: number;
}

/** How many lines of a priced scheme have no price. */
export const unpricedOf = ({
  price,
  labour,
}: {
  readonly price: Pick<PriceBuildUp, 'bill' | 'other'>;
  readonly labour: readonly Pick<LabourTask, 'typicalMin'>[];
}): Unpriced => ({
  materials: price.bill.filter(({ priced, quantity }) => !priced && quantity !== 0).length,
  tasks: labour.filter(({ typicalMin }) => typicalMin === null).length,
  sums: price.other.filter(({ isUnpriced }) => isUnpriced === true).length,
});
