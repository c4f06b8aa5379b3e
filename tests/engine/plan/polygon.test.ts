import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { isInside, lineMeeting, signedAreaMm2 } from '#engine/plan/polygon.ts';

/** The surveyor's formula written out, as an oracle that shares nothing with the code. */
function shoelaceMm2(outline: readonly PlanPoint[]): number {
  let doubled = 0;
  for (let i = 0; i < outline.length; i += 1) {
    const [x1, y1] = outline[i] ?? [0, 0];
    const [x2, y2] = outline[(i + 1) % outline.length] ?? [0, 0];
    doubled += x1 * y2 - x2 * y1;
  }
  return doubled / 2;
}

/** Star-shaped outlines round a centre, anticlockwise, corners on whole millimetres. */
const outlines = fc.array(fc.integer({ min: 500, max: 9000 }), { minLength: 3, maxLength: 12 }).map((radii) =>
  radii.map((radius, index) => {
    const angle = (2 * Math.PI * index) / radii.length;
    return planPoint(Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle)));
  }),
);
const shifts = fc.tuple(fc.integer({ min: -50_000, max: 50_000 }), fc.integer({ min: -50_000, max: 50_000 }));

describe('signedAreaMm2', () => {
  it('gives a 4 by 3 metre room 12 square metres, and minus that when listed clockwise', () => {
    const outline = [planPoint(0, 0), planPoint(4000, 0), planPoint(4000, 3000), planPoint(0, 3000)];
    expect(signedAreaMm2(outline)).toBe(12e6);
    expect(signedAreaMm2(outline.toReversed())).toBe(-12e6);
  });

  it('is nothing for fewer than three corners', () => {
    expect(signedAreaMm2([])).toBe(0);
    expect(signedAreaMm2([planPoint(1, 2), planPoint(3, 4)])).toBe(0);
  });

  it('agrees with the surveyor’s formula, wherever the house stands', () => {
    fc.assert(
      fc.property(outlines, shifts, (outline, [x, y]) => {
        const moved = outline.map((corner) => planPoint(corner[0] + x, corner[1] + y));
        expect(signedAreaMm2(moved)).toBeCloseTo(shoelaceMm2(outline), 3);
      }),
    );
  });

  it('changes its sign and nothing else in a mirror', () => {
    fc.assert(
      fc.property(outlines, (outline) => {
        const mirrored = outline.map(([x, y]) => planPoint(-x, y));
        expect(signedAreaMm2(mirrored)).toBeCloseTo(-signedAreaMm2(outline), 3);
      }),
    );
  });
});

describe('isInside', () => {
  it('agrees with the angles that the corners subtend', () => {
    const places = fc.tuple(fc.integer({ min: -9500, max: 9500 }), fc.integer({ min: -9500, max: 9500 }));
    fc.assert(
      fc.property(outlines, places, (outline, [x, y]) => {
        let turned = 0;
        let edgeMm = Number.POSITIVE_INFINITY;
        outline.forEach((a, index) => {
          const b = outline[(index + 1) % outline.length] ?? a;
          const cross = (a[0] - x) * (b[1] - y) - (a[1] - y) * (b[0] - x);
          const dot = (a[0] - x) * (b[0] - x) + (a[1] - y) * (b[1] - y);
          turned += Math.atan2(cross, dot);
          edgeMm = Math.min(edgeMm, Math.abs(cross) / Math.hypot(b[0] - a[0], b[1] - a[1]));
        });
        fc.pre(edgeMm > 1);
        expect(isInside(outline, planPoint(x, y))).toBe(Math.abs(turned) > Math.PI);
      }),
    );
  });
});

describe('lineMeeting', () => {
  it('finds where two walls’ faces meet, and nothing for parallel ones', () => {
    expect(lineMeeting(planPoint(0, 50), [1, 0], planPoint(950, 0), [0, 1])).toEqual([950, 50]);
    expect(lineMeeting(planPoint(0, 0), [1, 0], planPoint(0, 10), [-1, 0])).toBeNull();
  });
});
