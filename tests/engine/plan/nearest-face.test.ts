import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { nearestFace, nextFace, steppedAlongFace } from '#engine/plan/nearest-face.ts';
import { distanceMm, planPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { pointOnFace } from '#engine/plan/position-of-place.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
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

  it('is found again from its own place on the wall', () => {
    fc.assert(
      fc.property(somewhere, (asked) => {
        const { spot, wall, storeyId } = spotFor(asked);
        if (spot === null || wall === undefined) throw new Error('no face found');
        const again = nearestFace(asked.plan, storeyId, pointOnFace(wall, spot.side, spot.alongMm), {
          heightMm: asked.heightMm,
          stepMm: 1,
        });
        expect(again).toEqual(spot);
      }),
    );
  });

  it('comes to every face of every room that has space, for a hand held before its middle', () => {
    for (const plan of plans)
      for (const room of plan.roomById.values())
        for (const { wallId, side, from, to } of outlineEdges(room.room, plan.wallById)) {
          const wall = plan.wallById.get(wallId);
          const taken = (wall?.wall.openings.length ?? 1) > 0;
          if (wall === undefined || wall.wall.core === 'open' || taken || distanceMm(from, to) < 200)
            continue;
          const sign = side === 'left' ? 1 : -1;
          const hand = planPoint(
            (from[0] + to[0]) / 2 + wall.leftNormal[0] * 20 * sign,
            (from[1] + to[1]) / 2 + wall.leftNormal[1] * 20 * sign,
          );
          expect(nearestFace(plan, wall.storeyId, hand, { heightMm: 450 })).toMatchObject({
            wallId,
            side,
          });
        }
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

describe('steppedAlongFace', () => {
  it('stays on its face, out of doors, however far it is sent', () => {
    fc.assert(
      fc.property(somewhere, fc.integer({ min: -6000, max: 6000 }), (asked, byMm) => {
        const { spot, wall } = spotFor(asked);
        if (spot === null) throw new Error('no face found');
        const moved = steppedAlongFace(asked.plan, spot, byMm, asked.heightMm);
        expect(moved).toMatchObject({ wallId: spot.wallId, side: spot.side });
        const alongMm = moved?.alongMm ?? Number.NaN;
        expect((alongMm - spot.alongMm) * Math.sign(byMm)).toBeGreaterThanOrEqual(0);
        const doors = (wall?.wall.openings ?? []).filter(({ kind }) => kind === 'door');
        for (const door of doors)
          expect(alongMm > door.alongMm && alongMm < door.alongMm + door.widthMm).toBe(false);
      }),
    );
  });
});

describe('nextFace', () => {
  const start = (plan: (typeof plans)[number], storeyId: string) =>
    nearestFace(plan, storeyId, planPoint(1000, 1000), { heightMm: 450 });

  it('goes through all the faces of a storey, room after room, and comes back', () => {
    for (const plan of plans)
      for (const { storey } of plan.storeys) {
        let spot = start(plan, storey.id);
        const seen: string[] = [];
        for (let i = 0; i < 100 && spot !== null; i++) {
          const key = `${spot.wallId} ${spot.side} ${i === 0 ? '' : spot.alongMm}`;
          if (seen.slice(1).includes(key)) break;
          seen.push(key);
          spot = nextFace(plan, spot, 1, 450);
        }
        const rooms = [...plan.roomById.values()].filter(({ storeyId }) => storeyId === storey.id);
        const visited = (room: (typeof rooms)[number]) =>
          room.room.walls.some(({ wall, side }) => seen.some((key) => key.startsWith(`${wall} ${side} `)));
        expect(rooms.filter((room) => !visited(room))).toEqual([]);
        expect(seen.length).toBeGreaterThan(rooms.length * 3);
        expect(seen.length).toBeLessThan(100);
      }
  });

  it('goes back the way it came', () => {
    fc.assert(
      fc.property(somewhere, (asked) => {
        const { spot } = spotFor(asked);
        const there = spot && nextFace(asked.plan, spot, 1, asked.heightMm);
        if (there === null) throw new Error('no next face');
        expect(nextFace(asked.plan, there, -1, asked.heightMm)).toMatchObject({
          wallId: spot?.wallId,
          side: spot?.side,
        });
      }),
    );
  });

  it('goes to the right hand of someone who looks at the wall', () => {
    const [plan] = plans;
    const room = plan && [...plan.roomById.values()].find((one) => one.room.name === 'Living room');
    if (plan === undefined || room === undefined) throw new Error('the demo job has no living room');
    const [x = 0, y = 0] = [0, 1].map(
      (axis) => room.outline.reduce((sum, at) => sum + (at[axis] ?? 0), 0) / room.outline.length,
    );
    const angleOf = (spot: { wallId: string; side: 'left' | 'right'; alongMm: number } | null): number => {
      const wall = plan.wallById.get(spot?.wallId ?? '');
      if (spot === null || wall === undefined) throw new Error('no face found');
      const at = pointOnFace(wall, spot.side, spot.alongMm);
      return Math.atan2(at[1] - y, at[0] - x);
    };
    const turns = outlineEdges(room.room, plan.wallById).flatMap(({ from, to }) => {
      const middle = planPoint((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
      const first = nearestFace(plan, room.storeyId, middle, { heightMm: 450 });
      const next = first && nextFace(plan, first, 1, 450);
      const same = room.room.walls.some(({ wall, side }) => wall === next?.wallId && side === next.side);
      return same ? [angleOf(next) - angleOf(first)] : [];
    });
    // From one of its walls the way leads on to the next room.
    expect(turns.length).toBe(room.room.walls.length - 1);
    // Clockwise on plan, where y goes up.
    expect(turns.map((turn) => Math.sign(Math.sin(turn)))).toEqual(turns.map(() => -1));
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
