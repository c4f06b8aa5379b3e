import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { nearestFace } from '#engine/plan/nearest-face.ts';
import { distanceMm, planPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { pointOnFace } from '#engine/plan/position-of-place.ts';
import { fromSheet, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const plans = (['saltglass-row', 'fernlow-close'] as const).map((name) => buildPlan(demoJob(name)));
const somewhere = fc.record({
  plan: fc.constantFrom(...plans),
  storey: fc.nat(1),
  x: fc.integer({ min: -500, max: 8500 }),
  y: fc.integer({ min: -500, max: 10_500 }),
  heightMm: fc.constantFrom(300, 450, 1100),
});

/** The spot on a face of the asked-about storey, with all that a test needs of it. */
function spotFor({
  plan,
  storey,
  x,
  y,
  heightMm,
}: {
  plan: (typeof plans)[number];
  storey: number;
  x: number;
  y: number;
  heightMm: number;
}) {
  const storeyId = plan.storeys[storey % plan.storeys.length]?.storey.id ?? '';
  const at = planPoint(x, y);
  const spot = nearestFace(plan, storeyId, at, { heightMm });
  const wall = spot === null ? undefined : plan.wallById.get(spot.wallId);
  return { storeyId, at, spot, wall };
}

describe('nearestFace', () => {
  it('finds a spot on a wall of the storey wherever the hand is', () => {
    fc.assert(
      fc.property(somewhere, (asked) => {
        const { spot, wall, storeyId } = spotFor(asked);
        expect(spot).not.toBeNull();
        expect(wall?.storeyId).toBe(storeyId);
        expect(spot?.alongMm).toBeGreaterThanOrEqual(0);
        expect(spot?.alongMm).toBeLessThanOrEqual(wall?.lengthMm ?? -1);
      }),
    );
  });

  it('puts nothing into a doorway, nor into a window at its height', () => {
    fc.assert(
      fc.property(somewhere, (asked) => {
        const { spot, wall } = spotFor(asked);
        const inOpening = (wall?.wall.openings ?? []).filter(
          ({ kind, alongMm, widthMm, sillMm, headMm }) =>
            (kind === 'door' ||
              kind === 'opening' ||
              (kind === 'window' && asked.heightMm > sillMm && asked.heightMm < headMm)) &&
            (spot?.alongMm ?? 0) > alongMm &&
            (spot?.alongMm ?? 0) < alongMm + widthMm,
        );
        expect(inOpening).toEqual([]);
      }),
    );
  });

  it('stays in the room that the hand is in', () => {
    fc.assert(
      fc.property(somewhere, (asked) => {
        const { spot, at, storeyId } = spotFor(asked);
        const rooms = [...asked.plan.roomById.values()].filter(
          (room) => room.storeyId === storeyId && room.outline.length > 2 && isInside(room.outline, at),
        );
        const faces = rooms.flatMap(({ room }) => room.walls.map((face) => `${face.wall} ${face.side}`));
        if (faces.length > 0) expect(faces).toContain(`${spot?.wallId} ${spot?.side}`);
      }),
    );
  });

  it('is no further away than any other free spot of the same face would be', () => {
    fc.assert(
      fc.property(somewhere, fc.integer({ min: 0, max: 100 }), (asked, percent) => {
        const { spot, wall, at } = spotFor(asked);
        if (spot === null || wall === undefined) return;
        const other = (wall.lengthMm * percent) / 100;
        const there = nearestFace(asked.plan, wall.storeyId, pointOnFace(wall, spot.side, other), {
          heightMm: asked.heightMm,
        });
        if (there?.wallId !== spot.wallId || there.side !== spot.side) return;
        const here = distanceMm(pointOnFace(wall, spot.side, spot.alongMm), at);
        // Spots come in steps of 10 mm, so that equal ones may differ by a step.
        expect(here).toBeLessThanOrEqual(distanceMm(pointOnFace(wall, spot.side, there.alongMm), at) + 10);
      }),
    );
  });

  it('has no answer for a storey without walls', () => {
    expect(
      nearestFace(plans[0] ?? buildPlan(demoJob('saltglass-row')), 'no-such-storey', planPoint(0, 0), {
        heightMm: 450,
      }),
    ).toBeNull();
  });
});

describe('fromSheet', () => {
  it('is the way back from paper', () => {
    const number = fc.integer({ min: -100_000, max: 100_000 });
    fc.assert(
      fc.property(number, number, fc.integer({ min: 1, max: 500 }), (x, y, scale) => {
        const frame = { scale, origin: planPoint(120, -340), at: sheetPoint(14, 220) };
        const [backX, backY] = fromSheet(frame, toSheet(frame, planPoint(x, y)));
        expect(backX).toBeCloseTo(x, 6);
        expect(backY).toBeCloseTo(y, 6);
      }),
    );
  });
});
