import { percentOfPence, timePence } from './money.ts';
import { overheadPence } from './overhead.ts';
import { soldPence } from './profit.ts';
import type { PriceBuildUp } from './totals.ts';
import { daysOf } from './visits.ts';

/**
 * What so many minutes more cost the customer in a price: with the travel of the days that they add, overhead, profit, contingency
 * and VAT, whole pence. Of fewer minutes, below nought, what they save: nought or below.
 */
export function minutesPence(moreMin: number, price: PriceBuildUp): number {
  const { workMin, days, dayHours } = price.visits;
  const further = daysOf(workMin + moreMin, dayHours) - days;
  const minutes = Math.abs(moreMin + further * price.travelMin);
  return Math.sign(moreMin) * soldPenceOf(minutes, price);
}

function soldPenceOf(minutes: number, price: PriceBuildUp): number {
  const { rateBasis, overhead, contingencyPercent, vatPercent, markupPercent, marginPercent } = price;
  const work = timePence(minutes, price.ratePencePerHour);
  const norms = { rateBasis, ...(overhead === null ? {} : { overhead }) };
  const base = work + overheadPence(norms, { materialsCostPence: 0, timePence: work, minutes });
  const sold = price.profitOn === 'all' ? soldPence(base, { markupPercent, marginPercent }) : base;
  const net = sold + percentOfPence(sold, contingencyPercent);
  return net + percentOfPence(net, vatPercent);
}
