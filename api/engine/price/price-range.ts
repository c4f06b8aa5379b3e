import type { LabourTask } from '../labour/task.ts';
import { minutesAsTold } from '../labour/task-minutes.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { agreedTerms } from './agreed-terms.ts';
import { type PriceRequest, priceScheme } from './price-scheme.ts';
import type { PriceRange } from './totals.ts';

type EndOfRange = 'low' | 'high';

/** The field of a task's minutes that each level of the norms reads. */
const minutesAt = { low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const;

function takeoffAt(end: EndOfRange, line: TakeoffLine): TakeoffLine {
  return { ...line, quantity: end === 'low' ? line.lowQuantity : line.highQuantity };
}

/** All levels at the agreed one, for the quantity at an end of the range: what the survey leaves open. */
function labourAt(end: EndOfRange, task: LabourTask, { library, terms }: PriceRequest): LabourTask {
  const quantity = end === 'low' ? task.lowQuantity : task.highQuantity;
  const level = minutesAt[agreedTerms(terms, library.terms).labour];
  const agreedMin = minutesAsTold(task, quantity, library.norms)[level];
  return { ...task, quantity, lowMin: agreedMin, typicalMin: agreedMin, highMin: agreedMin };
}

/**
 * How far the hours may stray from the agreed level by pace, min ≥ 0. Tasks stray independently, so their
 * deviations add as squares: not every task of a job goes slowly at once. Rounded to a hundredth.
 */
export function paceMin(
  end: EndOfRange,
  { labour, terms, library }: Pick<PriceRequest, 'labour' | 'terms' | 'library'>,
): number {
  const agreed = minutesAt[agreedTerms(terms, library.terms).labour];
  const squares = labour.map((task) => ((task[minutesAt[end]] ?? 0) - (task[agreed] ?? 0)) ** 2);
  return Math.round(Math.sqrt(squares.reduce((sum, square) => sum + square, 0)) * 100) / 100;
}

function grossAt(end: EndOfRange, request: PriceRequest): number {
  const atEnd = {
    ...request,
    takeoff: request.takeoff.map((line) => takeoffAt(end, line)),
    labour: request.labour.map((task) => labourAt(end, task, request)),
  };
  const strayMin = paceMin(end, request) * (end === 'low' ? -1 : 1);
  return priceScheme({ ...atEnd, strayMin }).totals.grossPence;
}

/** The two ends of a price's range. */
export type PriceEnds = Omit<PriceRange, 'typicalPence'>;

/**
 * The price at the low and the high ends, VAT included, on the same terms. What the survey leaves open moves
 * quantities all one way; the pace of work moves the hours by the root of the sum of squares of the tasks'
 * own ranges. Low is never above the typical price, nor that above high.
 */
export function priceEnds(request: PriceRequest): PriceEnds {
  return { lowPence: grossAt('low', request), highPence: grossAt('high', request) };
}
