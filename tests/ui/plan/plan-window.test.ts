import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import {
  between,
  freeParts,
  type PlanWindow,
  PX_PER_UNIT,
  panned,
  wholeWindow,
  withInSight,
  zoomed,
} from '../../../ui/elements/plan/plan-window.ts';

const extent = [planPoint(0, 0), planPoint(4000, 10_000)] as const;
const desk = { width: 800, height: 600 };
const phone = { width: 390, height: 338 };
const start = wholeWindow(extent, desk, freeParts(desk));

/** Where on screen a place is seen, px from the box's top left corner. */
function seenAt(window: PlanWindow, at: readonly [number, number], size: typeof desk) {
  const mmPerPx = window.scale / PX_PER_UNIT;
  return {
    x: size.width / 2 + (at[0] - window.middle[0]) / mmPerPx,
    y: size.height / 2 - (at[1] - window.middle[1]) / mmPerPx,
  };
}

const coordinate = fc.integer({ min: -5000, max: 15_000 });
const somewhere = fc.tuple(coordinate, coordinate).map(([x, y]) => planPoint(x, y));

describe('the whole window', () => {
  it('shows the whole house in one of the free parts, and touches two of its edges', () => {
    const sides = fc.integer({ min: 300, max: 30_000 });
    fc.assert(
      fc.property(sides, sides, fc.constantFrom(desk, phone), (width, height, size) => {
        const parts = freeParts(size);
        const house = [planPoint(100, -200), planPoint(100 + width, height - 200)] as const;
        const window = wholeWindow(house, size, parts);
        const [low, high] = [seenAt(window, house[0], size), seenAt(window, house[1], size)];
        const holding = parts.filter(
          ({ left, top, width: w, height: h }) =>
            low.x >= left - 0.01 &&
            high.x <= left + w + 0.01 &&
            high.y >= top - 0.01 &&
            low.y <= top + h + 0.01,
        );
        expect(holding.length).toBeGreaterThan(0);
        const touches = holding.some(
          ({ width: w, height: h }) =>
            Math.abs(high.x - low.x - w) < 0.1 || Math.abs(low.y - high.y - h) < 0.1,
        );
        // The smallest houses would be drawn larger than is of use.
        expect(touches || window.scale === 15).toBe(true);
      }),
    );
  });

  it('puts a tall house beside the buttons and a wide one above them', () => {
    const parts = freeParts(phone);
    const above = parts.at(-1);
    const tall = wholeWindow(extent, phone, parts);
    expect(seenAt(tall, extent[0], phone).y).toBeGreaterThan((above?.top ?? 0) + (above?.height ?? 0));
    const wide = [planPoint(0, 0), planPoint(12_000, 3000)] as const;
    const window = wholeWindow(wide, phone, parts);
    expect(seenAt(window, [wide[1][0], wide[0][1]], phone).y).toBeLessThanOrEqual(
      (above?.top ?? 0) + (above?.height ?? 0),
    );
    expect(seenAt(window, wide[1], phone).x).toBeGreaterThan(phone.width - 64);
  });
});

describe('zooming and pulling', () => {
  it('keeps the place under the hand where it is while zooming, and comes back', () => {
    fc.assert(
      fc.property(somewhere, fc.double({ min: 0.5, max: 2, noNaN: true }), (about, factor) => {
        const near = zoomed(start, factor, about);
        const [before, after] = [seenAt(start, about, desk), seenAt(near, about, desk)];
        expect(after.x).toBeCloseTo(before.x, 6);
        expect(after.y).toBeCloseTo(before.y, 6);
        const back = zoomed(near, 1 / factor, about);
        expect(back.middle[0]).toBeCloseTo(start.middle[0], 6);
      }),
    );
  });

  it('takes the house along with the hand', () => {
    fc.assert(
      fc.property(
        somewhere,
        fc.integer({ min: -300, max: 300 }),
        fc.integer({ min: -300, max: 300 }),
        (at, dx, dy) => {
          const [before, after] = [seenAt(start, at, desk), seenAt(panned(start, dx, dy), at, desk)];
          expect(after.x - before.x).toBeCloseTo(dx, 6);
          expect(after.y - before.y).toBeCloseTo(dy, 6);
        },
      ),
    );
  });
});

describe('bringing into sight', () => {
  it('shows all the places, comes no nearer, and then rests', () => {
    fc.assert(
      fc.property(fc.array(somewhere, { minLength: 1, maxLength: 6 }), (places) => {
        const near = zoomed(start, 4, planPoint(500, 500));
        const window = withInSight(near, places, desk);
        expect(window.scale).toBeGreaterThanOrEqual(near.scale);
        for (const place of places) {
          const { x, y } = seenAt(window, place, desk);
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(desk.width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(desk.height);
        }
        expect(withInSight(window, places, desk)).toEqual(window);
      }),
    );
  });

  it('moves nothing for what is in sight already, near the edge too', () => {
    expect(withInSight(start, [planPoint(2000, 5000)], desk)).toBe(start);
    const mmPerPx = start.scale / PX_PER_UNIT;
    const atPx = (px: number) =>
      planPoint(start.middle[0] + (desk.width / 2 - px) * mmPerPx, start.middle[1]);
    expect(withInSight(start, [atPx(20)], desk)).toBe(start);
    expect(withInSight(start, [atPx(-5)], desk)).not.toBe(start);
  });

  it('comes no nearer than is of use', () => {
    const nearest = zoomed(start, 1e6, planPoint(0, 0));
    // A phone's width shows a metre and more.
    expect((phone.width / PX_PER_UNIT) * nearest.scale).toBeGreaterThan(1000);
  });

  it('goes from where it was to where it is wanted', () => {
    const target = zoomed(panned(start, 200, -50), 3, planPoint(0, 0));
    expect(between(start, target, 0).scale).toBeCloseTo(start.scale, 6);
    const end = between(start, target, 1);
    expect(end.scale).toBeCloseTo(target.scale, 6);
    expect(end.middle[0]).toBeCloseTo(target.middle[0], 6);
    expect(end.middle[1]).toBeCloseTo(target.middle[1], 6);
  });
});
