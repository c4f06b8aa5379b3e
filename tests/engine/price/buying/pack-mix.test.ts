import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packMix } from '#engine/price/buying/pack-mix.ts';
import type { Offer } from '#engine/price/buying/purchase.ts';

const offer = (quantity: number, pence: number, least: number | null = null): Offer => ({
  key: `pack-${quantity}`,
  kind: least === null ? 'pack' : 'cut',
  quantity,
  millipence: pence * 1000,
  least,
});
const bought = (needed: number, ...offers: readonly Offer[]) =>
  packMix(needed, offers).bought.map((one) => `${one.count} of ${one.offer.quantity}`);

/** The least cost by trying all counts up to what is needed of each. */
function byForce(needed: number, offers: readonly Offer[]): number {
  const [first, ...others] = offers;
  if (needed <= 0) return 0;
  if (first === undefined) return Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (
    let count = 0;
    count <= Math.ceil(needed / first.quantity) + (first.least ?? 0) / first.quantity;
    count++
  ) {
    if (count > 0 && count * first.quantity < (first.least ?? 0)) continue;
    least = Math.min(least, count * first.millipence + byForce(needed - count * first.quantity, others));
  }
  return least;
}

describe('packs of what is counted', () => {
  it('are the cheapest that hold what is needed, not the fewest', () => {
    expect(bought(101, offer(1, 4), offer(100, 284))).toEqual(['1 of 1', '1 of 100']);
    expect(bought(90, offer(1, 4), offer(100, 284))).toEqual(['1 of 100']);
    expect(bought(7, offer(5, 500), offer(3, 320))).toEqual(['1 of 5', '1 of 3']);
  });

  it('are of equal cost the fewest, then those listed first', () => {
    expect(bought(10, offer(1, 10), offer(10, 100))).toEqual(['1 of 10']);
    expect(bought(8, offer(10, 100), offer(8, 100))).toEqual(['1 of 10']);
    expect(bought(8, offer(8, 100), offer(10, 100))).toEqual(['1 of 8']);
  });

  it('begin with the least that is cut', () => {
    expect(bought(100, offer(100, 10, 500))).toEqual(['5 of 100']);
    expect(bought(100, offer(100, 10, 500), offer(250, 45))).toEqual(['1 of 250']);
    expect(bought(0, offer(1, 1))).toEqual([]);
    expect(packMix(5, [])).toEqual({ bought: [], millipence: 0, boundMillipence: 0 });
  });

  it('cost as little as any counts of them, and say so', () => {
    const anyOffer = fc
      .record({
        quantity: fc.integer({ min: 1, max: 12 }),
        pence: fc.nat(60),
        steps: fc.option(fc.integer({ min: 1, max: 4 })),
      })
      .map(({ quantity, pence, steps }) => offer(quantity, pence, steps === null ? null : steps * quantity));
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.array(anyOffer, { minLength: 1, maxLength: 3 }),
        (needed, offers) => {
          const mix = packMix(needed, offers);
          const held = mix.bought.reduce((sum, one) => sum + one.count * one.offer.quantity, 0);
          expect(held).toBeGreaterThanOrEqual(needed);
          expect(mix.millipence).toBe(
            mix.bought.reduce((sum, one) => sum + one.count * one.offer.millipence, 0),
          );
          const least = byForce(needed, offers);
          expect(mix.boundMillipence).toBeLessThanOrEqual(least);
          expect(mix.millipence).toBeGreaterThanOrEqual(least);
          // Two kinds that are only sold from so much on are not tried together; then less is promised.
          const isPromised = offers.filter((one) => (one.least ?? 0) > one.quantity).length < 2;
          if (isPromised) expect([mix.millipence, mix.boundMillipence]).toEqual([least, least]);
        },
      ),
      { seed: 33, numRuns: 300 },
    );
  });

  it('of a need beyond all measure still hold it, with a bound that is told', () => {
    const offers = [offer(7, 100), offer(1000, 9000)];
    const mix = packMix(3_000_001, offers);
    const held = mix.bought.reduce((sum, one) => sum + one.count * one.offer.quantity, 0);
    expect(held).toBeGreaterThanOrEqual(3_000_001);
    expect(mix.boundMillipence).toBeLessThanOrEqual(mix.millipence);
    expect(mix.millipence / mix.boundMillipence).toBeLessThan(1.001);
  });
});
