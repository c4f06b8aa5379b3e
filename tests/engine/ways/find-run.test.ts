import { describe, expect, it } from 'vitest';
import { plainRoute } from '#engine/ways/find-run.ts';
import { withinSegment } from '#engine/ways/position-in-leg.ts';
import { pathLengthMm } from '#engine/ways/segment.ts';
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
import {
  inShort,
  requestBetween,
  semi,
  semiPlaces,
  tariff,
  tariffOfChase,
  terrace,
  terracePlaces,
} from './demo-houses.ts';

const onSurface = { fromMount: 'surface', toMount: 'surface' } as const;
const { R1, W1, R6, W4, R8, W2, W3, joint } = terracePlaces;

function path(plan: ReturnType<typeof terrace>, from: Place, to: Place, more = {}) {
  return plainRoute(requestBetween(plan, [from, to], more)).segments;
}

describe('plainRoute in a terraced house', () => {
  const house = terrace();

  it('goes level along one wall between two boxes at one height', () => {
    expect(inShort(path(house, R6, W4))).toEqual(['wall-chase 900']);
    expect(path(house, R6, W4)[0]).toMatchObject({
      wallId: 'kitchen-w',
      side: 'right',
      // A chase of 25 mm, less the cable's 6.
      depthMm: 19,
      containment: 'oval',
    });
  });

  it('drops in brick, lies along the joists, goes across within a bay, and rises in studwork', () => {
    const segments = path(house, R8, W3);
    // Which of the two level stretches comes first is all one.
    expect(inShort(segments).toSorted()).toEqual(
      [
        'wall-chase 300',
        'void-open 110',
        'void-across 200',
        'void-along 3150',
        'void-open 110',
        'stud-cavity 450',
      ].toSorted(),
    );
    expect(segments.map((segment) => segment.joistsCrossed)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(segments.map((segment) => segment.containment)).toEqual([
      'oval',
      'oval',
      'none',
      'none',
      'none',
      'none',
    ]);
  });

  it('crosses two joists from the joint to the bedroom wall', () => {
    const segments = path(house, joint, W2);
    expect(pathLengthMm(segments)).toBeCloseTo(1560, 6);
    expect(segments.reduce((sum, segment) => sum + segment.joistsCrossed, 0)).toBe(2);
  });

  it('goes through the brick partition where both sides are in line with a box', () => {
    const segments = path(house, R1, W1);
    // Level in line with R1 and up in line with W1 or the other way round, and through the wall between.
    expect(inShort(segments).toSorted()).toEqual(['through-wall 130', 'wall-chase 150', 'wall-chase 300']);
    expect(segments[1]).toMatchObject({ wallId: 'hall-living' });
  });

  it('says the way in words for a person', () => {
    const { steps } = plainRoute(requestBetween(house, [R8, W3]));
    expect(steps).toHaveLength(6);
    expect(steps[0]).toContain('300 mm');
    expect(steps.join(' ')).toContain('3.1 m under the floor along the joists');
  });

  it('is only assumed where nobody knows whether the floor can be opened', () => {
    const { liftable: _, ...unsure } = timberFloor;
    const plan = planOf([storey('gf', { floor: unsure, walls: fourWalls(4000, 3000).walls })]);
    const segments = path(
      plan,
      { wall: 's', side: 'left', alongMm: 500, heightMm: 300 },
      { wall: 'n', side: 'left', alongMm: 500, heightMm: 300 },
    );
    expect(
      segments.filter(({ certainty }) => certainty === 'assumed').map(({ direction }) => direction),
    ).toEqual(['horizontal', 'horizontal']);
  });
});

describe('plainRoute in a semi on a solid floor', () => {
  const house = semi();

  it('goes up, over the ceiling and down', () => {
    // Joists of 220 mm under 22 mm of boards, floor at 2610: their middle is at 2478, 78 mm above the ceiling.
    expect(inShort(path(house, semiPlaces.A4, semiPlaces.unit))).toEqual([
      'wall-chase 1950',
      'void-open 78',
      'void-across 900',
      'void-along 800',
      'void-open 78',
      'wall-chase 1300',
    ]);
  });

  it('comes down from a joint above the ceiling', () => {
    expect(pathLengthMm(path(house, semiPlaces.joint, semiPlaces.B1))).toBeCloseTo(3200, 6);
    expect(pathLengthMm(path(house, semiPlaces.B3, semiPlaces.joint))).toBeCloseTo(5000, 6);
  });
});

describe('plainRoute chooses', () => {
  const box = fourWalls(5000, 4000);
  const withDoor = box.walls.map((each) =>
    each.id === 's' ? { ...each, openings: [door('d', 2000)] } : each,
  );
  const rooms = [room('r', box.sides)];
  const low = { wall: 's', side: 'left', heightMm: 300 } as const;
  const spots = [
    { ...low, alongMm: 1500 },
    { ...low, alongMm: 3500 },
  ] as const;

  it('the wall or the void by what they cost', () => {
    const plan = planOf([storey('gf', { walls: box.walls, rooms })]);
    const near = [
      { ...low, alongMm: 1000 },
      { ...low, alongMm: 1300 },
    ] as const;
    expect(inShort(path(plan, ...near))).toEqual(['wall-chase 300']);
    expect(path(plan, ...spots).map(({ medium }) => medium)).toContain('void-along');
    const cheapChase = tariffOfChase(10);
    expect(inShort(path(plan, ...spots, { tariff: cheapChase }))).toEqual(['wall-chase 2000']);
  });

  it('the void where a door is between; over the door at the top of the wall if chasing costs next to nothing', () => {
    const plan = planOf([storey('gf', { walls: withDoor, rooms })]);
    expect(path(plan, ...spots).map(({ medium }) => medium)).toContain('void-along');
    const over = path(plan, ...spots, { tariff: { ...tariffOfChase(1), cableMillipencePerM: 0 } });
    expect(inShort(over)).toEqual(['wall-chase 2125', 'wall-chase 2000', 'wall-chase 2125']);
  });

  it('channel below the ceiling for boxes on the surface with a door between', () => {
    const plan = planOf([storey('gf', { walls: withDoor, rooms, floor: solidFloor })]);
    expect(inShort(path(plan, ...spots, onSurface))).toEqual([
      'surface-channel 2170',
      'surface-channel 2000',
      'surface-channel 2170',
    ]);
  });

  it('channel above the skirting and over the door where the ceiling is high', () => {
    const plan = planOf([storey('gf', { walls: withDoor, rooms, floor: solidFloor, heightMm: 3000 })]);
    const segments = path(plan, ...spots, onSurface);
    expect(new Set(segments.map(({ medium }) => medium))).toEqual(new Set(['surface-channel']));
    // Down 220, along 2000, up and down 1980 over the door, up 220.
    expect(pathLengthMm(segments)).toBeCloseTo(220 + 2000 + 2 * (2000 + 60 - 80) + 220, 6);
  });

  it('the way with fewer fittings in channel, where one more costs more than it is shorter', () => {
    // By the skirting 360 mm longer than below the ceiling, were it not for four fittings more.
    const plan = planOf([storey('gf', { walls: withDoor, rooms, floor: solidFloor, heightMm: 2700 })]);
    const dear = { flat: { millipence: 1e6, minutes: 0, mess: 0 } };
    const channelTurn = { ...tariff.channelTurn, ...dear };
    const by = (turn: typeof channelTurn) =>
      path(plan, ...spots, { ...onSurface, tariff: { ...tariff, channelTurn: turn } }).length;
    expect(by(channelTurn)).toBe(3);
    expect(by({ ...channelTurn, flat: { millipence: 0, minutes: 0, mess: 0 } })).toBe(7);
  });

  it('the top of a wall rather than its middle for a level chase, at the same cost', () => {
    const plan = planOf([storey('gf', { walls: box.walls, rooms, floor: solidFloor })]);
    const at = (id: string, alongMm: number) =>
      ({ wall: id, side: 'left', alongMm, heightMm: 1450 }) as const;
    const level = path(plan, at('s', 1000), { ...at('e', 1000), heightMm: 2425 }).filter(
      ({ direction }) => direction === 'horizontal',
    );
    expect(new Set(level.map(({ from }) => from.heightMm))).toEqual(new Set([2425]));
  });

  it('the shorter way round the room, the other way when a door makes it longer', () => {
    const from = { wall: 'w', side: 'left', alongMm: 1050, heightMm: 300 } as const;
    const to = { wall: 'e', side: 'left', alongMm: 950, heightMm: 300 } as const;
    const solid = { floor: solidFloor, rooms };
    // From y = 3000 on the west wall to y = 900 on the east: 1000 + 5000 + 3100 by the north, 3000 + 5000 + 900 by the south.
    const shut = planOf([storey('gf', { ...solid, walls: box.walls })]);
    expect(pathLengthMm(path(shut, from, to, onSurface))).toBeCloseTo(8900 + 440, 6);
    const open = planOf([storey('gf', { ...solid, walls: withDoor })]);
    expect(pathLengthMm(path(open, from, to, onSurface))).toBeCloseTo(9100 + 440, 6);
  });

  it('channel at 80 mm on concrete, 220 mm below boxes at 300', () => {
    const concrete = fourWalls(4000, 4500, { more: { core: 'concrete' } });
    const plan = planOf([storey('gf', { walls: concrete.walls, rooms, floor: solidFloor })]);
    const at = { wall: 'e', side: 'left', heightMm: 300 } as const;
    const segments = path(plan, { ...at, alongMm: 850 }, { ...at, alongMm: 2850 });
    expect(inShort(segments)).toEqual(['surface-channel 220', 'surface-channel 2000', 'surface-channel 220']);
  });

  it('straight up in line with the box below, when one is above the other', () => {
    const plan = planOf([storey('gf', { walls: box.walls, rooms })]);
    const segments = path(plan, { ...low, alongMm: 900 }, { ...low, alongMm: 900, heightMm: 1100 });
    expect(inShort(segments)).toEqual(['wall-chase 800']);
    expect(segments[0]?.direction).toBe('vertical');
  });

  it('straight through the wall between boxes back to back', () => {
    const plan = planOf([storey('gf', { walls: box.walls, rooms })]);
    const segments = path(plan, { ...low, alongMm: 900 }, { ...low, side: 'right', alongMm: 900 });
    expect(inShort(segments)).toEqual(['through-wall 100']);
  });

  it('a way past the window above a box that is fed from the ceiling', () => {
    const window = door('win', 1000, { kind: 'window', widthMm: 1200, sillMm: 900, headMm: 2100 });
    const walls = box.walls.map((each) => (each.id === 's' ? { ...each, openings: [window] } : each));
    const plan = planOf([
      storey('gf', { walls, rooms, floor: solidFloor }),
      storey('ff', { floorLevelMm: 2725 }),
    ]);
    const segments = path(
      plan,
      { ...low, alongMm: 1500 },
      { wall: 'n', side: 'left', alongMm: 1000, heightMm: 300 },
    );
    // Level to the middle of the zone in the corner, which is 50 mm along the wall's centre line, then up.
    expect(inShort(segments).slice(0, 2)).toEqual(['wall-chase 1375', 'wall-chase 2200']);
  });

  it('the ceiling rather than a floor that cannot be lifted', () => {
    const plan = planOf([
      storey('gf', { walls: box.walls, rooms, floor: { ...timberFloor, liftable: false } }),
      storey('ff', { floorLevelMm: 2725 }),
    ]);
    const segments = path(
      plan,
      { ...low, alongMm: 1500 },
      { wall: 'n', side: 'left', alongMm: 1000, heightMm: 300 },
    );
    expect(segments.some(({ medium, storeyId }) => medium === 'void-across' && storeyId === 'ff')).toBe(true);
  });

  it('a ceiling under a floor that cannot be lifted, but only assumes it', () => {
    const plan = planOf([
      storey('gf', { walls: box.walls, rooms, floor: solidFloor }),
      storey('ff', { floorLevelMm: 2725, floor: { ...timberFloor, liftable: false } }),
    ]);
    const segments = path(
      plan,
      { ...low, alongMm: 1500 },
      { wall: 'n', side: 'left', alongMm: 1000, heightMm: 300 },
    );
    const across = segments.filter(({ medium }) => medium === 'void-across');
    expect(across.map(({ certainty }) => certainty)).toEqual(['assumed']);
  });

  it('up the wall into the floor above for a point on the next storey', () => {
    const upper = fourWalls(5000, 4000, { prefix: 'u' });
    const plan = planOf([
      storey('gf', { walls: box.walls, rooms }),
      storey('ff', { floorLevelMm: 2725, walls: upper.walls, rooms: [room('u', upper.sides)] }),
    ]);
    const segments = path(
      plan,
      { ...low, alongMm: 1050 },
      { wall: 'us', side: 'left', alongMm: 3050, heightMm: 450 },
    );
    expect(inShort(segments)).toEqual([
      'wall-chase 2200',
      'void-open 115',
      'void-along 2000',
      'void-open 110',
      'wall-chase 450',
    ]);
  });

  it('a path that is assumed throughout when nothing drawn leads there', () => {
    const plan = planOf([
      storey('gf', { walls: box.walls, rooms, floor: solidFloor }),
      storey('ff', { floorLevelMm: 2725, floor: { build: 'concrete', voidMm: 0, covering: 'none' } }),
    ]);
    const segments = path(plan, { ...low, alongMm: 1050 }, { storey: 'ff', at: [3000, 2000], heightMm: 300 });
    expect(segments.length).toBeGreaterThan(0);
    expect(new Set(segments.map(({ certainty }) => certainty))).toEqual(new Set(['assumed']));
  });

  it('no void under a stairwell or a room on a solid floor', () => {
    const hole: [number, number][] = [
      [2000, -10],
      [3000, -10],
      [3000, 4100],
      [2000, 4100],
    ];
    const plan = planOf([storey('gf', { walls: withDoor, rooms, stairwells: [hole] })]);
    const media = path(plan, ...spots).map(({ medium }) => medium);
    expect(new Set(media)).toEqual(new Set(['wall-chase']));
  });
});

describe('plainRoute by pinned waypoints', () => {
  const house = terrace();
  const pinnedOn = (via: Parameters<typeof requestBetween>[2]) => path(house, R8, W3, via);

  it('keeps to the waypoints and to what is said of them, and finds the rest', () => {
    const segments = pinnedOn({
      via: [
        {
          storey: 'ff',
          at: [4200, 5000],
          heightMm: -110,
          medium: 'wall-chase',
          depthMm: 40,
          containment: 'capping',
        },
        { storey: 'ff', at: [2000, 5000], heightMm: -110, bundle: 'b1', insulation: 'touching' },
      ],
    });
    expect(segments[0]).toMatchObject({
      medium: 'wall-chase',
      lengthMm: 410,
      depthMm: 40,
      containment: 'capping',
      certainty: 'pinned',
      wallId: 'e2',
    });
    expect(segments[1]).toMatchObject({
      medium: 'void-along',
      lengthMm: 2200,
      bundle: 'b1',
      insulation: 'touching',
      certainty: 'pinned',
      storeyId: 'ff',
    });
    expect(inShort(segments.slice(2))).toEqual([
      'void-along 950',
      'void-across 200',
      'void-open 110',
      'stud-cavity 450',
    ]);
    expect(segments.slice(2).every(({ certainty }) => certainty === 'derived')).toBe(true);
  });

  it('lies round a corner in the wall that each waypoint names', () => {
    const segments = pinnedOn({
      via: [
        { storey: 'ff', at: [4200, 3800], heightMm: 300, wall: 'e2', side: 'left' },
        { storey: 'ff', at: [2000, 3800], heightMm: 300, wall: 'mid2', side: 'left' },
      ],
    });
    expect(segments.slice(0, 2).map(({ medium, wallId }) => [medium, wallId])).toEqual([
      ['wall-chase', 'e2'],
      ['stud-cavity', 'mid2'],
    ]);
    // The corner is on both walls: a place within either stretch is on that one's.
    expect(segments[1]?.from).toMatchObject({ at: [4200, 3800], onWall: { wallId: 'mid2', side: 'left' } });
    expect(segments.map((each) => withinSegment(each, 500).onWall?.wallId).slice(0, 2)).toEqual([
      'e2',
      'mid2',
    ]);
  });

  it('derives a medium that is not given from where the stretch is', () => {
    const [first, second] = pinnedOn({
      via: [
        { storey: 'ff', at: [4200, 5000], heightMm: 0 },
        { storey: 'ff', at: [4200, 5000], heightMm: -110 },
      ],
    });
    expect([first?.medium, second?.medium]).toEqual(['wall-chase', 'void-open']);
  });

  it('counts the joists that a pinned stretch crosses', () => {
    const segments = pinnedOn({
      via: [
        { storey: 'ff', at: [4200, 5000], heightMm: -110 },
        { storey: 'ff', at: [4200, 6100], heightMm: -110 },
      ],
    });
    expect(segments[1]).toMatchObject({ medium: 'void-across', joistsCrossed: 3 });
  });

  it('makes one sloping stretch of two waypoints at different heights', () => {
    const segments = path(
      house,
      { storey: 'ff', at: [0, 0], heightMm: 2600 },
      { storey: 'ff', at: [3000, 0], heightMm: 3000 },
      {
        via: [{ storey: 'ff', at: [300, 0], heightMm: 3000, medium: 'loft' }],
      },
    );
    expect(segments[0]).toMatchObject({ direction: 'sloping', lengthMm: 500, medium: 'loft' });
  });

  it('passes over a waypoint on a storey that is not there', () => {
    const segments = pinnedOn({ via: [{ storey: 'nowhere', at: [0, 0], heightMm: 0 }] });
    expect(inShort(segments)).toEqual(inShort(path(house, R8, W3)));
  });
});

describe('plainRoute between walls', () => {
  it('goes through a partition from room to room in channel', () => {
    const walls = [
      wall('s1', [-50, -50], [3050, -50]),
      wall('s2', [3050, -50], [6150, -50]),
      wall('e', [6150, -50], [6150, 3050]),
      wall('n2', [6150, 3050], [3050, 3050]),
      wall('n1', [3050, 3050], [-50, 3050]),
      wall('w', [-50, 3050], [-50, -50]),
      wall('mid', [3050, -50], [3050, 3050]),
    ];
    const plan = planOf([
      storey('gf', {
        walls,
        floor: solidFloor,
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
    ]);
    const from = { wall: 's1', side: 'left', alongMm: 2050, heightMm: 80 } as const;
    const to = { wall: 's2', side: 'left', alongMm: 1050, heightMm: 80 } as const;
    const segments = path(plan, from, to, onSurface);
    // 1000 to the corner, 100 up the partition, through it, 100 back, 1000 on.
    expect(inShort(segments)).toEqual([
      'surface-channel 1000',
      'surface-channel 100',
      'through-wall 100',
      'surface-channel 100',
      'surface-channel 1000',
    ]);
  });
});
