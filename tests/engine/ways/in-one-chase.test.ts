import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capacityOfRun } from '#engine/proof/capacity-of-run.ts';
import { slotGate } from '#engine/proof/slot-gate.ts';
import { stretchesOf } from '#engine/takeoff/wall-stretches.ts';
import { inOneChase } from '#engine/ways/in-one-chase.ts';
import { CHASE_DEPTH_MM } from '#engine/ways/lay-in-wall.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';
import { planOf, storey, wall } from '#tests/engine/plan/small-house.ts';
import { tariff } from './demo-houses.ts';

/** A brick wall of this leaf, with 13 mm of plaster on either side. */
const planWith = (leafMm: number) =>
  planOf([storey('ground', { walls: [wall('w1', [0, 0], [4000, 0], { thicknessMm: leafMm + 26 })] })], []);
const plan = planWith(100);

const stretch = (
  from: readonly [number, number],
  to: readonly [number, number],
  rest: Partial<Segment>,
): Segment =>
  segmentOf(spotAt(from[0], 0, from[1]), spotAt(to[0], 0, to[1]), {
    ...{ medium: 'wall-chase', wallId: 'w1', side: 'left', depthMm: CHASE_DEPTH_MM, containment: 'capping' },
    ...rest,
  });
const upright = (fromMm: number, toMm: number, rest: Partial<Segment> = {}, x = 1000): Segment =>
  stretch([x, fromMm], [x, toMm], rest);

const cable = (id: string, ...segments: readonly Segment[]): Run => runOf(id, 'p', 'q', segments);

interface Asked {
  readonly needsA?: number | null;
  readonly leafMm?: number;
}

/** The cables as they are chased, each of which must carry so much. */
function laid(runs: readonly Run[], { needsA = 20, leafMm = 100 }: Asked = {}): readonly Run[] {
  const needs = new Map(needsA === null ? [] : runs.map(({ id }) => [id, needsA] as const));
  return inOneChase(runs, slotGate(planWith(leafMm), tariff), needs);
}

/** What every cable carries as laid, by its id. */
function izA(runs: readonly Run[]): Readonly<Record<string, number | null>> {
  const cables = new Map<string, Set<string>>();
  for (const { id, segments } of runs)
    for (const { bundle } of segments)
      if (bundle !== null) cables.set(bundle, (cables.get(bundle) ?? new Set()).add(id));
  const cablesInBundle = new Map([...cables].map(([bundle, ids]) => [bundle, ids.size]));
  return Object.fromEntries(runs.map((run) => [run.id, capacityOfRun(run, { plan, cablesInBundle }).izA]));
}

const chases = (runs: readonly Run[]): readonly (readonly [lengthMm: number, cables: number])[] =>
  stretchesOf(runs, plan, ({ medium }) => medium === 'wall-chase')
    .map(({ lengthMm, cables }) => [Math.round(lengthMm), cables.length] as const)
    .toSorted(([a], [b]) => a - b);

const whyOf = (runs: readonly Run[]) => runs.map(({ chasedApart }) => chasedApart?.map(({ why }) => why));

describe('new cables beside each other in one wall', () => {
  const two = (rest: Partial<Segment> = {}): readonly Run[] => [
    cable('a', upright(450, 0, rest)),
    cable('b', upright(0, 450, rest)),
  ];

  it('lie under one capping where both carry 20 A there: 27 A × 0.8', () => {
    const runs = laid(two());
    expect(chases(runs)).toEqual([[450, 2]]);
    expect(izA(runs)).toEqual({ a: 21.6, b: 21.6 });
    expect(whyOf(runs)).toEqual([undefined, undefined]);
    expect(runs.map(({ steps }) => steps)).toEqual([
      ['down 450 mm chased into the brick wall with another cable, 17 mm into the masonry of 33 mm allowed'],
      ['up 450 mm chased into the brick wall with another cable, 17 mm into the masonry of 33 mm allowed'],
    ]);
  });

  it('lie bare in one chase alike', () => {
    expect(chases(laid(two({ containment: 'none' })))).toEqual([[450, 2]]);
  });

  it('have a tube each where one would leave them too little, and say so: 23 A × 0.8', () => {
    const runs = laid(two({ containment: 'oval' }));
    expect(chases(runs)).toEqual([
      [450, 1],
      [450, 1],
    ]);
    const why = { kind: 'capacity', of: 'a', cables: 2, carriesA: 18.4, mustCarryA: 20 };
    expect(whyOf(runs)).toEqual([[why], [why]]);
  });

  it('lie in one tube behind a fuse of 13 A', () => {
    const runs = laid(two({ containment: 'oval' }), { needsA: 13 });
    expect(chases(runs)).toEqual([[450, 2]]);
    expect(izA(runs)).toEqual({ a: 18.4, b: 18.4 });
  });

  it.each([
    ['just enough', 18.4, 1],
    ['a hundredth too little', 18.41, 2],
  ])('are judged to the ampere: %s', (_, needsA, count) => {
    expect(chases(laid(two({ containment: 'oval' }), { needsA }))).toHaveLength(count);
  });

  it('lie apart where nobody can say what they must carry', () => {
    const runs = laid(two(), { needsA: null });
    expect(chases(runs)).toHaveLength(2);
    expect(whyOf(runs)[0]).toEqual([{ kind: 'untold', of: 'a' }]);
  });

  // Source of the sixth: Approved Document A, section 2C; that several cables take 5 mm more is common practice, no source.
  it.each([
    ['a sixth of 102 mm is deep enough for two', 102, 1],
    ['a sixth of 101 mm is not', 101, 2],
  ])('lie level no deeper than the leaf bears: %s', (_, leafMm, count) => {
    const level = () => stretch([500, 450], [1500, 450], { direction: 'horizontal' });
    const runs = laid([cable('a', level()), cable('b', level())], { leafMm });
    expect(chases(runs)).toHaveLength(count);
    if (count === 2)
      expect(whyOf(runs)[1]).toEqual([{ kind: 'depth', intoMm: 17, limitMm: expect.closeTo(16.83, 2) }]);
  });

  it('are parted where one comes to the other', () => {
    const [a, b] = laid([cable('a', upright(1100, 0)), cable('b', upright(0, 450))]);
    expect(a?.segments.map(({ lengthMm, bundle }) => [lengthMm, bundle === null])).toEqual([
      [650, true],
      [450, false],
    ]);
    expect(a?.segments[0]?.to).toEqual(a?.segments[1]?.from);
    expect(b?.segments).toHaveLength(1);
    expect(chases([a, b].flatMap((run) => run ?? []))).toEqual([
      [450, 2],
      [650, 1],
    ]);
  });

  it.each([
    ['goes with the rest under 100 mm', 549, [[549, 2]]],
    [
      'is a chase of its own from 100 mm on',
      550,
      [
        [100, 1],
        [450, 2],
      ],
    ],
  ])('keep an end that %s', (_, fromMm, expected) => {
    expect(chases(laid([cable('a', upright(fromMm, 0)), cable('b', upright(0, 450))]))).toEqual(expected);
  });

  it.each([
    ['60 mm apart', upright(450, 0, {}, 1060), true],
    ['61 mm apart', upright(450, 0, {}, 1061), false],
    ['100 mm beside each other', upright(1000, 350), true],
    ['99 mm beside each other', upright(1000, 351), false],
    ['on the other face', upright(450, 0, { side: 'right' }), false],
    ['in another wall', upright(450, 0, { wallId: 'w2' }), false],
    ['in something else', upright(450, 0, { containment: 'none' }), false],
    ['on the surface', upright(450, 0, { medium: 'surface-clipped' }), false],
  ] as const)('lie in one only near each other, in one wall and in the same: %s', (_, beside, isOne) => {
    const runs = laid([cable('a', upright(450, 0)), cable('b', beside)]);
    expect(runs.map(({ segments }) => segments.some(({ bundle }) => bundle !== null))).toEqual([
      isOne,
      isOne,
    ]);
  });

  it('stay as somebody drew them: one by a name of theirs, another beside it by itself', () => {
    const named = upright(450, 0, { bundle: 'drawn' });
    const runs = [cable('a', named), cable('b', named), cable('c', upright(450, 0))];
    expect(laid(runs)).toBe(runs);
  });

  it('take the tube of one chase on into the floor as one', () => {
    const below = {
      medium: 'void-open',
      wallId: null,
      side: null,
      depthMm: null,
      insulation: 'none',
    } as const;
    const drop = (id: string) =>
      cable(
        id,
        upright(450, 0, { containment: 'oval' }),
        upright(0, -110, { ...below, containment: 'oval' }),
      );
    const runs = laid([drop('a'), drop('b')], { needsA: 13 });
    const tubes = stretchesOf(runs, plan, ({ containment }) => containment === 'oval');
    expect(tubes.map(({ cables, runIds }) => [cables.length, runIds])).toEqual([[2, ['a', 'b']]]);
  });

  it.each([
    ['three behind fuses in one: 27 A × 0.7', 13, [[450, 3]]],
    [
      'of three that must carry 20 A two: 27 A × 0.7 is 18.9 A',
      20,
      [
        [450, 1],
        [450, 2],
      ],
    ],
  ])('lie in as few as carry it: %s', (_, needsA, expected) => {
    const runs = laid(
      ['a', 'b', 'c'].map((id) => cable(id, upright(450, 0))),
      { needsA },
    );
    expect(chases(runs)).toEqual(expected);
  });

  it('are three in one at the most', () => {
    const runs = laid(
      ['a', 'b', 'c', 'd'].map((id) => cable(id, upright(450, 0))),
      { needsA: 3 },
    );
    expect(chases(runs)).toEqual([
      [450, 1],
      [450, 3],
    ]);
    expect(runs[3]?.chasedApart?.[0]?.why).toEqual({ kind: 'full', most: 3 });
  });
});

describe('chases of any cables on one line', () => {
  const height = fc.integer({ min: 0, max: 2400 });
  const drawn = fc.record({ fromMm: height, toMm: height, needsA: fc.constantFrom(3, 13, 20, 32) });
  const containment = fc.constantFrom('oval', 'capping', 'none');
  const house = fc.record({ drops: fc.array(drawn, { minLength: 2, maxLength: 5 }), containment });

  const cablesOf = ({
    drops,
    containment,
  }: { drops: readonly { fromMm: number; toMm: number }[] } & Pick<Segment, 'containment'>) =>
    drops.map(({ fromMm, toMm }, i) => cable(`c${i}`, upright(fromMm, toMm, { containment })));
  const needsOf = (drops: readonly { needsA: number }[]) =>
    new Map(drops.map(({ needsA }, i) => [`c${i}`, needsA]));
  const gate = slotGate(plan, tariff);
  const totalMm = (runs: readonly Run[]): number =>
    chases(runs).reduce((sum, [lengthMm]) => sum + lengthMm, 0);

  it('never come to less than where any lies, nor to more than each by itself, and save no more than lies beside another', () => {
    fc.assert(
      fc.property(house, (given) => {
        const apart = cablesOf(given);
        const runs = inOneChase(apart, gate, needsOf(given.drops));
        const taken = (mm: number) =>
          given.drops.filter(
            ({ fromMm, toMm }) => mm > Math.min(fromMm, toMm) && mm < Math.max(fromMm, toMm),
          );
        const places = Array.from({ length: 2400 }, (_, mm) => taken(mm + 0.5).length);
        const somewhereMm = places.filter((count) => count > 0).length;
        const besideMm = places.reduce((sum, count) => sum + Math.max(0, count - 1), 0);
        expect(totalMm(runs)).toBeGreaterThanOrEqual(somewhereMm - 1);
        expect(totalMm(runs)).toBeLessThanOrEqual(totalMm(apart) + 1);
        expect(totalMm(apart) - totalMm(runs)).toBeLessThanOrEqual(besideMm + 1);
      }),
    );
  });

  it('never carry more than alone, nor less than they must where alone they carry it', () => {
    fc.assert(
      fc.property(house, (given) => {
        const apart = cablesOf(given).filter(({ routeMm }) => routeMm > 0);
        const needs = needsOf(given.drops);
        const [alone, now] = [izA(apart), izA(inOneChase(apart, gate, needs))];
        for (const { id } of apart) {
          const [before, after, must] = [alone[id] ?? 0, now[id] ?? 0, needs.get(id) ?? 0];
          expect(after).toBeLessThanOrEqual(before);
          expect(after).toBeGreaterThanOrEqual(Math.min(before, must));
        }
      }),
    );
  });

  it('are the same in any order, and leave every cable where it was', () => {
    fc.assert(
      fc.property(house, fc.nat(), (given, turn) => {
        const apart = cablesOf(given);
        const needs = needsOf(given.drops);
        const runs = inOneChase(apart, gate, needs);
        const at = turn % apart.length;
        const turned = inOneChase([...apart.slice(at), ...apart.slice(0, at)].toReversed(), gate, needs);
        for (const run of runs) {
          const whole = apart.find(({ id }) => id === run.id);
          expect(turned.find(({ id }) => id === run.id)?.segments).toEqual(run.segments);
          expect(run.segments[0]?.from).toEqual(whole?.segments[0]?.from);
          expect(run.segments.at(-1)?.to).toEqual(whole?.segments[0]?.to);
          for (const [i, { from }] of run.segments.entries())
            if (i > 0) expect(run.segments[i - 1]?.to).toEqual(from);
          const sumMm = run.segments.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
          expect(sumMm).toBeCloseTo(whole?.routeMm ?? Number.NaN, 6);
        }
      }),
    );
  });
});
