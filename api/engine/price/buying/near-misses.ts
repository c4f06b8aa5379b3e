import { lengthWords } from './offer-words.ts';
import { isOneLength } from './offers-of.ts';
import type { CutFrom, NearMiss, Offer } from './purchase.ts';

/** A length is near where no more than this share of it is lacking. A judgement, no source. */
const NEAR_SHARE = 1 / 5;

/** Bought lengths with what each costs. */
export interface BoughtLength extends Pick<CutFrom, 'lengthMm' | 'leftMm'> {
  readonly millipence: number;
}

/**
 * What a smaller length would have saved, and how short it is: in place of each length that is bought, and of all of
 * them together. One entry an offer, the one that lacks least; the nearest first.
 */
export function nearMisses(bought: readonly BoughtLength[], offers: readonly Offer[]): readonly NearMiss[] {
  const places = [...bought.map((length) => [length]), ...(bought.length > 1 ? [bought] : [])].map(
    (lengths) => ({
      usedMm: lengths.reduce((sum, { lengthMm, leftMm }) => sum + lengthMm - leftMm, 0),
      millipence: lengths.reduce((sum, length) => sum + length.millipence, 0),
    }),
  );
  const misses = offers.filter(isOneLength).flatMap((offer): NearMiss[] => {
    const [nearest] = places
      .map(({ usedMm, millipence }) => ({
        words: lengthWords(offer),
        shortMm: usedMm - offer.quantity,
        wouldSavePence: Math.floor((millipence - offer.millipence) / 1000),
      }))
      .filter(
        ({ shortMm, wouldSavePence }) =>
          shortMm > 0 && shortMm <= offer.quantity * NEAR_SHARE && wouldSavePence > 0,
      )
      .toSorted((a, b) => a.shortMm - b.shortMm || b.wouldSavePence - a.wouldSavePence);
    return nearest === undefined ? [] : [nearest];
  });
  return misses.toSorted((a, b) => a.shortMm - b.shortMm || b.wouldSavePence - a.wouldSavePence);
}
