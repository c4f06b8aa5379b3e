import { exactOf, over, times } from './exact.ts';
import { roundHalfUpPence } from './money.ts';
import type { OpenGap } from './survey-gaps-of.ts';

/** What one gap of the survey makes of the contingency. */
export interface ContingencyPart {
  readonly gap: OpenGap;
  readonly pence: number;
}

/**
 * The contingency shared out among the gaps that make it, in equal parts: no gap is known to be dearer than another. Each part
 * ends where the sum of so many parts, rounded half up, does; so they are whole pence and add up to it exactly.
 */
export function contingencyParts(
  contingencyPence: number,
  gaps: readonly OpenGap[],
): readonly ContingencyPart[] {
  const upTo = (parts: number): number =>
    roundHalfUpPence(over(times(exactOf(contingencyPence), exactOf(parts)), exactOf(gaps.length)));
  return gaps.map((gap, index) => ({ gap, pence: upTo(index + 1) - upTo(index) }));
}
