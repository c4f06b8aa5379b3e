import type { Norms } from '#model/library.ts';
import { twelveDigits } from '../takeoff/twelve-digits.ts';
import { normOf } from './norm-of.ts';
import type { LabourTask } from './task.ts';

/** Minutes of a quantity of work at the three levels; null at all of them without a norm. */
export interface TaskMinutes {
  readonly lowMin: number | null;
  readonly typicalMin: number | null;
  readonly highMin: number | null;
}

/** Minutes of a quantity at so many for one. Hundredths are kept: the same step as the workbook's own formula. */
export function minutesOf(quantity: number, unitMin: number): number {
  return Math.round(twelveDigits(quantity * unitMin * 100)) / 100;
}

/** The minutes that a quantity of one task takes by minutes of its own, else by the firm's norms. */
export function minutesAsTold(
  { task, own }: Pick<LabourTask, 'task' | 'own'>,
  quantity: number,
  norms: Norms,
): TaskMinutes {
  if (own === undefined) return taskMinutes(task, quantity, norms);
  return {
    lowMin: minutesOf(quantity, own.lowMin),
    typicalMin: minutesOf(quantity, own.typicalMin),
    highMin: minutesOf(quantity, own.highMin),
  };
}

/** The minutes that a quantity of one task takes by the firm's norms. */
export function taskMinutes(task: string, quantity: number, norms: Norms): TaskMinutes {
  const norm = normOf(task, norms);
  if (norm === null) return { lowMin: null, typicalMin: null, highMin: null };
  return {
    lowMin: minutesOf(quantity, norm.lowMin),
    typicalMin: minutesOf(quantity, norm.typicalMin),
    highMin: minutesOf(quantity, norm.highMin),
  };
}
