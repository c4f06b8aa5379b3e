import { type Exact, exactOf, minus, over, plus, roundHalfUp, times } from './exact.ts';

/**
 * Rounds a sum of money to whole pence, halves up. The price policy rounds at these places, in this order,
 * and nowhere else:
 *
 * 1. *line cost*: each line of the bill, as charged, value added tax taken off or put on where the list and
 *    the firm ask for it;
 * 2. *materials*: the mark-up, once, on the sum of the line costs;
 * 3. *labour*: the minutes of all tasks at the hourly rate, once;
 * 4. *travel*: the travelling minutes at the same rate, once;
 * 5. *overhead*: its percentage on the cost it falls on, or the hours at so much a day, once;
 * 6. *profit on all*: the mark-up, once, on materials, labour, travel and overhead together, in place of 2;
 * 7. *contingency*: its percentage, once, on materials, labour and other sums, and its parts at the end of each;
 * 8. *VAT*: once, on the net total (never line by line);
 * 9. *deposit*: its percentage, once, on the total with VAT;
 * 10. *VAT within*: of the difference that a variation makes, once; it is told, and charged by nothing.
 *
 * Beside the price, *outlay*: so many of an offer, once each (`buying/`), and its VAT, once, where the firm bears it; no job is charged by it.
 *
 * Source: HMRC manual VATREC12010 lets a trader round the invoice total; half up and once on the net is our
 * policy, because a householder cannot recover what is rounded.
 */
export function roundHalfUpPence(value: Exact): number {
  return roundHalfUp(value);
}

const hundred = exactOf(100);

/** So many percent of a sum of pence, in whole pence. */
export function percentOfPence(pence: number, percent: number): number {
  return roundHalfUpPence(over(times(exactOf(pence), exactOf(percent)), hundred));
}

/**
 * The value added tax within a sum that has it in, at so many percent, in whole pence: the sum times percent / (100 + percent).
 * Source: the VAT fraction of HMRC's VAT guide (VAT Notice 700), from memory: 1/6 at 20 %, 1/21 at 5 %.
 */
export function vatWithinPence(grossPence: number, vatPercent: number): number {
  const percent = exactOf(vatPercent);
  return roundHalfUpPence(over(times(exactOf(grossPence), percent), plus(hundred, percent)));
}

/** A cost with its mark-up, percent on cost, in whole pence. */
export function withMarkupPence(costPence: number, markupPercent: number): number {
  return roundHalfUpPence(over(times(exactOf(costPence), plus(hundred, exactOf(markupPercent))), hundred));
}

/** A cost sold at a margin, percent of the selling price and below 100, in whole pence. */
export function atMarginPence(costPence: number, marginPercent: number): number {
  return roundHalfUpPence(over(times(exactOf(costPence), hundred), minus(hundred, exactOf(marginPercent))));
}

/** Minutes at a rate by the hour, in whole pence. */
export function timePence(minutes: number, ratePencePerHour: number): number {
  return roundHalfUpPence(over(times(exactOf(minutes), exactOf(ratePencePerHour)), exactOf(60)));
}
