import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beforeConfidence, normalBelow, orderConfidence } from '#engine/proof/readings/confidence.ts';
import { leastSquaresPlace } from '#engine/proof/readings/least-squares-place.ts';
import { placeByReadings } from '#engine/proof/readings/place-by-readings.ts';
import { sessionNull } from '#engine/proof/readings/session-null.ts';
import { seededRandom } from './simulated-readings.ts';

describe('the share of a normal distribution', () => {
  // Standard normal table, as in any book of statistics (from memory).
  it.each([
    [0, 0.5],
    [1, 0.8413],
    [1.645, 0.95],
    [1.96, 0.975],
    [2.576, 0.995],
    [-1, 0.1587],
  ])('below %d spreads is %d', (spreads, share) => {
    expect(normalBelow(spreads)).toBeCloseTo(share, 4);
  });
});

describe('the likelihood of an order', () => {
  const placed = fc.array(
    fc.record({
      gap: fc.double({ min: 0, max: 0.05, noNaN: true }),
      spread: fc.double({ min: 0.003, max: 0.02, noNaN: true }),
    }),
    { minLength: 2, maxLength: 8 },
  );

  it('of two is that of the one before the other', () => {
    fc.assert(
      fc.property(placed, ([first, second]) => {
        const pair = [
          { fraction: 0.3, spread: first?.spread ?? 0.01 },
          { fraction: 0.3 + (second?.gap ?? 0), spread: second?.spread ?? 0.01 },
        ] as const;
        expect(orderConfidence(pair)).toBeCloseTo(beforeConfidence(...pair), 2);
      }),
      { seed: 20261125 },
    );
  });

  it('is what drawing the places at random gives', () => {
    const random = seededRandom(11);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const order = [0.1, 0.13, 0.15, 0.16, 0.4, 0.42].map((fraction) => ({ fraction, spread: 0.012 }));
    let right = 0;
    const draws = 40_000;
    for (let i = 0; i < draws; i++) {
      const at = order.map(({ fraction, spread }) => fraction + spread * normal());
      if (at.every((x, k) => k === 0 || x > (at[k - 1] ?? 0))) right++;
    }
    expect(Math.abs(orderConfidence(order) - right / draws)).toBeLessThan(0.012);
  });

  it('of as many at one place is one in their factorial', () => {
    const same = (count: number) => Array.from({ length: count }, () => ({ fraction: 0.5, spread: 0.01 }));
    expect(orderConfidence(same(2))).toBeCloseTo(1 / 2, 2);
    expect(orderConfidence(same(3))).toBeCloseTo(1 / 6, 2);
    expect(orderConfidence(same(4))).toBeCloseTo(1 / 24, 2);
  });
});

describe('the closed form', () => {
  it('gives back place and spur from exact readings', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (x, s, totalOhm) => {
          const place = placeByReadings({ aOhm: totalOhm * (x + s), bOhm: totalOhm * (1 - x + s), totalOhm });
          expect(place?.fraction).toBeCloseTo(x, 9);
          expect(place?.spurFraction).toBeCloseTo(s, 9);
        },
      ),
      { seed: 20261125 },
    );
  });

  it('has no answer without a loop', () => {
    expect(placeByReadings({ aOhm: 0.2, bOhm: 0.2, totalOhm: 0 })).toBeNull();
  });
});

describe('least squares for a place', () => {
  const equation = (along: number, off: number, value: number) => ({ along, off, value, square: 1e-4 });

  it('solves readings from both ends as the closed form does', () => {
    const solved = leastSquaresPlace([equation(1, 1, 0.5), equation(-1, 1, 0.5 - 1 + 0.2)], true);
    expect(solved?.fraction).toBeCloseTo(0.4, 9);
    expect(solved?.spurFraction).toBeCloseTo(0.1, 9);
  });

  it('never makes a spur negative, and places the point as if it were on the ring', () => {
    const solved = leastSquaresPlace([equation(1, 1, 0.38), equation(-1, 1, -0.42)], true);
    expect(solved?.spurFraction).toBe(0);
    expect(solved?.fraction).toBeCloseTo(0.4, 9);
  });

  it('has no answer from one end alone, unless there can be no spur', () => {
    expect(leastSquaresPlace([equation(1, 1, 0.4), equation(1, 1, 0.42)], true)).toBeNull();
    expect(leastSquaresPlace([equation(1, 1, 0.4), equation(1, 1, 0.42)], false)?.fraction).toBeCloseTo(
      0.41,
      9,
    );
    expect(leastSquaresPlace([equation(0, 1, 0.1)], true)).toBeNull();
  });
});

describe('the null of a session', () => {
  it('follows the ring’s points and not the spurs, and leans to nought where few were read', () => {
    const read = (...ohms: readonly number[]) => ohms.map((ohm, point) => ({ point, ohm, square: 5e-5 }));
    const nullOf = (ohms: readonly number[], spur: readonly number[]): number =>
      sessionNull(read(...ohms), { spur, contactSquare: 5e-5, usualSquare: 1.44e-4 }).ohm;
    const many = Array.from({ length: 50 }, () => 0.05);
    expect(nullOf([0.3, 0.2, ...many], [1, 1])).toBeCloseTo(0.05, 2);
    expect(nullOf([0.05], [0])).toBeLessThan(0.03);
    expect(nullOf([], [])).toBe(0);
  });
});
