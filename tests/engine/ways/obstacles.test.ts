import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { houseWays, type PricedWay } from '#engine/ways/house-ways.ts';
import type { WayPlace } from '#engine/ways/way-cost.ts';
import type { Ceiling, Fixture, Floor, Opening, Storey, Wall } from '#model/building.ts';
import type { Place } from '#model/installation.ts';
import {
  door,
  fourWalls,
  planOf,
  room,
  solidFloor,
  storey,
  timberFloor,
  wall,
} from '#tests/engine/plan/small-house.ts';
import { tariff } from './demo-houses.ts';

/** One room of 5 m by 3 m, in brick on a solid floor unless said otherwise. */
interface Room {
  readonly core?: Wall['core'];
  readonly insulated?: boolean;
  readonly floor?: Floor;
  readonly ceiling?: Ceiling;
  /** In the wall in front, 5 m long. */
  readonly openings?: Opening[];
  readonly fixtures?: Fixture[];
}

const outer = { external: true, thicknessMm: 250 };
const box = fourWalls(5000, 3000, { more: outer });
const bare: Ceiling = { lining: 'plasterboard', loft: false };

function storeyOf({
  core = 'brick',
  insulated = false,
  floor = solidFloor,
  ceiling = bare,
  openings = [],
  fixtures = [],
}: Room): Storey {
  const walls = box.walls.map((each) => ({
    ...each,
    core,
    ...(insulated ? { insulated } : {}),
    openings: each.id === 's' ? openings : [],
  }));
  return storey('gf', { floor, ceiling, walls, rooms: [room('r', box.sides)], fixtures });
}

const onWall = (wallId: string, alongMm: number, heightMm: number): Place => ({
  wall: wallId,
  side: 'left',
  alongMm,
  heightMm,
});

function endAt(plan: Plan, place: Place): WayPlace {
  const position = positionOfPlace(plan, place);
  if (position === null) throw new Error('a place');
  return { position, mount: null };
}

function wayIn(storeys: Storey[], [from, to]: readonly [Place, Place]): PricedWay | null {
  const plan = planOf(storeys);
  return houseWays(plan, tariff).way(endAt(plan, from), endAt(plan, to), 'pence');
}

const inFront = [onWall('s', 1000, 450), onWall('s', 4000, 450)] as const;
const higher = [onWall('s', 1000, 1100), onWall('s', 4000, 1100)] as const;
const across = [onWall('s', 2500, 450), onWall('n', 2500, 450)] as const;
const boxAt = (
  id: string,
  kind: Fixture['kind'],
  [x0, x1]: readonly [number, number],
  more: Partial<Fixture> = {},
): Fixture => ({
  id,
  kind,
  outline: [
    [x0, 0],
    [x1, 0],
    [x1, 700],
    [x0, 700],
  ],
  ...more,
});
const twoRooms = (party: boolean, isOpenAbove = false) => [
  storey('gf', {
    floor: solidFloor,
    ceiling: { ...bare, loft: isOpenAbove, ...(isOpenAbove ? { insulationMm: 0 } : {}) },
    walls: [
      wall('s1', [-50, -50], [2500, -50]),
      wall('s2', [2500, -50], [5050, -50]),
      wall('e', [5050, -50], [5050, 3050]),
      wall('n2', [5050, 3050], [2500, 3050]),
      wall('n1', [2500, 3050], [-50, 3050]),
      wall('w', [-50, 3050], [-50, -50]),
      wall('mid', [2500, -50], [2500, 3050], party ? { party: true } : {}),
    ],
    rooms: [
      room('a', [
        ['s1', 'left'],
        ['mid', 'left'],
        ['n1', 'left'],
        ['w', 'left'],
      ]),
      room('b', [
        ['s2', 'left'],
        ['e', 'left'],
        ['n2', 'left'],
        ['mid', 'right'],
      ]),
    ],
  }),
];
const through: readonly [Place, Place] = [
  { wall: 'mid', side: 'left', alongMm: 1500, heightMm: 450 },
  { wall: 'mid', side: 'right', alongMm: 1500, heightMm: 450 },
];
const upper = fourWalls(5000, 3000, { prefix: 'u-', more: outer });
const twoStoreys = (floor: Floor, well = false) => [
  storeyOf({}),
  storey('ff', {
    floorLevelMm: 2725,
    floor,
    walls: upper.walls,
    rooms: [room('u', upper.sides)],
    stairwells: well
      ? [
          [
            [1500, 0],
            [3500, 0],
            [3500, 900],
            [1500, 900],
          ],
        ]
      : [],
  }),
];
const upDown: readonly [Place, Place] = [
  onWall('s', 2500, 450),
  { wall: 'u-s', side: 'left', alongMm: 2500, heightMm: 450 },
];
const loft = (insulationMm: number): Ceiling => ({ lining: 'plasterboard', loft: true, insulationMm });
/** The stretches of a way with their lengths. */
const stretches = (way: PricedWay | null): string =>
  way === null
    ? 'none'
    : way.segments.map(({ medium, lengthMm }) => `${medium} ${Math.round(lengthMm)}`).join(', ');

const door800 = door('d', 2100);
const window1000 = door('d', 2000, { kind: 'window', sillMm: 900, headMm: 2100, widthMm: 1000 });
const breast1400 = door('d', 1800, { kind: 'breast', headMm: 2500, widthMm: 1400, side: 'left' });
const bath = boxAt('b', 'bath', [1800, 3200]);
const gasPipe = boxAt('g', 'gas-pipe', [2400, 2430], { fromMm: 0, toMm: 1200 });
const dropped = 'void-open 110';
const concrete: Floor = { build: 'concrete', voidMm: 200, covering: 'tile' };

/** An obstacle: the way without it and with it. Ceilings are at 2500 mm; along the top of a wall a cable keeps 75 mm under it. */
interface Case {
  readonly name: string;
  readonly ends: readonly [Place, Place];
  readonly without: { readonly in: Storey[]; readonly way: string };
  readonly with: { readonly in: Storey[]; readonly way: string; readonly poor?: true };
}

const level = 'wall-chase 3000';
const overTop = 'wall-chase 1975, wall-chase 3000, wall-chase 1975';
const roundTop = 'wall-chase 1975, wall-chase 2625, wall-chase 3000, wall-chase 2375, wall-chase 1975';
const alongUnder = `wall-chase 450, ${dropped}, void-along 3000, ${dropped}, wall-chase 450`;
const inStud = { core: 'timber-stud', floor: solidFloor } as const;

const cases: readonly Case[] = [
  {
    name: 'a door is gone over, never across its opening',
    ends: inFront,
    without: { in: [storeyOf({})], way: level },
    with: { in: [storeyOf({ openings: [door800] })], way: overTop },
  },
  {
    name: 'a window is gone over, not across its glass',
    ends: higher,
    without: { in: [storeyOf({})], way: level },
    with: {
      in: [storeyOf({ openings: [window1000] })],
      way: 'wall-chase 1325, wall-chase 3000, wall-chase 1325',
    },
  },
  {
    name: 'a chimney breast is not chased: the long way round the other walls',
    ends: inFront,
    without: { in: [storeyOf({})], way: level },
    with: {
      in: [storeyOf({ openings: [breast1400] })],
      way: 'wall-chase 1975, wall-chase 875, wall-chase 3000, wall-chase 5000, wall-chase 3000, wall-chase 1125, wall-chase 1975',
    },
  },
  {
    name: 'under the floor a chimney breast is gone round in front of it, not behind',
    ends: inFront,
    without: { in: [storeyOf({ floor: timberFloor })], way: alongUnder },
    with: {
      in: [storeyOf({ floor: timberFloor, openings: [breast1400] })],
      way: `wall-chase 450, ${dropped}, void-along 385, void-across 410, void-along 2480, void-across 410, void-along 135, ${dropped}, wall-chase 450`,
    },
  },
  {
    name: 'the zones of a bath are gone over, above 2.25 m',
    ends: inFront,
    without: { in: [storeyOf({})], way: level },
    with: { in: [storeyOf({ fixtures: [bath] })], way: overTop },
  },
  {
    name: 'a gas pipe is gone over, above where it ends',
    ends: inFront,
    without: { in: [storeyOf({})], way: level },
    with: { in: [storeyOf({ fixtures: [gasPipe] })], way: overTop },
  },
  {
    name: 'a solid floor has no way under it: round the walls, along their tops',
    ends: across,
    without: {
      in: [storeyOf({ floor: timberFloor })],
      way: `wall-chase 450, ${dropped}, void-along 385, void-across 3000, void-along 635, ${dropped}, wall-chase 450`,
    },
    with: { in: [storeyOf({})], way: roundTop },
  },
  {
    name: 'a floor full of insulation is kept out of',
    ends: across,
    without: {
      in: [storeyOf({ floor: { ...timberFloor, insulationMm: 0 } })],
      way: `wall-chase 450, ${dropped}, void-along 385, void-across 3000, void-along 635, ${dropped}, wall-chase 450`,
    },
    with: { in: [storeyOf({ floor: { ...timberFloor, insulationMm: 200 } })], way: roundTop },
  },
  {
    name: 'an insulated loft is kept out of',
    ends: across,
    without: {
      in: [storeyOf({ ceiling: loft(0) })],
      way: 'wall-chase 2050, loft 100, loft 3000, loft 250, loft 100, wall-chase 2050',
    },
    with: { in: [storeyOf({ ceiling: loft(200) })], way: roundTop },
  },
  {
    name: 'a stud wall full of insulation is used where there is no other way, and the way is called poor',
    ends: inFront,
    without: { in: [storeyOf(inStud)], way: 'stud-cavity 3000' },
    with: { in: [storeyOf({ ...inStud, insulated: true })], way: 'stud-cavity 3000', poor: true },
  },
  {
    name: 'a party wall is never drilled, though nothing else leads there',
    ends: through,
    without: { in: twoRooms(false), way: 'through-wall 100' },
    with: { in: twoRooms(true), way: 'none' },
  },
  {
    name: 'nor passed in a loft that lies open on both sides',
    ends: through,
    without: { in: twoRooms(false), way: 'through-wall 100' },
    with: { in: twoRooms(true, true), way: 'none' },
  },
  {
    name: 'a storey is gone through in its floor’s void; where it has none, in a riser in a corner',
    ends: upDown,
    without: { in: twoStoreys(timberFloor), way: 'wall-chase 2050, void-open 225, wall-chase 450' },
    with: {
      in: twoStoreys(solidFloor),
      way: 'wall-chase 1975, wall-chase 2300, wall-chase 75, riser 225, wall-chase 450, wall-chase 2300',
    },
  },
  {
    name: 'a concrete floor is not gone through',
    ends: upDown,
    without: { in: twoStoreys(timberFloor), way: 'wall-chase 2050, void-open 225, wall-chase 450' },
    with: { in: twoStoreys(concrete), way: 'none' },
  },
  {
    name: 'a stairwell is gone beside',
    ends: upDown,
    without: { in: twoStoreys(timberFloor), way: 'wall-chase 2050, void-open 225, wall-chase 450' },
    with: {
      in: twoStoreys(timberFloor, true),
      way: 'wall-chase 1975, wall-chase 2300, wall-chase 75, void-open 225, wall-chase 450, wall-chase 2300',
    },
  },
];

describe('what stands in the way of a cable', () => {
  it.each(cases)('$name', ({ ends, without, with: obstructed }) => {
    const free = wayIn(without.in, ends);
    expect(stretches(free)).toBe(without.way);
    expect(free?.cost.poor).toBe(false);
    const way = wayIn(obstructed.in, ends);
    expect(stretches(way)).toBe(obstructed.way);
    if (way !== null) expect(way.cost.poor).toBe(obstructed.poor ?? false);
    // What is in the way makes nothing cheaper, and in a wall nothing lies in it.
    if (free !== null && way !== null)
      expect(way.cost.millipence).toBeGreaterThanOrEqual(free.cost.millipence);
  });

  it('no chase lies in any opening of its wall', () => {
    for (const opening of [door800, window1000, breast1400]) {
      const way = wayIn([storeyOf({ openings: [opening] })], inFront);
      const inside = (way?.segments ?? []).filter(({ wallId, from, to }) => {
        const [low, high] = [from.at[0], to.at[0]].toSorted((a, b) => a - b);
        const [lowMm, highMm] = [opening.alongMm - 125, opening.alongMm - 125 + opening.widthMm];
        const heightMm = Math.min(from.heightMm, to.heightMm);
        const isOver = heightMm > opening.headMm || Math.max(from.heightMm, to.heightMm) < opening.sillMm;
        return wallId === 's' && !isOver && (low ?? 0) < highMm - 1 && (high ?? 0) > lowMm + 1;
      });
      expect(inside, opening.kind).toEqual([]);
    }
  });
});
