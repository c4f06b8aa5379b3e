import type { Norms } from '#model/library.ts';
import { twelveDigits } from '../takeoff/twelve-digits.ts';
import { normOf } from './norm-of.ts';
import type { LabourTask } from './task.ts';

/** How much one unit of a task disturbs the house, in the norms' points; 0 where no norm tells. */
export function unitMess(task: string, norms: Norms): number {
  return normOf(task, norms)?.mess ?? 0;
}

/**
 * How much a list of work disturbs the house: points by the firm's norms of the quantities as priced, to a tenth. What
 * may turn out to be needed does not count, nor does a task without a norm or one whose norm tells no disturbance.
 */
export function messPoints(tasks: readonly Pick<LabourTask, 'task' | 'quantity'>[], norms: Norms): number {
  const points = tasks.reduce((sum, { task, quantity }) => sum + quantity * unitMess(task, norms), 0);
  return Math.round(twelveDigits(points * 10)) / 10;
}
