import type { LabelOf } from '#drawing/label-of.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { counted, listed, pounds } from '../written.ts';
import type { Candidate } from './candidate.ts';
import type { FirstAnswer, Found } from './search-asks.ts';

/** Disturbance in words: "18.5 points". */
export const messWords = (points: number): string => counted(Math.round(points * 10) / 10, 'point');

/** What the works cost is, in the words that stand behind it. */
const worksWords =
  'materials and work over what every way needs alike, before whole packs, minimum charges, mark-up and VAT';

const least = (candidates: readonly Candidate[]): Candidate | null =>
  candidates.reduce<Candidate | null>(
    (best, one) => (best === null || one.worksPence < best.worksPence ? one : best),
    null,
  );

/** What a proof rests on where a way cuts cables that nobody has followed; nothing where it cuts none. */
const ifFound = ({ restsOn }: Pick<Candidate, 'restsOn'>): string =>
  restsOn.length === 0 ? '' : ', as far as the old cable that it cuts is found where it is assumed to run';

/**
 * What to fall back on where the cheapest to do is jointed into old cable that nobody has followed: the best without, with
 * its price; null where it is not.
 */
export function fallbackWords({ fallback, candidates }: Found): string | null {
  if (fallback === null) return null;
  const at = candidates.findIndex(({ scheme }) => scheme.id === fallback.schemeId);
  const without = candidates[at];
  const lead = 'The cheapest to do cuts old cable that nobody has followed, so it has to be located first.';
  if (without === undefined) return `${lead} Without such a joint no way was found that fails no check.`;
  const best = fallback.optimal ? 'the cheapest to do' : 'the best found';
  return `${lead} If it is not found, ${best} without such a joint is way ${at + 1}, ${pounds(without.totals.grossPence)}.`;
}

/** What a way rests on, for its card: the old cables that it cuts by a guess; null where there is none. */
export function restsWords({ restsOn }: Pick<Candidate, 'restsOn'>, labelOf: LabelOf): string | null {
  if (restsOn.length === 0) return null;
  const legs = listed(restsOn.map((id) => labelOf(id).replace(/^Leg /, '')));
  return `Rests on finding the old cable ${legs} where it is assumed to run: locating it is in the price. Until it is found this way is not certain.`;
}

/** Whether the best was proved to be the best, or by how much it may be beaten. */
export function provedWords({ optimal, boundPence, gap, examined, candidates }: Found): string {
  const looked = `${examined.toLocaleString('en-GB')} ${examined === 1 ? 'scheme was' : 'schemes were'} looked at`;
  const best = least(candidates);
  if (best === null)
    return optimal
      ? `Every way that is searched fails some check, and none is left to try: ${looked}.`
      : `Every way tried so far fails some check: ${looked}.`;
  if (optimal && best.worksPence === 0)
    return `Of all ways that are searched and fail no check, none is cheaper to do: it takes only what every way takes; that is proved${ifFound(best)}. ${looked}.`;
  if (optimal)
    return `Of all ways that are searched and fail no check, the cheapest to do costs ${pounds(best.worksPence)} (${worksWords}); that is proved${ifFound(best)}. ${looked}.`;
  const over = gap === null ? '' : `, up to ${(Math.ceil(gap * 1000) / 10).toFixed(1)} % above that`;
  return `Not proved to be the cheapest: the best found costs ${pounds(best.worksPence)} to do, and the cheapest that is searched and fails no check no less than ${pounds(boundPence)}${over} (${worksWords}). ${looked}.`;
}

/** Whether it was proved that nothing disturbs less, and of which way; null where it was not looked for. */
export function disturbedWords({ disturbance, candidates }: Found): string | null {
  if (disturbance === null || candidates.length === 0) return null;
  const { optimal, examined, schemeId } = disturbance;
  const looked = `${examined.toLocaleString('en-GB')} ${examined === 1 ? 'scheme was' : 'schemes were'} looked at for that`;
  if (!optimal) return `It is not proved that nothing disturbs less: ${looked}.`;
  const proved = candidates.findIndex(({ scheme }) => scheme.id === schemeId);
  const rests = proved < 0 ? '' : ifFound(candidates[proved] as Candidate);
  return candidates[proved]?.calmest === true
    ? `Counted cable by cable, that is proved for all ways that are searched and fail no check${rests}: ${looked}.`
    : `Counted cable by cable, way ${proved + 1} is proved to disturb least of all that are searched and fail no check${rests}; rooms and openings that cables share make the difference. ${looked}.`;
}

/** The lowest price of all that was found; null where nothing was. */
export function cheapestWords({ candidates }: Pick<Found, 'candidates'>): string | null {
  const [cheapest] = candidates;
  return cheapest === undefined ? null : `Way 1 is the cheapest: ${pounds(cheapest.totals.grossPence)}.`;
}

/** Which way disturbs least, and what that costs beside the cheapest. */
export function calmestWords({ candidates }: Pick<Found, 'candidates'>): string | null {
  const [cheapest] = candidates;
  const at = candidates.findIndex(({ calmest }) => calmest);
  const calmest = candidates[at];
  if (cheapest === undefined || calmest === undefined || candidates.length === 1) return null;
  if (at === 0) return 'It is the least disturbing of all that was found, too.';
  const morePence = calmest.totals.grossPence - cheapest.totals.grossPence;
  const less = `${messWords(calmest.messPoints)} of disturbance against ${messWords(cheapest.messPoints)}`;
  return `Way ${at + 1} is the least disturbing of all that was found: ${less} for the cheapest, for ${pounds(morePence)} more.`;
}

/**
 * A scheme of the job that fails nothing and has a lower price than all that was found: made in a way that the search
 * leaves out. Null where there is none.
 */
export function cheaperOwnWords(
  { candidates }: Pick<Found, 'candidates'>,
  own: readonly Pick<SchemeEstimate, 'name' | 'complies' | 'totals'>[],
): string | null {
  const [first] = candidates;
  if (first === undefined) return null;
  const [cheapest] = own
    .filter(({ complies }) => complies !== 'no')
    .toSorted((a, b) => a.totals.grossPence - b.totals.grossPence);
  const lessPence = first.totals.grossPence - (cheapest?.totals.grossPence ?? first.totals.grossPence);
  if (cheapest === undefined || lessPence <= 0) return null;
  return `“${cheapest.name}”, which is in the job, is ${pounds(lessPence)} cheaper: it is made in a way that the search leaves out, or saves by what is shared.`;
}

/** Which of the found ones costs the least to do, where that is not the one with the lowest price. */
export function orderWords({ candidates }: Found): string | null {
  const best = least(candidates);
  const place = best === null ? 0 : candidates.indexOf(best);
  if (best === null || place === 0) return null;
  return `Way ${place + 1} costs the least to do; with whole packs and openings that are shared, way 1 has the lower price.`;
}

/** The cheapest that was found ahead of all others; nothing where none is yet. */
export function firstWords(first: FirstAnswer | null): string {
  if (first === null) return '';
  const { name, grossPence, rests, optimal } = first;
  const best = optimal ? 'The cheapest to do now' : 'The best so far';
  const cheapest = rests ? `${best}, if the old cable that it cuts is found` : best;
  return `${cheapest}: ${name}, ${pounds(grossPence)}.`;
}
