import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { houseWays } from '#engine/ways/house-ways.ts';
import type { Segment } from '#engine/ways/run.ts';
import { pathLengthMm } from '#engine/ways/segment.ts';
import type { Floor, Storey } from '#model/building.ts';
import type { Place } from '#model/installation.ts';
import {
  door,
  fourWalls,
  movedPlace,
  movedStoreys,
  planOf,
  room,
  solidFloor,
  storey,
  timberFloor,
} from '#tests/engine/plan/small-house.ts';
import { requestBetween } from './demo-houses.ts';

type OnWall = Extract<Place, { wall: string }>;

const floors = fc.constantFrom<Floor>(
  timberFloor,
  { ...timberFloor, joistsRunDeg: 90 },
  { ...timberFloor, liftable: false },
  solidFloor,
);
const cores = fc.constantFrom('brick', 'block', 'concrete', 'timber-stud' as const);

/** Two storeys of one room each, with a door and a window, and two places on inner faces. */
const houses = fc
  .record({
    widthMm: fc.integer({ min: 2500, max: 7000 }),
    depthMm: fc.integer({ min: 2500, max: 7000 }),
    core: cores,
    groundFloor: floors,
    upperFloor: floors,
    loft: fc.boolean(),
    doorAtMm: fc.integer({ min: 100, max: 1500 }),
    windowAtMm: fc.integer({ min: 100, max: 1200 }),
  })
  .map(({ widthMm, depthMm, core, groundFloor, upperFloor, loft, doorAtMm, windowAtMm }): Storey[] => {
    const level = (id: string, floorLevelMm: number, floor: Floor) => {
      const { walls, sides } = fourWalls(widthMm, depthMm, { prefix: id, more: { core } });
      const opened = walls.map((each) => {
        if (each.id === `${id}s`) return { ...each, openings: [door(`${id}d`, doorAtMm)] };
        const window = { kind: 'window', sillMm: 900, headMm: 2100, widthMm: 1000 } as const;
        return each.id === `${id}n` ? { ...each, openings: [door(`${id}win`, windowAtMm, window)] } : each;
      });
      const ceiling = { lining: 'plasterboard', loft: loft && id === 'ff' } as const;
      return storey(id, { floorLevelMm, floor, walls: opened, rooms: [room(`${id}r`, sides)], ceiling });
    };
    return [level('gf', 0, groundFloor), level('ff', 2725, upperFloor)];
  });
const places = fc
  .record({
    level: fc.constantFrom('gf', 'ff'),
    name: fc.constantFrom('s', 'e', 'n', 'w'),
    alongMm: fc.integer({ min: 60, max: 2500 }),
    heightMm: fc.constantFrom(300, 450, 1100, 1900),
  })
  .map(
    ({ level, name, alongMm, heightMm }): OnWall => ({
      wall: `${level}${name}`,
      side: 'left',
      alongMm,
      heightMm,
    }),
  );
const pairs = fc.tuple(houses, places, places);

function path(plan: Plan, from: Place, to: Place): readonly Segment[] {
  return plainRoute(requestBetween(plan, [from, to])).segments;
}

/** What the way found costs, thousandths of a penny; nought where nothing that is drawn leads there. */
function costOf(plan: Plan, from: Place, to: Place): number {
  const request = requestBetween(plan, [from, to]);
  const end = (position: Position) => ({ position, mount: null });
  const ways = houseWays(plan, request.tariff);
  return ways.way(end(request.from), end(request.to), 'pence')?.cost.millipence ?? 0;
}

describe('a path between any two places', () => {
  it('joins end to end from the one to the other', () => {
    fc.assert(
      fc.property(pairs, ([house, from, to]) => {
        const plan = planOf(house);
        const request = requestBetween(plan, [from, to]);
        let here = request.from;
        for (const segment of path(plan, from, to)) {
          expect(segment.from.at[0]).toBeCloseTo(here.at[0], 1);
          expect(segment.from.at[1]).toBeCloseTo(here.at[1], 1);
          expect(segment.from.levelMm).toBeCloseTo(here.levelMm, 1);
          here = segment.to;
        }
        expect(here.at[0]).toBeCloseTo(request.to.at[0], 1);
        expect(here.at[1]).toBeCloseTo(request.to.at[1], 1);
        expect(here.levelMm).toBeCloseTo(request.to.levelMm, 1);
      }),
    );
  });

  it('is no shorter than the straight line', () => {
    fc.assert(
      fc.property(pairs, ([house, from, to]) => {
        const { from: a, to: b } = requestBetween(planOf(house), [from, to]);
        const straightMm = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1], b.levelMm - a.levelMm);
        expect(pathLengthMm(path(planOf(house), from, to))).toBeGreaterThanOrEqual(straightMm - 0.1);
      }),
    );
  });

  it('is as long from the other end', () => {
    fc.assert(
      fc.property(pairs, ([house, from, to]) => {
        const plan = planOf(house);
        expect(pathLengthMm(path(plan, to, from))).toBeCloseTo(pathLengthMm(path(plan, from, to)), 1);
      }),
    );
  });

  it('costs as much in a mirror and when the house stands elsewhere, to a thousandth', () => {
    const wholeSpacings = fc.integer({ min: -75, max: 75 }).map((count) => count * 400);
    const moves = fc.record({
      mirror: fc.boolean(),
      // By whole spacings of joists: they are counted from the plan's origin.
      byMm: fc.tuple(wholeSpacings, wholeSpacings),
    });
    fc.assert(
      fc.property(pairs, moves, ([house, from, to], move) => {
        const moved = planOf(movedStoreys(house, move));
        const there = costOf(moved, movedPlace(from, move.mirror), movedPlace(to, move.mirror));
        const here = costOf(planOf(house), from, to);
        expect(Math.abs(there - here)).toBeLessThanOrEqual(here / 1000);
      }),
    );
  });

  it('is plumb, level, or through a wall, and never diagonal in one', () => {
    fc.assert(
      fc.property(pairs, ([house, from, to]) => {
        for (const segment of path(planOf(house), from, to)) expect(segment.direction).not.toBe('sloping');
      }),
    );
  });

  it('never lies in a door or a window of the wall that it is in', () => {
    fc.assert(
      fc.property(pairs, ([house, from, to]) => {
        const plan = planOf(house);
        // Places in an opening are drawn wrongly: any path from them lies in it.
        fc.pre([from, to].every((place) => !inOpening(plan, place)));
        for (const segment of path(plan, from, to)) {
          const [a, b] = [segment.from.onWall, segment.to.onWall];
          if (a === undefined || b === undefined || a.wallId !== b.wallId) continue;
          const middle = {
            wall: a.wallId,
            side: a.side,
            alongMm: (a.alongMm + b.alongMm) / 2,
            heightMm: (segment.from.heightMm + segment.to.heightMm) / 2,
          };
          expect(inOpening(plan, middle)).toBe(false);
        }
      }),
    );
  });
});

function inOpening(plan: Plan, { wall, alongMm, heightMm }: OnWall): boolean {
  return (plan.wallById.get(wall)?.wall.openings ?? []).some(
    (opening) =>
      alongMm > opening.alongMm &&
      alongMm < opening.alongMm + opening.widthMm &&
      heightMm > opening.sillMm &&
      heightMm < opening.headMm,
  );
}

describe('the joists that a path crosses', () => {
  it('are those that a count along the floor finds', () => {
    const spots = fc.tuple(
      fc.record({ x: fc.integer({ min: 0, max: 6000 }), y: fc.integer({ min: 0, max: 6000 }) }),
      fc.record({ x: fc.integer({ min: 0, max: 6000 }), y: fc.integer({ min: 0, max: 6000 }) }),
    );
    const open = planOf([storey('gf')]);
    fc.assert(
      fc.property(spots, ([a, b]) => {
        const at = ({ x, y }: { x: number; y: number }): Place => ({
          storey: 'gf',
          at: [x, y],
          heightMm: -110,
        });
        let count = 0;
        for (let y = Math.min(a.y, b.y) + 1; y < Math.max(a.y, b.y); y += 1) if (y % 400 === 0) count += 1;
        const crossed = path(open, at(a), at(b)).reduce((sum, { joistsCrossed }) => sum + joistsCrossed, 0);
        expect(crossed).toBe(count);
      }),
    );
  });
});
