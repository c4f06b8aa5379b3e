import { describe, expect, it } from 'vitest';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { floorVoid } from '#engine/plan/voids.ts';
import { houseWays } from '#engine/ways/house-ways.ts';
import type { Floor } from '#model/building.ts';
import { tariff } from '#tests/engine/ways/demo-houses.ts';
import { planOf, room, storey, timberFloor, wall } from './small-house.ts';

const joists = (joistDepthMm: number | null, more: Partial<Floor> = {}): Floor => {
  const { joistDepthMm: _, ...bare } = timberFloor;
  return { ...bare, ...(joistDepthMm === null ? {} : { joistDepthMm }), ...more };
};

/** Two rooms beside each other, the second on a floor of its own. */
const besides = (floor: Floor, other: Floor) =>
  planOf([
    storey('ff', {
      floor,
      walls: [
        wall('s1', [-50, -50], [2500, -50]),
        wall('s2', [2500, -50], [5050, -50]),
        wall('e', [5050, -50], [5050, 3050]),
        wall('n2', [5050, 3050], [2500, 3050]),
        wall('n1', [2500, 3050], [-50, 3050]),
        wall('w', [-50, 3050], [-50, -50]),
        wall('mid', [2500, -50], [2500, 3050], { core: 'timber-stud' }),
      ],
      rooms: [
        room('a', [
          ['s1', 'left'],
          ['mid', 'left'],
          ['n1', 'left'],
          ['w', 'left'],
        ]),
        room(
          'b',
          [
            ['s2', 'left'],
            ['e', 'left'],
            ['n2', 'left'],
            ['mid', 'right'],
          ],
          { floor: other },
        ),
      ],
    }),
  ]);

describe('the level of cable under a floor', () => {
  it('is 110 mm below it where nobody measured the joists, and where cable passes beneath them', () => {
    const unknown = joists(null);
    expect(floorVoid(planOf([storey('ff', { floor: unknown })]), 'ff', unknown)?.levelMm).toBe(-110);
    const deep = joists(100, { voidMm: 450 });
    expect(floorVoid(planOf([storey('ff', { floor: deep })]), 'ff', deep)?.levelMm).toBe(-110);
  });

  it('is one for a storey, by its shallowest joists, so that cable goes level from room to room', () => {
    const [shallow, deep] = [joists(150), joists(220)];
    const plan = besides(deep, shallow);
    expect([deep, shallow].map((floor) => floorVoid(plan, 'ff', floor)?.levelMm)).toEqual([-97, -97]);
    const [from, to] = [
      { wall: 'w', side: 'left', alongMm: 1500, heightMm: 450 } as const,
      { wall: 'e', side: 'left', alongMm: 1500, heightMm: 450 } as const,
    ].map((place) => {
      const position = positionOfPlace(plan, place);
      if (position === null) throw new Error('a place');
      return { position, mount: null };
    });
    if (from === undefined || to === undefined) throw new Error('two places');
    const way = houseWays(plan, tariff).way(from, to, 'pence');
    const under = way?.segments.filter(
      ({ direction, medium }) => direction !== 'vertical' && medium.startsWith('void'),
    );
    expect(under?.length).toBeGreaterThan(0);
    expect(new Set(under?.flatMap((each) => [each.from.levelMm, each.to.levelMm]))).toEqual(new Set([-97]));
  });
});
