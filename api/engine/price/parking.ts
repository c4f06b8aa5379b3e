import type { Library } from '#model/library.ts';
import type { AgreedTerms } from './agreed-terms.ts';
import { poundsText } from './list/pounds-text.ts';
import type { OtherLine } from './totals.ts';
import type { Visits } from './visits.ts';

/** The library's sum for a day's parking. */
export const PARKING_SUM = 'parking';

/** Parking as a job bears it. */
export interface Parking {
  readonly days: number;
  /** A day, as the library has it; null: it has no such sum. */
  readonly pencePerDay: number | null;
  /** True where it is paid at each visit, so that the days follow the hours. */
  readonly byVisits: boolean;
}

/** What parking the terms ask for; null: none. */
export function parkingOf({ parking }: AgreedTerms, { count }: Visits, { norms }: Library): Parking | null {
  if (parking === null || parking === 0) return null;
  const sum = norms.sums.find((one) => one.sum === PARKING_SUM);
  return {
    days: parking === 'each-visit' ? count : parking,
    pencePerDay: sum?.pence ?? null,
    byVisits: parking === 'each-visit',
  };
}

/** The line of it among the other sums: whole days at so many pence, so that nothing is rounded. */
export function parkingLine({ days, pencePerDay }: Parking): OtherLine {
  const words = `Parking, ${days} ${days === 1 ? 'day' : 'days'}`;
  return pencePerDay === null
    ? {
        ...{ sum: PARKING_SUM, description: `${words}: not priced, the library has no such sum` },
        ...{ pence: 0, isUnpriced: true },
      }
    : { sum: PARKING_SUM, description: `${words} at £${poundsText(pencePerDay)}`, pence: days * pencePerDay };
}
