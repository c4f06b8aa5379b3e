import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Floor, Opening, Room, Storey, Wall } from '#model/building.ts';
import type { Place, Point } from '#model/installation.ts';

type At = readonly [number, number];

/** A wall for a test: 100 mm brick unless said otherwise. */
export function wall(id: string, from: At, to: At, more: Partial<Wall> = {}): Wall {
  const face = { finish: 'plaster', lining: 'none' } as const;
  return {
    id,
    from: [from[0], from[1]],
    to: [to[0], to[1]],
    thicknessMm: 100,
    core: 'brick',
    external: false,
    faces: { left: face, right: face },
    openings: [],
    ...more,
  };
}

/** A door at a place along a wall, 800 wide and 2000 high. */
export function door(id: string, alongMm: number, more: Partial<Opening> = {}): Opening {
  return { id, kind: 'door', alongMm, widthMm: 800, sillMm: 0, headMm: 2000, ...more };
}

/** A timber floor whose boards lift: joists along x at 400. */
export const timberFloor: Floor = {
  build: 'suspended-timber',
  voidMm: 300,
  joistDepthMm: 175,
  joistWidthMm: 50,
  joistSpacingMm: 400,
  joistsRunDeg: 0,
  covering: 'boards',
  liftable: true,
};

/** A floor with no way under it. */
export const solidFloor: Floor = { build: 'solid', voidMm: 0, covering: 'tile' };

/** A room for a test by its walls, each with the side that looks into it: `['w1', 'left']`. */
export function room(
  id: string,
  walls: readonly (readonly [string, 'left' | 'right'])[],
  more: Partial<Room> = {},
): Room {
  return {
    id,
    name: id,
    use: 'living',
    block: 'main',
    walls: walls.map(([each, side]) => ({ wall: each, side })),
    ...more,
  };
}

/** A storey for a test: at level 0, 2500 high, on a timber floor, no loft. */
export function storey(id: string, more: Partial<Storey> = {}): Storey {
  return {
    id,
    name: id,
    floorLevelMm: 0,
    heightMm: 2500,
    floor: timberFloor,
    ceiling: { lining: 'plasterboard', loft: false },
    walls: [],
    rooms: [],
    fixtures: [],
    stairwells: [],
    ...more,
  };
}

/** A point for a test; without a place when none is given. */
export function point(id: string, place?: Place, more: Partial<Point> = {}): Point {
  const bare: Point = { id, label: id, status: 'existing', kind: 'socket-twin', features: [], photos: [] };
  return { ...bare, ...(place === undefined ? {} : { place }), ...more };
}

/** The plan of some storeys and points. */
export function planOf(storeys: Storey[], points: Point[] = []): Plan {
  return buildPlan({ storeys, points, boards: [] });
}

/** Four walls round a room of `widthMm` by `depthMm` inside, its lower left inside corner at the origin: s, e, n, w. */
export function fourWalls(
  widthMm: number,
  depthMm: number,
  { prefix = '', more = {} }: { prefix?: string; more?: Partial<Wall> } = {},
): { walls: Wall[]; sides: (readonly [string, 'left' | 'right'])[] } {
  const half = (more.thicknessMm ?? 100) / 2;
  const [x0, y0, x1, y1] = [-half, -half, widthMm + half, depthMm + half];
  return {
    walls: [
      wall(`${prefix}s`, [x0, y0], [x1, y0], more),
      wall(`${prefix}e`, [x1, y0], [x1, y1], more),
      wall(`${prefix}n`, [x1, y1], [x0, y1], more),
      wall(`${prefix}w`, [x0, y1], [x0, y0], more),
    ],
    sides: ['s', 'e', 'n', 'w'].map((name) => [`${prefix}${name}`, 'left'] as const),
  };
}

/** The same house seen in a mirror (x turned round) or moved: everything drawn, the points with it. */
export function movedStoreys(storeys: readonly Storey[], { mirror = false, byMm = [0, 0] as At }): Storey[] {
  const at = ([x, y]: At): [number, number] => [(mirror ? -x : x) + byMm[0], y + byMm[1]];
  const floor = (each: Floor): Floor =>
    mirror && each.joistsRunDeg !== undefined ? { ...each, joistsRunDeg: 180 - each.joistsRunDeg } : each;
  return storeys.map((each) => ({
    ...each,
    floor: floor(each.floor),
    walls: each.walls.map((one) => ({
      ...one,
      from: at(one.from),
      to: at(one.to),
      faces: mirror ? { left: one.faces.right, right: one.faces.left } : one.faces,
      openings: one.openings.map((opening) =>
        opening.side === undefined ? opening : { ...opening, side: otherSide(opening.side, mirror) },
      ),
    })),
    rooms: each.rooms.map((one) => ({
      ...one,
      walls: one.walls.map(({ wall: id, side }) => ({ wall: id, side: otherSide(side, mirror) })),
      ...(one.floor === undefined ? {} : { floor: floor(one.floor) }),
    })),
    stairwells: each.stairwells.map((outline) => outline.map(at)),
  }));
}

/** A place on a wall in a house that was moved or mirrored. */
export function movedPlace(place: Extract<Place, { wall: string }>, mirror: boolean): Place {
  return { ...place, side: otherSide(place.side, mirror) };
}

function otherSide(side: 'left' | 'right', mirror: boolean): 'left' | 'right' {
  if (!mirror) return side;
  return side === 'left' ? 'right' : 'left';
}
