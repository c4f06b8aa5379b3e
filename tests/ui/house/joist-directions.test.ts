import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSameDirection, planDirections, roomDirections } from '../../../ui/house/joist-directions.ts';
import type { RoomSide } from '../../../ui/house/room-sides.ts';

const sidesOf = (corners: readonly (readonly [number, number])[]): readonly RoomSide[] =>
  corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return { from, to, lengthMm: Math.hypot(to[0] - from[0], to[1] - from[1]), walls: [] };
  });

describe('the ways in which joists may run', () => {
  it('are along the long side of a room and square to it, with how that lies on the plan', () => {
    const wide = sidesOf([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]);
    expect(roomDirections(wide)).toEqual([
      { deg: 0, words: 'Long side, across the plan' },
      { deg: 90, words: 'Short side, up the plan' },
    ]);
    const tall = sidesOf([
      [0, 0],
      [2000, 0],
      [2000, 3000],
      [0, 3000],
    ]);
    expect(roomDirections(tall).map(({ deg }) => deg)).toEqual([90, 0]);
    expect(roomDirections([])).toBe(planDirections);
  });

  it('are square to each other and less than half a turn, however a room lies (random)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3599 }),
        fc.integer({ min: 1000, max: 8000 }),
        (tenths, longMm) => {
          const radians = (tenths * Math.PI) / 1800;
          const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
          const turned = (x: number, y: number): [number, number] => [x * cos - y * sin, x * sin + y * cos];
          const room = sidesOf([
            turned(0, 0),
            turned(longMm, 0),
            turned(longMm, longMm / 2),
            turned(0, longMm / 2),
          ]);
          const [long, short] = roomDirections(room).map(({ deg }) => deg);
          if (long === undefined || short === undefined) throw new Error('No directions.');
          expect(isSameDirection(long, tenths / 10)).toBe(true);
          expect(isSameDirection(long + 90, short)).toBe(true);
          for (const deg of [long, short]) expect(deg >= 0 && deg < 180).toBe(true);
        },
      ),
    );
  });

  it('are the same from either end', () => {
    expect(isSameDirection(0, 180)).toBe(true);
    expect(isSameDirection(-90, 90)).toBe(true);
    expect(isSameDirection(179.8, 0)).toBe(true);
    expect(isSameDirection(0, 90)).toBe(false);
  });
});
