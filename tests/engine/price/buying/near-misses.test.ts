import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPlan } from '#engine/price/buying/cut-plan.ts';
import { nearMisses } from '#engine/price/buying/near-misses.ts';
import type { Offer } from '#engine/price/buying/purchase.ts';
import { type CutList, cutOffer, lengthOffer, piecesOf, randomCutList } from './random-cut-list.ts';

/** The plan of a list, with what each length costs, and its near misses. */
function planned({ pieces, offers, vanMm }: CutList) {
  const plan = cutPlan(pieces, offers, vanMm, 1_000_000);
  const lengths = plan.cuts.flatMap((cut) => {
    const of = plan.bought.find(({ offer }) => cut.from.startsWith(`${offer.key}/`));
    return of === undefined
      ? []
      : [{ ...cut, millipence: of.offer.millipence * (of.offer.least === null ? 1 : of.count) }];
  });
  return { plan, lengths, misses: nearMisses(lengths, offers) };
}

const missesOf = (offers: readonly Offer[], ...lengthsM: readonly number[]) =>
  planned({ pieces: piecesOf(...lengthsM), offers, vanMm: [] }).misses;

describe('a smaller length that would almost have done', () => {
  const cable = [cutOffer(1000, 112), lengthOffer(25, 1720), lengthOffer(50, 3240)];

  it('for 27 m in one: a coil of 25 m is 2 m short, and would save the difference to 27 m cut', () => {
    expect(missesOf(cable, 27)).toEqual([
      { words: '25 m coil', shortMm: 2000, wouldSavePence: 27 * 112 - 1720 },
    ]);
  });

  it('for 27 m in two runs: the coil is bought, and without the last 2 m it would have been all', () => {
    expect(missesOf(cable, 25, 2)).toEqual([{ words: '25 m coil', shortMm: 2000, wouldSavePence: 224 }]);
  });

  it('is not told where it is far, where it saves nothing, or where it is what was bought', () => {
    expect(missesOf(cable, 34)).toEqual([]);
    expect(missesOf([cutOffer(1000, 60), lengthOffer(25, 1720)], 27)).toEqual([]);
    expect(missesOf(cable, 24)).toEqual([]);
  });

  it('comes nearest first, one an offer', () => {
    const offers = [cutOffer(1000, 112), lengthOffer(24, 1500), lengthOffer(25, 1720)];
    expect(missesOf(offers, 27).map(({ words, shortMm }) => [words, shortMm])).toEqual([
      ['25 m coil', 2000],
      ['24 m coil', 3000],
    ]);
  });

  it('would save what it says, were the pieces so much shorter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 10 }), (seed, pieces) => {
        const shape = { pieces, fromMm: 1500, toMm: 12_000, wholesM: [10, 25, 50], stepsMm: [1000], van: 1 };
        const list = randomCutList(seed, shape);
        const { plan, lengths, misses } = planned(list);
        for (const { shortMm, wouldSavePence } of misses) {
          const wanted = plan.millipence - wouldSavePence * 1000;
          // In one of the lengths, or in all together, so much less leaves a cheaper plan.
          const ways = [...lengths.map((length) => [length]), lengths].map(
            (some) =>
              cutPlan(
                shortened(
                  list,
                  some.flatMap(({ cuts }) => cuts.map(({ cause }) => cause)),
                  shortMm,
                ),
                list.offers,
                list.vanMm,
                1_000_000,
              ).millipence,
          );
          expect(Math.min(...ways)).toBeLessThanOrEqual(wanted);
        }
      }),
      { seed: 51, numRuns: 200 },
    );
  });
});

/** The list with so many mm less in some pieces. */
function shortened({ pieces }: CutList, causes: readonly string[], shortMm: number) {
  let lessMm = shortMm;
  return pieces
    .map((piece) => {
      const offMm = causes.includes(piece.cause) ? Math.min(lessMm, piece.lengthMm) : 0;
      lessMm -= offMm;
      return { ...piece, lengthMm: piece.lengthMm - offMm };
    })
    .filter(({ lengthMm }) => lengthMm > 0)
    .toSorted((a, b) => b.lengthMm - a.lengthMm);
}
