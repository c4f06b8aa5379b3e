import type { Norms } from '#model/library.ts';
import type { LabourTask } from '../labour/task.ts';
import type { AgreedTerms } from './agreed-terms.ts';
import { decimalOf, exactOf, over } from './exact.ts';

/** A working day where neither job nor firm says how long its own is, hours. Common practice, no source. */
export const USUAL_DAY_HOURS = 8;

/** Parts of a day that are not told apart: a millionth. The workbook rounds alike. */
const DAY_DECIMALS = 6;

/** How often a job is travelled to, and why. */
export interface Visits {
  /** Work in one day. */
  readonly dayHours: number;
  /** Minutes of work on these days: all but what is come back for. */
  readonly workMin: number;
  /** Days that the work fills, the last one begun; at least one. */
  readonly days: number;
  /** Times that plaster is come back for, each a visit of its own. */
  readonly returns: number;
  /** Days and returns together: travel is paid for each. */
  readonly count: number;
}

/** Hours of work in a day: as the terms say; else those that a day's overhead is spread over; else the usual ones. */
export function dayHoursOf({ dayHours }: Pick<AgreedTerms, 'dayHours'>, { overhead }: Norms): number {
  if (dayHours !== null) return dayHours;
  return overhead !== undefined && 'hoursPerDay' in overhead ? overhead.hoursPerDay : USUAL_DAY_HOURS;
}

/**
 * Days that so many minutes of work fill, the last one begun; at least one. Hours count to the hundredth, as they are shown:
 * what is 8.00 hours on paper is one day of 8.
 */
export function daysOf(workMin: number, dayHours: number): number {
  const hours = decimalOf(over(exactOf(Math.max(0, workMin)), exactOf(60)), 2);
  return Math.max(1, Math.ceil(decimalOf(over(exactOf(hours), exactOf(dayHours)), DAY_DECIMALS)));
}

/** Visits by the days that the work fills, with those that plaster is come back for. */
export function visitsOf(
  labour: readonly (Pick<LabourTask, 'task' | 'quantity'> & { readonly minutes: number })[],
  labourMin: number,
  dayHours: number,
): Visits {
  const returning = labour.filter(({ task }) => task === 'return-visit');
  const returns = returning.reduce((sum, { quantity }) => sum + Math.ceil(quantity), 0);
  const returnMin = returning.reduce((sum, { minutes }) => sum + minutes, 0);
  const workMin = Math.max(0, decimalOf(exactOf(labourMin - returnMin), DAY_DECIMALS));
  const days = daysOf(workMin, dayHours);
  return { dayHours, workMin, days, returns, count: days + returns };
}
