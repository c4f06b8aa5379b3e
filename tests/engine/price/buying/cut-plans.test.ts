import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutMaterial, type CutPlans, cutPlan, cutPlans } from '#engine/price/buying/cut-plan.ts';
import type { CutPiece } from '#engine/price/buying/pieces-of.ts';
import type { Offer } from '#engine/price/buying/purchase.ts';
import { type CutList, cutOffer, lengthOffer, piecesOf } from './random-cut-list.ts';

const STEPS = 1_000_000;

const metresEach = fc.array(
  fc.integer({ min: 5, max: 60 }).map((tenths) => tenths / 10),
  { maxLength: 4 },
);
const anyLists = fc
  .array(metresEach, { minLength: 1, maxLength: 3 })
  .map((lists) => lists.map((list) => piecesOf(...list)));
const anyMaterial: fc.Arbitrary<CutMaterial> = fc.record({
  offers: fc
    .record({
      wholesM: fc.uniqueArray(fc.integer({ min: 3, max: 9 }), { maxLength: 2 }),
      pence: fc.tuple(fc.integer({ min: 30, max: 400 }), fc.integer({ min: 30, max: 400 })),
      cutPence: fc.option(fc.integer({ min: 40, max: 150 })),
      leastM: fc.constantFrom(1, 3),
    })
    .map(({ wholesM, pence, cutPence, leastM }) => [
      ...wholesM.map((lengthM, i) => lengthOffer(lengthM, pence[i] ?? 100)),
      ...(cutPence === null ? [] : [cutOffer(1000, cutPence, leastM * 1000)]),
    ]),
  vanMm: fc.array(
    fc.integer({ min: 50, max: 600 }).map((mm) => mm * 10),
    { maxLength: 2 },
  ),
});

/** Whether pieces can be cut from lengths, each tried in each. */
function canCut(pieces: readonly CutPiece[], lengths: readonly number[]): boolean {
  const [first, ...others] = pieces;
  if (first === undefined) return true;
  return lengths.some(
    (roomMm, i) => roomMm >= first.lengthMm && canCut(others, lengths.with(i, roomMm - first.lengthMm)),
  );
}

/** Every stock of lengths up to some number of each, with its price: nothing else is known of it. */
function everyStock(
  offers: readonly Offer[],
): readonly { readonly mm: readonly number[]; readonly cost: number }[] {
  const most = { whole: 4, steps: 24 };
  return offers.reduce<readonly { readonly mm: readonly number[]; readonly cost: number }[]>(
    (before, { quantity, least, millipence }) =>
      before.flatMap((stock) => {
        const counts = Array.from({ length: (least === null ? most.whole : most.steps) + 1 }, (_, n) => n);
        const possible = counts.filter((n) => least === null || n === 0 || n * quantity >= least);
        return possible.map((n) => ({
          mm: [
            ...stock.mm,
            ...(least === null ? Array.from({ length: n }, () => quantity) : n === 0 ? [] : [n * quantity]),
          ],
          cost: stock.cost + n * millipence,
        }));
      }),
    [{ mm: [], cost: 0 }],
  );
}

/** The least that any stock costs from which each list can be cut, or null. */
function leastByForce(
  lists: readonly (readonly CutPiece[])[],
  { offers, vanMm }: CutMaterial,
): number | null {
  const serving = everyStock(offers)
    .toSorted((a, b) => a.cost - b.cost)
    .find(({ mm }) => lists.every((pieces) => canCut(pieces, [...vanMm, ...mm])));
  return serving?.cost ?? null;
}

/** Whether each piece of a list is cut once from lengths that were bought or are in the van. */
function isServed(plan: CutPlans, place: number, { pieces, vanMm }: Omit<CutList, 'offers'>): boolean {
  const { cuts, unserved } = plan.lists[place] ?? { cuts: [], unserved: [] };
  const at = new Map<string, number>(vanMm.map((mm, i) => [`van/${i + 1}`, mm]));
  for (const { offer, count } of plan.bought) {
    if (offer.least !== null) at.set(`${offer.key}/1`, offer.quantity * count);
    else for (let n = 1; n <= count; n++) at.set(`${offer.key}/${n}`, offer.quantity);
  }
  const isAtHand = cuts.every(
    ({ from, lengthMm, leftMm, cuts: own }) =>
      at.get(from) === lengthMm &&
      leftMm >= 0 &&
      own.reduce((sum, one) => sum + one.lengthMm, leftMm) === lengthMm,
  );
  const cut = [...cuts.flatMap((one) => one.cuts), ...unserved].map(({ cause }) => cause).toSorted();
  const isOnce = new Set(cuts.map(({ from }) => from)).size === cuts.length;
  return (
    isAtHand &&
    isOnce &&
    cut.join() ===
      pieces
        .map(({ cause }) => cause)
        .toSorted()
        .join()
  );
}

describe('lengths for several lists of which one comes true', () => {
  it('cost as little as any stock from which each of them can be cut', () => {
    fc.assert(
      fc.property(anyLists, anyMaterial, (lists, material) => {
        const least = leastByForce(lists, material);
        fc.pre(least !== null);
        const plan = cutPlans(lists, material, STEPS);
        expect(plan.millipence).toBe(least);
        expect(plan.boundMillipence).toBe(least);
      }),
      { numRuns: 200 },
    );
  }, 60_000);

  it('hold every list for itself, each piece in one', () => {
    fc.assert(
      fc.property(anyLists, anyMaterial, (lists, material) => {
        const plan = cutPlans(lists, material, STEPS);
        for (const [i, pieces] of lists.entries())
          expect(isServed(plan, i, { pieces, vanMm: material.vanMm })).toBe(true);
      }),
    );
  });

  it('are those of the list where there is one, or the same one twice', () => {
    fc.assert(
      fc.property(anyLists, anyMaterial, ([pieces = []], material) => {
        const { cuts, unserved, ...outlay } = cutPlan(pieces, material.offers, material.vanMm, STEPS);
        expect(cutPlans([pieces], material, STEPS)).toEqual({ ...outlay, lists: [{ cuts, unserved }] });
        expect(cutPlans([pieces, pieces], material, STEPS).millipence).toBe(outlay.millipence);
      }),
    );
  });

  it('never cost less than the dearest list alone, nor less for a list more, in whatever order they come', () => {
    fc.assert(
      fc.property(anyLists, anyMaterial, (lists, material) => {
        // What is too long for the price list is not bought for: then a list more may leave less to buy.
        const longestMm = Math.max(
          0,
          ...material.offers.map(({ quantity, least }) => (least === null ? quantity : 1e9)),
        );
        fc.pre(lists.flat().every(({ lengthMm }) => lengthMm <= longestMm));
        const all = cutPlans(lists, material, STEPS).millipence;
        for (const list of lists)
          expect(all).toBeGreaterThanOrEqual(cutPlans([list], material, STEPS).millipence);
        if (lists.length > 1)
          expect(all).toBeGreaterThanOrEqual(cutPlans(lists.slice(1), material, STEPS).millipence);
        expect(cutPlans(lists.toReversed(), material, STEPS).millipence).toBe(all);
      }),
    );
  });

  it('may be more than any one list takes: two coils where each list alone wants one, or a longer cut', () => {
    const offers = [lengthOffer(25, 1720), cutOffer(1000, 112)];
    const lists = [piecesOf(24), piecesOf(12.5, 12.4, 2)];
    const each = lists.map((list) => cutPlans([list], { offers, vanMm: [] }, STEPS).millipence);
    expect(each).toEqual([1_720_000, 1_944_000]);
    expect(
      cutPlans(lists, { offers, vanMm: [] }, STEPS).bought.map(({ offer, count }) => [offer.key, count]),
    ).toEqual([
      ['coil-25', 1],
      ['cut-1', 2],
    ]);
  });

  it('give a plan that serves and a bound that holds, however few steps there are', () => {
    fc.assert(
      fc.property(anyLists, anyMaterial, fc.integer({ min: 0, max: 30 }), (lists, material, steps) => {
        const least = leastByForce(lists, material);
        fc.pre(least !== null);
        const plan = cutPlans(lists, material, steps);
        expect(plan.boundMillipence).toBeLessThanOrEqual(least ?? 0);
        expect(plan.millipence).toBeGreaterThanOrEqual(least ?? 0);
        for (const [i, pieces] of lists.entries())
          expect(isServed(plan, i, { pieces, vanMm: material.vanMm })).toBe(true);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
