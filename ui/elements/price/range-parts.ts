import { minutesPence } from '#engine/price/minutes-price.ts';
import { paceMin } from '#engine/price/price-range.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Library } from '#model/library.ts';

/** One thing that a range is made of. */
export interface RangePart {
  readonly words: string;
  /** What of the range it accounts for, VAT included; the parts of a range add up to its width. */
  readonly pence: number;
  /** What is lit for it. */
  readonly subjects: readonly string[];
}

type Priced = Pick<SchemeEstimate, 'range' | 'openQuestions' | 'labour' | 'price' | 'worked'>;

/**
 * What a price's range is made of: how fast the work goes, each open question by what settling it would narrow,
 * and the rest, which is of lengths and quantities that no one question settles; below nothing where questions
 * share a part, so that each alone narrows it. Nothing where low and high are the same.
 */
export function rangeParts(
  { range, openQuestions, labour, price, worked }: Priced,
  library: Library,
): readonly RangePart[] {
  const width = range.highPence - range.lowPence;
  if (width <= 0) return [];
  const request = { labour, terms: worked.job.terms, library };
  const pace = minutesPence(paceMin('high', request), price) - minutesPence(-paceMin('low', request), price);
  const asked = openQuestions.map(({ words, worthPence, subjects }) => ({
    words,
    pence: worthPence,
    subjects,
  }));
  const parts = [
    {
      words: 'How fast the work goes: the norms’ low and high minutes, task by task',
      pence: pace,
      subjects: [],
    },
    ...asked,
  ];
  const rest = width - parts.reduce((sum, { pence }) => sum + pence, 0);
  const words =
    rest < 0
      ? 'Counted more than once above: settling one settles part of another'
      : 'The rest: lengths and quantities that no one question settles';
  return [...parts, { words, pence: rest, subjects: [] }].filter(({ pence }) => pence !== 0);
}
