import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { freePosition } from '#engine/plan/position-of-place.ts';
import { joistLanes } from '#engine/ways/graph/joist-lanes.ts';
import { holesPlaced } from '#engine/ways/holes-placed.ts';
import { houseWays } from '#engine/ways/house-ways.ts';
import type { WayPlace } from '#engine/ways/way-cost.ts';
import type { Opening, Wall } from '#model/building.ts';
import { fourWalls, planOf, room, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';
import { tariff } from './demo-houses.ts';

const box = fourWalls(6000, 5000);
const under = fourWalls(6000, 5000, { prefix: 'g-' });
const floor = { ...timberFloor, joistDepthMm: 200 };

/** Six metres by five over a room of its size, and what stands in that room. */
function house(below: Wall[] = [], openings: Opening[] = []): Plan {
  const walls = box.walls.map((each) => (each.id === 'e' ? { ...each, openings } : each));
  return planOf([
    storey('gf', { walls: [...under.walls, ...below], rooms: [room('g', under.sides)] }),
    storey('ff', { floorLevelMm: 2700, floor, walls, rooms: [room('r', box.sides)] }),
  ]);
}

const outline = [planPoint(0, 0), planPoint(6000, 0), planPoint(6000, 5000), planPoint(0, 5000)];
const lanesOf = (plan: Plan) =>
  joistLanes(plan, 'ff', outline, floor).map(({ alongMm }) => Math.round(alongMm));

const breast: Opening = {
  id: 'b',
  kind: 'breast',
  alongMm: 1500,
  widthMm: 1500,
  sillMm: 0,
  headMm: 2400,
  side: 'left',
};

describe('the lanes across the joists of a room', () => {
  it('lie just inside the windows for holes, and for notches next to the supports', () => {
    // 0.07, 0.25 and 0.40 of 6000 mm from either support.
    expect(lanesOf(house())).toEqual([430, 1510, 2390, 3610, 4490, 5570]);
  });

  it('go by each span where a wall below carries', () => {
    // The same of 2950 mm on either side of it.
    expect(lanesOf(house([wall('mid', [3000, -50], [3000, 5050])]))).toEqual([
      217, 748, 1170, 1780, 2203, 2734, 3267, 3798, 4220, 4830, 5253, 5784,
    ]);
  });

  it('serve joists that bear alike and those that do not with few', () => {
    const plain = lanesOf(house()).length;
    expect(lanesOf(house([], [breast])).length).toBeLessThanOrEqual(2 * plain);
  });

  it('are none where the direction is not known', () => {
    const { joistsRunDeg: _, ...unknown } = floor;
    expect(joistLanes(house(), 'ff', outline, unknown)).toEqual([]);
  });
});

describe('a way through a floor', () => {
  const spot = fc.record({ x: fc.integer({ min: 100, max: 5900 }), y: fc.integer({ min: 100, max: 4900 }) });
  const houses = [house(), house([wall('mid', [2500, -50], [2500, 5050])]), house([], [breast])];

  it('cuts joists only where a hole or a notch may be', () => {
    fc.assert(
      fc.property(fc.constantFrom(...houses), spot, spot, (plan, a, b) => {
        const ends = [a, b].map(({ x, y }): WayPlace => {
          const position = freePosition(plan, 'ff', planPoint(x, y), -110);
          if (position === null) throw new Error('no storey');
          return { position, mount: null };
        });
        const [from, to] = ends as [WayPlace, WayPlace];
        const way = houseWays(plan, tariff).way(from, to, 'pence');
        if (way === null || way.cost.poor) return;
        const judged = holesPlaced(plan, way.segments).map((hole) => hole.judged);
        expect(judged.filter((each) => each !== 'hole' && each !== 'notch')).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('finds one for any two places that are not in a breast', () => {
    fc.assert(
      fc.property(spot, spot, (a, b) => {
        const [plan] = houses as [Plan];
        const ends = [a, b].map(({ x, y }) => freePosition(plan, 'ff', planPoint(x, y), -110));
        const [from, to] = ends.map((position) => ({ position, mount: null }) as WayPlace);
        if (from === undefined || to === undefined) throw new Error('no storey');
        expect(houseWays(plan, tariff).way(from, to, 'pence')?.cost.poor ?? true).toBe(false);
      }),
      { numRuns: 30 },
    );
  });
});
