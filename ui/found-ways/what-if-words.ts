import type { LabelOf } from '#drawing/label-of.ts';
import { pounds } from '../written.ts';
import { madeOf } from './made-of.ts';
import type { WhatIfAnswer } from './search-asks.ts';

/** More or less money, in words. */
export const differenceWords = (morePence: number): string =>
  morePence === 0 ? 'the price stays' : `${pounds(Math.abs(morePence))} ${morePence > 0 ? 'more' : 'less'}`;

/** What the search finds as a leg is taken to run now, and what it would find if the leg ran elsewhere. */
export function whatIfWords({ before, after }: WhatIfAnswer, labelOf: LabelOf): readonly string[] {
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
