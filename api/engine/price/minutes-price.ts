import { percentOfPence, timePence } from './money.ts';
import { overheadPence } from './overhead.ts';
import { soldPence } from './profit.ts';
import type { PriceBuildUp } from './totals.ts';
import { daysOf } from './visits.ts';

/**
 * What so many minutes more cost the customer in a price: with the travel and the parking of the days that they add, overhead, profit, contingency
 * and VAT, whole pence. Of fewer minutes, below nought, what they save: nought or below.
 */
export function minutesPence(moreMin: number, price: PriceBuildUp): number {
  const { workMin, days, dayHours } = price.visits;
  const further = daysOf(workMin + moreMin, dayHours) - days;
  const minutes = Math.abs(moreMin + further * price.travelMin);
  const parkingPence = price.parking?.byVisits === true ? (price.parking.pencePerDay ?? 0) : 0;
  return Math.sign(moreMin) * soldPenceOf(minutes, Math.abs(further) * parkingPence, price);
}

function soldPenceOf(minutes: number, parkingPence: number, price: PriceBuildUp): number {
  const { rateBasis, overhead, contingencyPercent, vatPercent, markupPercent, marginPercent } = price;
  const time = timePence(minutes, price.ratePencePerHour);
  const norms = { rateBasis, ...(overhead === null ? {} : { overhead }) };
  const base = time + overheadPence(norms, { materialsCostPence: 0, timePence: time, minutes });
  const sold = price.profitOn === 'all' ? soldPence(base, { markupPercent, marginPercent }) : base;
  const work = sold + parkingPence;
  const net = work + percentOfPence(work, contingencyPercent);
  return net + percentOfPence(net, vatPercent);
}
