import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { holesPlaced } from '#engine/ways/holes-placed.ts';
import { joistsCrossed } from '#engine/ways/joists.ts';
import type { Segment } from '#engine/ways/run.ts';
import { openLay, reversedSegments, segmentBetween } from '#engine/ways/segment.ts';
import type { Floor, Room, Wall } from '#model/building.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { fourWalls, planOf, room, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';
import { requestBetween } from './demo-houses.ts';

const floor200: Floor = { ...timberFloor, joistDepthMm: 200 };
const box = fourWalls(4000, 3000);

/** A room of 4000 by 3000 with joists along x, over one of the same size unless it stands on nothing. */
function house(
  more: {
    floor?: Floor;
    room?: Partial<Room>;
    upper?: Wall[];
    below?: Wall[] | null;
    wall?: Partial<Wall>;
  } = {},
): Plan {
  const upper = fourWalls(4000, 3000, more.wall === undefined ? {} : { more: more.wall });
  const up = storey('ff', {
    floorLevelMm: 2700,
    floor: more.floor ?? floor200,
    walls: [...upper.walls, ...(more.upper ?? [])],
    rooms: [room('r', upper.sides, more.room)],
  });
  if (more.below === null) return planOf([up]);
  const under = fourWalls(4000, 3000, { prefix: 'g-' });
  return planOf([storey('gf', { walls: [...under.walls, ...(more.below ?? [])] }), up]);
}

const spot = (xMm: number, yMm: number): Position => ({
  storeyId: 'ff',
  at: planPoint(xMm, yMm),
  heightMm: -110,
  levelMm: 2590,
});

/** A stretch across the joists under the upper floor, with the joists that it crosses. */
function across(from: readonly [number, number], to: readonly [number, number], more: Partial<Segment> = {}) {
  const [a, b] = [spot(...from), spot(...to)];
  const count = joistsCrossed(floor200, a.at, b.at);
  return { ...segmentBetween(a, b, openLay('void-across', 'derived'), { joistsCrossed: count }), ...more };
}

const at = fc.record({ x: fc.integer({ min: 50, max: 3950 }), y: fc.integer({ min: 50, max: 2950 }) });
const floors = fc
  .record({
    joistsRunDeg: fc.option(fc.constantFrom(0, 90, 180, -90, 30)),
    joistSpacingMm: fc.constantFrom(350, 400, 450, 600),
  })
  .map(({ joistsRunDeg, joistSpacingMm }): Floor => {
    const { joistsRunDeg: _, ...unknown } = floor200;
    return { ...unknown, joistSpacingMm, ...(joistsRunDeg === null ? {} : { joistsRunDeg }) };
  });

describe('the holes of a run', () => {
  it('are as many as the joists it crosses, by any path, with floors alike or not', () => {
    fc.assert(
      fc.property(floors, fc.option(floors), at, at, (floor, own, a, b) => {
        const plan = house({ floor, room: own === null ? {} : { floor: own } });
        const place = ({ x, y }: typeof a) => ({
          storey: 'ff',
          at: [x, y] as [number, number],
          heightMm: -110,
        });
        const { segments } = plainRoute(requestBetween(plan, [place(a), place(b)]));
        const crossed = segments.reduce((sum, segment) => sum + segment.joistsCrossed, 0);
        expect(holesPlaced(plan, segments)).toHaveLength(crossed);
      }),
    );
  });

  it('are each in a joist that is placed, wherever the direction is known', () => {
    fc.assert(
      fc.property(floors, at, at, (floor, a, b) => {
        fc.pre(floor.joistsRunDeg !== undefined);
        const plan = house({ floor });
        const place = ({ x, y }: typeof a) => ({
          storey: 'ff',
          at: [x, y] as [number, number],
          heightMm: -110,
        });
        const { segments } = plainRoute(requestBetween(plan, [place(a), place(b)]));
        for (const { joistMm, spanMm } of holesPlaced(plan, segments)) {
          expect(joistMm).not.toBeNull();
          expect(spanMm).not.toBeNull();
        }
      }),
    );
  });

  it.each(demoNames)('of the runs of %s are as many as are drilled, and turn round with the run', (name) => {
    for (const { runs, worked } of demoEstimate(name).schemes)
      for (const { segments } of runs) {
        const holes = holesPlaced(worked.plan, segments);
        expect(holes).toHaveLength(segments.reduce((sum, each) => sum + each.joistsCrossed, 0));
        expect(holesPlaced(worked.plan, reversedSegments(segments))).toEqual(holes.toReversed());
      }
  });

  it('are the same from either end', () => {
    fc.assert(
      fc.property(floors, at, at, (floor, a, b) => {
        const plan = house({ floor });
        const count = joistsCrossed(floor, planPoint(a.x, a.y), planPoint(b.x, b.y));
        const one = [across([a.x, a.y], [b.x, b.y], { joistsCrossed: count })];
        expect(holesPlaced(plan, reversedSegments(one))).toEqual(holesPlaced(plan, one).toReversed());
      }),
    );
  });

  it('lie on the run, each in another joist, at whole spacings from the origin', () => {
    fc.assert(
      fc.property(at, at, (a, b) => {
        const holes = holesPlaced(house(), [across([a.x, a.y], [b.x, b.y])]);
        for (const { at: place, joistMm } of holes) {
          expect((joistMm ?? 1) % 400).toBe(0);
          expect(place[1]).toBeCloseTo(joistMm ?? Number.NaN, 6);
          const cross = (place[0] - a.x) * (b.y - a.y) - (place[1] - a.y) * (b.x - a.x);
          expect(Math.abs(cross)).toBeLessThan(1);
        }
        expect(new Set(holes.map(({ joistMm }) => joistMm)).size).toBe(holes.length);
      }),
    );
  });

  it('take one at an end that counts, and leave one that does not', () => {
    const plan = house();
    const ended = (joists: number) =>
      holesPlaced(plan, [across([1200, 500], [1200, 1200], { joistsCrossed: joists })]).map(
        ({ joistMm }) => joistMm,
      );
    expect(ended(1)).toEqual([800]);
    expect(ended(2)).toEqual([800, 1200]);
  });
});

describe('a hole in a joist', () => {
  const judgedAt = (xMm: number, plan = house()) => holesPlaced(plan, [across([xMm, 500], [xMm, 1000])])[0];

  // Approved Document A and BS 5268-2, the worked case of tests/outside/building-and-site-limits.test.ts: 4000 mm of span.
  it.each([
    [100, 'neither'],
    [300, 'notch'],
    [999, 'notch'],
    [1000, 'hole'],
    [1600, 'hole'],
    [2000, 'neither'],
    [2900, 'hole'],
    [3700, 'notch'],
  ] as const)('%d mm from a support of a 4 m span is judged "%s"', (xMm, judged) => {
    expect(judgedAt(xMm)).toMatchObject({
      joistMm: 800,
      at: [xMm, 800],
      storeyId: 'ff',
      spanMm: 4000,
      fromSupportMm: Math.min(xMm, 4000 - xMm),
      isSpanAssumed: false,
      judged,
    });
  });

  it('has its span to the nearest wall of masonry below, and is none over that wall', () => {
    const middle = (more: Partial<Wall> = {}) =>
      house({ below: [wall('mid', [2000, 0], [2000, 3000], more)] });
    expect(judgedAt(600, middle())).toMatchObject({ spanMm: 1950, fromSupportMm: 600, judged: 'hole' });
    expect(judgedAt(2600, middle())).toMatchObject({ spanMm: 1950, fromSupportMm: 550, judged: 'hole' });
    expect(judgedAt(2000, middle())).toMatchObject({ spanMm: null, fromSupportMm: 0, judged: 'neither' });
    const stud = { core: 'timber-stud' } as const;
    expect(judgedAt(600, middle(stud))).toMatchObject({ spanMm: 4000 });
    expect(judgedAt(600, middle({ ...stud, structural: true }))).toMatchObject({ spanMm: 1950 });
  });

  it('takes no wall along the joists, nor one that ends beside them, for a support', () => {
    const along = house({ below: [wall('along', [500, 800], [3500, 800])] });
    expect(judgedAt(1200, along)).toMatchObject({ spanMm: 4000, judged: 'hole' });
    const short = house({ below: [wall('short', [2000, 1500], [2000, 3000])] });
    expect(judgedAt(1200, short)).toMatchObject({ spanMm: 4000 });
  });

  it('has a span that is only assumed at a stud wall, and on the lowest floor with its sleeper walls', () => {
    const studs = house({ wall: { core: 'timber-stud' }, below: [] });
    // The brick below stands under the studs, face under face.
    expect(judgedAt(1200, studs)).toMatchObject({ isSpanAssumed: false });
    const onStuds = planOf([
      storey('gf'),
      storey('ff', {
        floorLevelMm: 2700,
        floor: floor200,
        walls: fourWalls(4000, 3000, { more: { core: 'timber-stud' } }).walls,
        rooms: [room('r', box.sides)],
      }),
    ]);
    expect(judgedAt(1200, onStuds)).toMatchObject({ spanMm: 4000, isSpanAssumed: true, judged: 'hole' });
    expect(judgedAt(1200, house({ below: null }))).toMatchObject({ spanMm: 4000, isSpanAssumed: true });
  });

  it('is at a support where the cable lies along the face of the wall that carries', () => {
    for (const xMm of [0, 4000])
      expect(judgedAt(xMm)).toMatchObject({ fromSupportMm: 0, spanMm: 4000, judged: 'neither' });
  });

  it('goes by the room’s own floor', () => {
    const plan = house({ room: { floor: { ...floor200, joistsRunDeg: 90 } } });
    const count = joistsCrossed(
      { ...floor200, joistsRunDeg: 90 },
      planPoint(500, 1000),
      planPoint(1000, 1000),
    );
    const [hole] = holesPlaced(plan, [across([500, 1000], [1000, 1000], { joistsCrossed: count })]);
    expect(hole).toMatchObject({ spanMm: 3000, judged: 'hole' });
    expect(hole?.at[0]).toBeCloseTo(800, 6);
    expect(hole?.fromSupportMm).toBeCloseTo(1000, 6);
  });

  it('is judged by nothing where the direction, the depth, the room or the count is not known', () => {
    const { joistsRunDeg: _, ...noDirection } = floor200;
    const spread = holesPlaced(house({ floor: noDirection }), [
      across([1200, 500], [1200, 1700], { joistsCrossed: 2 }),
    ]);
    expect(spread).toMatchObject([
      { at: [1200, 900], joistMm: null, spanMm: null, fromSupportMm: null, judged: 'unknown' },
      { at: [1200, 1300], joistMm: null, judged: 'unknown' },
    ]);
    const { joistDepthMm: __, ...noDepth } = floor200;
    expect(judgedAt(1200, house({ floor: noDepth }))).toMatchObject({ spanMm: 4000, judged: 'unknown' });
    const open = planOf([storey('gf'), storey('ff', { floorLevelMm: 2700, floor: floor200 })]);
    expect(judgedAt(1200, open)).toMatchObject({ joistMm: 800, spanMm: null, judged: 'unknown' });
    expect(holesPlaced(house(), [across([1200, 500], [1200, 1000], { joistsCrossed: 7 })])).toHaveLength(7);
    expect(holesPlaced(house(), [across([1200, 500], [1200, 1000], { storeyId: 'nowhere' })])).toMatchObject([
      { judged: 'unknown' },
    ]);
  });
});
