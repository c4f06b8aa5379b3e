import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { containmentDemands } from '#engine/takeoff/containment-lines.ts';
import type { Demand } from '#engine/takeoff/demand.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { stretchesOf } from '#engine/takeoff/wall-stretches.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

const channel = { medium: 'surface-channel', containment: 'channel' } as const;

/** Way on a wall along x: corners, mm along and above the floor. */
type Corner = readonly [alongMm: number, heightMm: number];

const wayOf = (corners: readonly Corner[], rest: Partial<Segment> = {}): Segment[] =>
  corners.slice(1).map(([x, z], index) => {
    const [fromX, fromZ] = corners[index] ?? [x, z];
    return segmentOf(spotAt(fromX, 0, fromZ), spotAt(x, 0, z), { ...channel, ...rest });
  });

const demandsOf = (...runs: readonly Run[]): readonly Demand[] =>
  containmentDemands(workedOf({ runs }), usualCounts);

const piecesMm = (demands: readonly Demand[]): number[] =>
  demands
    .flatMap(({ pieces }) => pieces ?? [])
    .map(({ lengthMm }) => Math.round(lengthMm))
    .toSorted((a, b) => b - a);

describe('straights', () => {
  it('are one piece where the medium changes and the way does not', () => {
    const chase = segmentOf(spotAt(0, 0, 300), spotAt(0, 0, 0), {
      medium: 'wall-chase',
      containment: 'oval',
    });
    const below = segmentOf(spotAt(0, 0, 0), spotAt(0, 0, -110), {
      medium: 'void-open',
      containment: 'oval',
    });
    expect(piecesMm(demandsOf(runOf('n', 'a', 'w', [chase, below])))).toEqual([410]);
  });

  it('are coupled where two stretches in one line are longer than what is sold, and not round corners', () => {
    const items = (corners: readonly Corner[]) => {
      const demands = demandsOf(runOf('n', 'a', 'w', wayOf(corners)));
      return [piecesMm(demands), measuredByItem(demands)['channel-coupler-16x16']];
    };
    expect(
      items([
        [0, 80],
        [2000, 80],
        [3400, 80],
      ]),
    ).toEqual([[3400], 1]);
    // 1.2, 3.0 and 1.0 m round two corners: three pieces, none coupled.
    expect(
      items([
        [0, 80],
        [0, 1280],
        [3000, 1280],
        [3000, 2280],
      ]),
    ).toEqual([[3000, 1200, 1000], undefined]);
  });

  it('are of the size of what lies in them, each: a wide one in the middle leaves the ends narrow', () => {
    const shared = wayOf(
      [
        [0, 80],
        [2000, 80],
      ],
      { bundle: 'b' },
    );
    const riser = (alongMm: number, toMm: number) =>
      wayOf([
        [alongMm, 80],
        [alongMm, toMm],
      ]);
    const first = runOf('n', 'a', 'w', [
      ...wayOf([
        [0, 300],
        [0, 80],
      ]),
      ...shared,
      ...riser(2000, 300),
    ]);
    const second = runOf('m', 'a', 'v', [
      ...wayOf([
        [-150, 300],
        [-150, 80],
        [0, 80],
      ]),
      ...shared,
      ...riser(2000, 0),
    ]);
    expect(measuredByItem(demandsOf(first, second))).toMatchObject({
      'channel-25x16': 2,
      // At one end a channel comes in from the left and one from above, at the other one goes up and one down.
      'channel-tee-25x16': 2,
      'channel-bend-16x16': 1,
    });
  });

  it('count a name that one cable alone goes by as its own channel', () => {
    const named = [
      ...wayOf(
        [
          [0, 80],
          [2000, 80],
        ],
        { bundle: 'b' },
      ),
      ...wayOf([
        [2000, 80],
        [3400, 80],
      ]),
    ];
    expect(piecesMm(demandsOf(runOf('n', 'a', 'w', named)))).toEqual([3400]);
  });

  it('are two where lines of one name lie apart', () => {
    const near = runOf(
      'n',
      'a',
      'w',
      wayOf(
        [
          [0, 80],
          [1000, 80],
        ],
        { bundle: 'b' },
      ),
    );
    const by = (heightMm: number) =>
      runOf(
        'm',
        'a',
        'v',
        wayOf(
          [
            [0, heightMm],
            [1000, heightMm],
          ],
          { bundle: 'b' },
        ),
      );
    expect(piecesMm(demandsOf(near, by(140)))).toEqual([1000]);
    expect(piecesMm(demandsOf(near, by(141)))).toEqual([1000, 1000]);
  });

  it('close no end where another cable of the channel goes on, and close one end once', () => {
    const out = segmentOf(spotAt(1000, 0, 80), spotAt(1000, 500, 80));
    const leaves = runOf('n', 'a', 'w', [
      ...wayOf(
        [
          [0, 80],
          [1000, 80],
        ],
        { bundle: 'b' },
      ),
      out,
    ]);
    const goesOn = runOf(
      'm',
      'a',
      'v',
      wayOf(
        [
          [0, 80],
          [2000, 80],
        ],
        { bundle: 'b' },
      ),
    );
    expect(measuredByItem(demandsOf(leaves, goesOn))['channel-end-25x16']).toBeUndefined();
    expect(measuredByItem(demandsOf(leaves, { ...leaves, id: 'm' }))['channel-end-25x16']).toBe(1);
  });
});

describe('turns', () => {
  const along = { ...channel, wallId: 'brick', side: 'left' } as const;
  // The brick wall runs along x at y = 0; its left face looks towards greater y.
  const level = segmentOf(spotAt(0, 50, 80), spotAt(1000, 50, 80), along);
  const turnTo = (toX: number, toY: number, toZ: number, rest: Partial<Segment> = {}) => {
    const next = segmentOf(spotAt(1000, 50, 80), spotAt(toX, toY, toZ), { ...channel, ...rest });
    const items = measuredByItem(demandsOf(runOf('n', 'a', 'w', [level, next])));
    return Object.keys(items).filter((item) => item.includes('bend'));
  };

  it.each([
    ['up the same wall', turnTo(1000, 50, 1080, { wallId: 'brick', side: 'left' }), 'channel-bend-16x16'],
    ['into the room', turnTo(1000, 1050, 80), 'channel-internal-bend-16x16'],
    ['round the wall’s end', turnTo(1000, -950, 80), 'channel-external-bend-16x16'],
  ])('%s', (_, items, expected) => {
    expect(items).toEqual([expected]);
  });

  it('go round a breast that stands out by two internal and two external ones', () => {
    const corners: readonly (readonly [number, number])[] = [
      [0, 50],
      [1000, 50],
      [1000, 400],
      [2000, 400],
      [2000, 50],
      [3000, 50],
    ];
    const segments = corners.slice(1).map(([x, y], index) => {
      const [fromX, fromY] = corners[index] ?? [x, y];
      return segmentOf(spotAt(fromX, fromY, 80), spotAt(x, y, 80), along);
    });
    expect(measuredByItem(demandsOf(runOf('n', 'a', 'w', segments)))).toMatchObject({
      'channel-internal-bend-16x16': 2,
      'channel-external-bend-16x16': 2,
    });
  });
});

/** Steps of 0.2 m on a grid: a way, no place of it twice. */
const STEP_MM = 200;
const steps = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] } as const;
type Step = keyof typeof steps;
const someSteps = fc.array(fc.constantFrom<Step>('left', 'right', 'up', 'down'), {
  minLength: 1,
  maxLength: 24,
});

function placesOf(way: readonly Step[]): Corner[] {
  const places: Corner[] = [[0, 0]];
  for (const step of way) {
    const [x, z] = places.at(-1) ?? [0, 0];
    places.push([x + steps[step][0], z + steps[step][1]]);
  }
  return places;
}

const named = ([x, z]: Corner): string => `${x},${z}`;
/** The way drawn on a ceiling, where it meets neither floor nor wall. */
const onCeiling = (places: readonly Corner[], rest: Partial<Segment> = {}): Segment[] =>
  places.slice(1).map(([x, y], index) => {
    const [fromX, fromY] = places[index] ?? [x, y];
    const spot = (atX: number, atY: number) => spotAt(atX * STEP_MM, atY * STEP_MM, 2400);
    return segmentOf(spot(fromX, fromY), spot(x, y), { ...channel, ...rest });
  });

/** An oracle that knows no straights: a net of single steps, and what meets at each of its places. */
function netOf(ways: readonly (readonly Corner[])[]) {
  const arms = new Map<string, Set<string>>();
  const meet = (a: Corner, b: Corner) =>
    arms.set(named(a), (arms.get(named(a)) ?? new Set()).add(`${b[0] - a[0]},${b[1] - a[1]}`));
  for (const places of ways)
    for (const [index, place] of places.slice(1).entries()) {
      const before = places[index] ?? place;
      meet(before, place);
      meet(place, before);
    }
  const ofEach = [...arms.values()];
  const isInLine = (directions: ReadonlySet<string>) => {
    const [a, b] = [...directions].map((each) => each.split(',').map(Number));
    return a !== undefined && b !== undefined && a[0] === -(b[0] ?? 0) && a[1] === -(b[1] ?? 0);
  };
  return {
    steps: ofEach.reduce((sum, { size }) => sum + size, 0) / 2,
    bends: ofEach.filter((each) => each.size === 2 && !isInLine(each)).length,
    tees: ofEach.filter(({ size }) => size === 3).length,
  };
}

function fittingsOf(demands: readonly Demand[]) {
  const count = (word: string) =>
    demands.filter(({ item }) => item.includes(word)).reduce((sum, { measured }) => sum + measured, 0);
  const metres = demands.filter(({ unit }) => unit === 'm').reduce((sum, { measured }) => sum + measured, 0);
  return { steps: Math.round((metres * 1000) / STEP_MM), bends: count('bend'), tees: count('tee') };
}

describe('channel against a net of single steps', () => {
  it('of one cable has a bend at each turn, and a coupler between each two lengths of a straight', () => {
    fc.assert(
      fc.property(someSteps, (way) => {
        const places = placesOf(way);
        fc.pre(new Set(places.map(named)).size === places.length);
        const demands = demandsOf(runOf('n', 'a', 'w', onCeiling(places)));
        expect(fittingsOf(demands)).toEqual(netOf([places]));
        const straights =
          way
            .join(' ')
            .match(/(\b\w+\b)(?: \1\b)*/g)
            ?.map((same) => same.split(' ').length * STEP_MM) ?? [];
        expect(piecesMm(demands)).toEqual(straights.toSorted((a, b) => b - a));
        const couplers = straights.reduce((sum, mm) => sum + Math.ceil(mm / 3000) - 1, 0);
        expect(measuredByItem(demands)['channel-coupler-16x16'] ?? 0).toBe(couplers);
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  it('of two cables that part has one of each, whichever is told first and however each is drawn', () => {
    fc.assert(
      fc.property(someSteps, someSteps, fc.integer({ min: 1, max: 24 }), (way, other, parting) => {
        const places = placesOf(way);
        const second = placesOf([...way.slice(0, parting), ...other]);
        const apart = new Set([...places, ...second.slice(Math.min(parting, way.length) + 1)].map(named));
        fc.pre(new Set(places.map(named)).size === places.length);
        fc.pre(apart.size === places.length + second.length - Math.min(parting, way.length) - 1);
        const lay = { bundle: 'b' };
        const first = runOf('n', 'a', 'w', onCeiling(places, lay));
        const next = runOf('m', 'a', 'v', onCeiling(second, lay));
        const reversed = { ...next, segments: onCeiling(second.toReversed(), lay) };
        const expected = netOf([places, second]);
        for (const runs of [
          [first, next],
          [next, first],
          [first, reversed],
        ])
          expect(fittingsOf(demandsOf(...runs))).toEqual(expected);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it('names every run that lies in a stretch, and the cables where it is fullest', () => {
    const runs = [
      [0, 1000],
      [0, 2000],
      [1500, 3000],
    ].map(([fromMm = 0, toMm = 0], index) =>
      runOf(
        `n${index}`,
        'a',
        `w${index}`,
        wayOf(
          [
            [fromMm, 80],
            [toMm, 80],
          ],
          { bundle: 'b' },
        ),
      ),
    );
    const [stretch, ...others] = stretchesOf(runs, workedOf({ runs }).plan, () => true);
    expect(others).toEqual([]);
    expect(stretch).toMatchObject({ lengthMm: 3000, runIds: ['n0', 'n1', 'n2'] });
    expect(stretch?.cables).toHaveLength(2);
  });
});
