import type { Norms } from '#model/library.ts';
import type { AgreedTerms } from './agreed-terms.ts';
import { timePence } from './money.ts';
import { overheadPence, overheadWords } from './overhead.ts';
import { profitOn, soldPence } from './profit.ts';
import type { OtherLine } from './totals.ts';
import type { Visits } from './visits.ts';

/** The work of a job at cost. */
export interface WorkAtCost {
  readonly materialsCostPence: number;
  readonly labourMin: number;
  /** How often the job is travelled to, and why. */
  readonly visits: Visits;
}

/** The same as it is sold: the selling figures, and what overhead and profit on all add as lines of their own. */
export interface SoldWork {
  readonly materialsPence: number;
  readonly labourPence: number;
  /** Travel, overhead and profit on all, those that are not nought. */
  readonly lines: readonly OtherLine[];
  readonly overheadPence: number;
  /** In the materials, or a line of its own. */
  readonly profitPence: number;
  /** Materials, labour, travel and overhead: what the profit on all is put on, and what the firm spends on them. */
  readonly basePence: number;
}

function profitWords({ markupPercent, marginPercent }: AgreedTerms): string {
  return marginPercent === null
    ? `Mark-up, ${markupPercent ?? 0} % on all of that`
    : `Margin, ${marginPercent} % of the selling price of all of that`;
}

/** Travel in words; of more visits than one also what they are for. */
function travelWords({ travelMin }: AgreedTerms, { count, days, returns, dayHours }: Visits): string {
  if (count === 1) return `Travel, ${travelMin} min`;
  const work = days === 1 ? '1 day' : `${days} days of ${dayHours} h`;
  const reasons = returns === 0 ? work : `${work}, and to come back for the plaster`;
  return `Travel, ${count} × ${travelMin} min: ${reasons}`;
}

/** Materials, labour and travel with the overhead that they bear, and the profit that is put on materials or on all. */
export function soldWork(
  { materialsCostPence, labourMin, visits }: WorkAtCost,
  norms: Norms,
  agreed: AgreedTerms,
): SoldWork {
  const rate = norms.ratePencePerHour;
  const labourPence = timePence(labourMin, rate);
  const travelMin = agreed.travelMin * visits.count;
  const travelPence = timePence(travelMin, rate);
  const overhead = overheadPence(norms, {
    materialsCostPence,
    timePence: labourPence + travelPence,
    minutes: labourMin + travelMin,
  });
  const basePence = materialsCostPence + labourPence + travelPence + overhead;
  const onAll = profitOn(agreed, norms) === 'all';
  const materialsPence = onAll ? materialsCostPence : soldPence(materialsCostPence, agreed);
  const profitPence = onAll ? soldPence(basePence, agreed) - basePence : materialsPence - materialsCostPence;
  const line = (sum: string, description: string, pence: number): OtherLine => ({ sum, description, pence });
  return {
    materialsPence,
    labourPence,
    lines: [
      ...(travelMin === 0 ? [] : [line('travel', travelWords(agreed, visits), travelPence)]),
      ...(overhead === 0 ? [] : [line('overhead', overheadWords(norms) ?? 'Overhead', overhead)]),
      ...(onAll && profitPence !== 0 ? [line('profit', profitWords(agreed), profitPence)] : []),
    ],
    overheadPence: overhead,
    profitPence,
    basePence,
  };
}
