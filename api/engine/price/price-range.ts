import type { Norms } from '#model/library.ts';
import type { LabourTask } from '../labour/task.ts';
import { taskMinutes } from '../labour/task-minutes.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { type PriceRequest, priceScheme } from './price-scheme.ts';
import type { PriceRange } from './totals.ts';

type EndOfRange = 'low' | 'high';

function takeoffAt(end: EndOfRange, line: TakeoffLine): TakeoffLine {
  return { ...line, quantity: end === 'low' ? line.lowQuantity : line.highQuantity };
}

function labourAt(end: EndOfRange, task: LabourTask, norms: Norms): LabourTask {
  const quantity = end === 'low' ? task.lowQuantity : task.highQuantity;
  return { ...task, quantity, ...taskMinutes(task.task, quantity, norms) };
}

function grossAt(end: EndOfRange, request: PriceRequest): number {
  const { library, terms } = request;
  return priceScheme({
    ...request,
    takeoff: request.takeoff.map((line) => takeoffAt(end, line)),
    labour: request.labour.map((task) => labourAt(end, task, library.norms)),
    terms: { ...terms, labour: end },
  }).totals.grossPence;
}

/**
 * The price by the low, the agreed and the high ends of quantities and norms, VAT included, on the same
 * terms. Low is never above typical, nor typical above high, whatever a firm's norms say.
 */
export function priceRange(request: PriceRequest): PriceRange {
  const typicalPence = priceScheme(request).totals.grossPence;
  return {
    lowPence: Math.min(typicalPence, grossAt('low', request)),
    typicalPence,
    highPence: Math.max(typicalPence, grossAt('high', request)),
  };
}
