import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { isInStairwell, roomOfWallFace, surroundingsAt } from '#engine/plan/surroundings.ts';
import { voidAbove, voidBelow } from '#engine/plan/voids.ts';
import type { Place } from '#model/installation.ts';
import { planOf, room, solidFloor, storey, timberFloor, wall } from './small-house.ts';

/** Two rooms side by side, 3 by 3 m each, a 100 mm wall between; the right one on a solid floor. */
const ground = storey('gf', {
  walls: [
    wall('s1', [-50, -50], [3050, -50]),
    wall('s2', [3050, -50], [6150, -50]),
    wall('e', [6150, -50], [6150, 3050]),
    wall('n2', [6150, 3050], [3050, 3050]),
    wall('n1', [3050, 3050], [-50, 3050]),
    wall('w', [-50, 3050], [-50, -50]),
    wall('mid', [3050, -50], [3050, 3050]),
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
      { floor: solidFloor },
    ),
  ],
});
const upper = storey('ff', {
  floorLevelMm: 2725,
  walls: [
    wall('us', [-50, -50], [3050, -50]),
    wall('ue', [3050, -50], [3050, 3050]),
    wall('un', [3050, 3050], [-50, 3050]),
    wall('uw', [-50, 3050], [-50, -50]),
  ],
  rooms: [
    room('u', [
      ['us', 'left'],
      ['ue', 'left'],
      ['un', 'left'],
      ['uw', 'left'],
    ]),
  ],
  stairwells: [
    [
      [0, 0],
      [900, 0],
      [900, 2500],
      [0, 2500],
    ],
  ],
  ceiling: { lining: 'plasterboard', loft: true },
});
const plan = planOf([ground, upper]);

function around(of: Plan, place: Place) {
  const position = positionOfPlace(of, place);
  return (
    position && {
      ...surroundingsAt(of, position),
      below: voidBelow(of, position),
      above: voidAbove(of, position),
    }
  );
}

describe('surroundingsAt', () => {
  it('finds the room on the side of the wall that the spot is on', () => {
    const spot = { wall: 'mid', alongMm: 1500, heightMm: 300 };
    expect(around(plan, { ...spot, side: 'left' })?.room?.room.id).toBe('a');
    expect(around(plan, { ...spot, side: 'right' })?.room?.room.id).toBe('b');
  });

  it('lets the room’s own floor win over the storey’s', () => {
    expect(around(plan, { storey: 'gf', at: [1000, 1000], heightMm: 0 })?.floor).toBe(timberFloor);
    expect(around(plan, { storey: 'gf', at: [5000, 1000], heightMm: 0 })?.floor).toBe(solidFloor);
  });

  it('has the storey’s floor and no room inside a wall and outside the house', () => {
    expect(around(plan, { storey: 'gf', at: [3050, 1000], heightMm: 0 })).toMatchObject({
      room: null,
      floor: timberFloor,
    });
    expect(around(plan, { storey: 'gf', at: [-9000, 0], heightMm: 0 })?.room).toBeNull();
  });

  it('knows the room of a face by its name where the room’s walls do not close', () => {
    const open = planOf([{ ...ground, rooms: [room('a', [['mid', 'left']])] }]);
    expect(roomOfWallFace(open, { wallId: 'mid', side: 'left', alongMm: 10 })?.room.id).toBe('a');
    expect(roomOfWallFace(open, { wallId: 'mid', side: 'right', alongMm: 10 })).toBeNull();
  });

  it('knows a stairwell', () => {
    expect(isInStairwell(plan, 'ff', planPoint(500, 500))).toBe(true);
    expect(isInStairwell(plan, 'ff', planPoint(1500, 500))).toBe(false);
    expect(isInStairwell(plan, 'gf', planPoint(500, 500))).toBe(false);
  });
});

describe('voidBelow and voidAbove', () => {
  it('run 110 mm below a timber floor, in the ceiling too where a room above covers the place', () => {
    const here = around(plan, { storey: 'gf', at: [1500, 1500], heightMm: 300 });
    expect(here?.below).toEqual({ kind: 'floor', storeyId: 'gf', levelMm: -110 });
    expect(here?.above).toEqual({ kind: 'floor', storeyId: 'ff', levelMm: 2615 });
  });

  it('are both missing on a solid floor under a flat roof', () => {
    const here = around(plan, { storey: 'gf', at: [5000, 1500], heightMm: 300 });
    expect(here).toMatchObject({ below: null, above: null });
  });

  it('reach under the wall that the room above stands in', () => {
    expect(around(plan, { wall: 'mid', side: 'left', alongMm: 1500, heightMm: 300 })?.above?.storeyId).toBe(
      'ff',
    );
  });

  it('are a loft where the ceiling has one, on the ceiling’s joists', () => {
    const here = around(plan, { storey: 'ff', at: [1500, 1500], heightMm: 300 });
    expect(here?.above).toEqual({ kind: 'loft', storeyId: 'ff', levelMm: 2725 + 2500 + 100 });
  });

  it('keep to half of a shallow void', () => {
    const shallow = planOf([storey('gf', { floor: { ...timberFloor, voidMm: 100 } })]);
    expect(around(shallow, { storey: 'gf', at: [0, 0], heightMm: 0 })?.below?.levelMm).toBe(-50);
  });

  it('use a hung ceiling below concrete from below only', () => {
    const concrete = planOf([
      storey('gf', { heightMm: 2400 }),
      storey('ff', { floorLevelMm: 2800, floor: { build: 'concrete', voidMm: 400, covering: 'none' } }),
    ]);
    expect(around(concrete, { storey: 'gf', at: [0, 0], heightMm: 0 })?.above?.levelMm).toBe(2500);
    expect(around(concrete, { storey: 'ff', at: [0, 0], heightMm: 0 })?.below).toBeNull();
  });
});
