import type { Connection } from '#model/scheme.ts';
import { pounds } from '../written.ts';
import type { Candidate } from './candidate.ts';
import { isSameConnection } from './same-ways.ts';
import type { WhyNotAnswer } from './search-asks.ts';

/** What a connection that breaks no rule comes to, beside the cheapest that was found. */
export interface AskedFor {
  readonly best: Candidate;
  /** Its place among the found ways, from 1; null where it is not one of them. */
  readonly way: number | null;
  readonly words: string;
}

/**
 * The best that has a connection, with what it costs more or less in full than way 1, so that the figures on one screen
 * agree: the answer itself counts from the way that costs least to do.
 *
 * @param found what is listed, cheapest first; empty while that is of another job, and then the answer's own figure stands.
 */
export function askedFor(
  ask: Connection,
  answer: Extract<WhyNotAnswer, { answer: 'money' }>,
  found: readonly Candidate[],
): AskedFor {
  const listed = found.find(({ scheme }) => scheme.connections.some((one) => isSameConnection(one, ask)));
  const isListed = listed !== undefined && listed.totals.grossPence <= answer.with.totals.grossPence;
  const best = isListed ? listed : answer.with;
  const way = isListed ? found.indexOf(listed) + 1 : null;
  const { grossPence } = best.totals;
  const [cheapest] = found;
  const morePence = cheapest === undefined ? answer.morePence : grossPence - cheapest.totals.grossPence;
  return { best, way, words: wordsOf(grossPence, morePence, { way, isBesideFirst: cheapest !== undefined }) };
}

function wordsOf(
  grossPence: number,
  morePence: number,
  { way, isBesideFirst }: { readonly way: number | null; readonly isBesideFirst: boolean },
): string {
  const price = pounds(grossPence);
  if (way === 1) return `It is joined so in way 1, the cheapest: ${price}.`;
  const than = isBesideFirst ? ' than way 1' : '';
  if (morePence > 0) return `It may be done, for ${pounds(morePence)} more${than}: ${price}.`;
  if (morePence < 0)
    return `It may be done, and comes ${pounds(-morePence)} cheaper in full${than}: ${price}.`;
  return `It may be done, for the same ${price}${isBesideFirst ? ' as way 1' : ''}.`;
}
