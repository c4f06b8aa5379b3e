import type { Norms, Overhead } from '#model/library.ts';
import { exactOf, over, times } from './exact.ts';
import { percentOfPence, roundHalfUpPence } from './money.ts';

/** Why an overhead is not put on labour. */
export const OVERHEAD_REFUSED =
  'No overhead is put on labour: the hourly rate is what the customer is charged, so it bears its overhead already.';

/** What of a price an overhead falls on. */
export interface OverheadBase {
  readonly materialsCostPence: number;
  /** Labour and travel at the rate. */
  readonly timePence: number;
  readonly minutes: number;
}

/** So many minutes at so much a day of so many hours, in whole pence. */
function dayPence(minutes: number, pencePerDay: number, hoursPerDay: number): number {
  return roundHalfUpPence(
    over(times(exactOf(minutes), exactOf(pencePerDay)), times(exactOf(60), exactOf(hoursPerDay))),
  );
}

const isCost = ({ rateBasis }: Pick<Norms, 'rateBasis'>): boolean => rateBasis === 'cost';

/**
 * The overhead of a job, whole pence. Where the rate is what an hour costs the firm, a percentage falls on materials, labour and
 * travel, and a sum a day on the hours; where it is what is charged, a percentage falls on materials alone, and a sum
 * a day on nothing. Without an overhead: nought.
 */
export function overheadPence(
  norms: Pick<Norms, 'rateBasis' | 'overhead'>,
  { materialsCostPence, timePence, minutes }: OverheadBase,
): number {
  const { overhead } = norms;
  if (overhead === undefined) return 0;
  if ('percent' in overhead)
    return percentOfPence(
      isCost(norms) ? materialsCostPence + timePence : materialsCostPence,
      overhead.percent,
    );
  return isCost(norms) ? dayPence(minutes, overhead.pencePerDay, overhead.hoursPerDay) : 0;
}

/** The overhead in words; null where nothing of it is in a price. */
export function overheadWords(norms: Pick<Norms, 'rateBasis' | 'overhead'>): string | null {
  const { overhead } = norms;
  if (overhead === undefined) return null;
  if ('percent' in overhead)
    return `Overhead, ${overhead.percent} % on ${isCost(norms) ? 'materials, labour and travel' : 'materials'} at cost`;
  return isCost(norms)
    ? `Overhead, £${(overhead.pencePerDay / 100).toFixed(2)} a day of ${overhead.hoursPerDay} h`
    : null;
}

/** True where an overhead is asked for that the charged rate bears already. */
export const overheadIsRefused = (norms: Pick<Norms, 'rateBasis' | 'overhead'>): boolean =>
  norms.overhead !== undefined && !isCost(norms) && !isNought(norms.overhead);

const isNought = (overhead: Overhead): boolean =>
  ('percent' in overhead ? overhead.percent : overhead.pencePerDay) === 0;

/** What an hour's work comes to, pence: the rate, and the sum a day where it falls on the hours. */
export function hourPence({
  ratePencePerHour,
  rateBasis,
  overhead,
}: Pick<Norms, 'ratePencePerHour' | 'rateBasis' | 'overhead'>): number {
  if (rateBasis !== 'cost' || overhead === undefined || 'percent' in overhead) return ratePencePerHour;
  return ratePencePerHour + overhead.pencePerDay / overhead.hoursPerDay;
}
