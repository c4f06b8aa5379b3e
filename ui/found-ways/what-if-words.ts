import type { LabelOf } from '#drawing/label-of.ts';
import { pounds } from '../written.ts';
import type { Candidate } from './candidate.ts';
import { madeOf } from './made-of.ts';
import type { WhatIfAnswer } from './search-asks.ts';

/** More or less money, in words. */
export const differenceWords = (morePence: number): string =>
  morePence === 0 ? 'the price stays' : `${pounds(Math.abs(morePence))} ${morePence > 0 ? 'more' : 'less'}`;

const cheaper = (one: Candidate | null, other: Candidate | null): Candidate | null =>
  one !== null && other !== null && other.totals.grossPence < one.totals.grossPence ? other : (one ?? other);

/**
 * What the search finds as a leg is taken to run now, and what it would find if the leg ran elsewhere.
 *
 * @param way1 the cheapest of the ways that are listed; null where none is of the job as it is. A question looks at fewer
 * schemes than a search does, and no figure is to be given beside a card that has a better one.
 */
export function whatIfWords(
  { before: asked, after }: WhatIfAnswer,
  labelOf: LabelOf,
  way1: Candidate | null,
): readonly string[] {
  const before = cheaper(asked, way1);
  const best = (candidate: NonNullable<WhatIfAnswer['before']>): string =>
    `${pounds(candidate.totals.grossPence)}, ${madeOf(candidate.scheme, labelOf)}`;
  if (after === null) return ['If it ran there, no way that fails no check would be found.'];
  if (before === null) return [`If it ran there, a way would be found: ${best(after)}.`];
  const difference = differenceWords(after.totals.grossPence - before.totals.grossPence);
  const isSame = madeOf(before.scheme, labelOf) === madeOf(after.scheme, labelOf);
  return [
    `As it is taken to run now: ${best(before)}.`,
    isSame
      ? `If it ran there: the same way, ${difference} (${pounds(after.totals.grossPence)}).`
      : `If it ran there: ${best(after)}; ${difference}.`,
  ];
}
