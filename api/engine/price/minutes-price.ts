import { percentOfPence, timePence } from './money.ts';
import { overheadPence } from './overhead.ts';
import { soldPence } from './profit.ts';
import type { PriceBuildUp } from './totals.ts';

/** What so many minutes cost the customer in a price: with overhead, profit, contingency and VAT, whole pence. */
export function minutesPence(minutes: number, price: PriceBuildUp): number {
  const { rateBasis, overhead, contingencyPercent, vatPercent, markupPercent, marginPercent } = price;
  const work = timePence(minutes, price.ratePencePerHour);
  const norms = { rateBasis, ...(overhead === null ? {} : { overhead }) };
  const base = work + overheadPence(norms, { materialsCostPence: 0, timePence: work, minutes });
  const sold = price.profitOn === 'all' ? soldPence(base, { markupPercent, marginPercent }) : base;
  const net = sold + percentOfPence(sold, contingencyPercent);
  return net + percentOfPence(net, vatPercent);
}
