import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { table4D5 } from '#data/standards/table-4d5.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { capacities, capacityOfRun } from '#engine/proof/capacity-of-run.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { Floor, Storey, Wall } from '#model/building.ts';
import { medium } from '#model/cable.ts';
import { demoJob, demoNames } from '../demo-jobs/demo-estimates.ts';
import { edgeOf, factsOf, legOf, runOf, segmentOf, twinOf } from '../rules/facts-builder.ts';

const face = { finish: 'plaster', lining: 'none' } as const;

interface House {
  readonly insulated?: boolean;
  readonly floor?: Partial<Floor>;
  readonly loftInsulationMm?: number;
}

function planOf({ insulated, floor = {}, loftInsulationMm }: House) {
  const storey: Storey = {
    id: 'gf',
    name: 'Ground floor',
    floorLevelMm: 0,
    heightMm: 2400,
    floor: { build: 'suspended-timber', voidMm: 200, covering: 'boards', ...floor },
    ceiling: {
      lining: 'plasterboard',
      loft: true,
      ...(loftInsulationMm === undefined ? {} : { insulationMm: loftInsulationMm }),
    },
    walls: [],
    rooms: [],
    fixtures: [],
    stairwells: [],
  };
  const wall: Wall = {
    id: 'v',
    from: [0, 0],
    to: [3000, 0],
    thicknessMm: 100,
    core: 'timber-stud',
    external: false,
    faces: { left: face, right: face },
    openings: [],
    ...(insulated === undefined ? {} : { insulated }),
  };
  const planWall = { wall, storeyId: 'gf', lengthMm: 3000, direction: [1, 0], leftNormal: [0, 1] } as const;
  return factsOf({
    plan: {
      wallById: new Map([['v', planWall]]),
      storeyById: new Map([['gf', { storey, aboveId: null, belowId: null }]]),
    },
  }).plan;
}

const none: ReadonlyMap<string, number> = new Map();

/** Capacity and method of 2.5 mm² along one stretch. */
function along(segment: Partial<Segment>, house: House = {}, cables = 1) {
  const run = runOf('e1', [segmentOf({ wallId: 'v', ...segment, bundle: cables > 1 ? 'b' : null })]);
  const { izA, method } = capacityOfRun(run, {
    plan: planOf(house),
    cablesInBundle: new Map([['b', cables]]),
  });
  return [izA, method];
}

describe('the capacity of a cable as installed', () => {
  it.each<[string, Partial<Segment>, House, (number | string | null)[]]>([
    ['clipped to the surface', { medium: 'surface-clipped' }, {}, [27, 'C']],
    ['bare in plaster', { medium: 'wall-chase' }, {}, [27, 'C']],
    ['capped in plaster', { medium: 'wall-chase', containment: 'capping' }, {}, [27, 'C']],
    ['in oval tube in masonry', { medium: 'wall-chase', containment: 'oval' }, {}, [23, 'B']],
    ['in conduit in masonry', { medium: 'wall-chase', containment: 'conduit' }, {}, [23, 'B']],
    ['alone in a channel', { medium: 'surface-channel', containment: 'channel' }, {}, [23, 'B']],
    ['in a stud wall without insulation', { medium: 'stud-cavity' }, { insulated: false }, [23, 'B']],
    [
      'in a stud wall, touching insulation',
      { medium: 'stud-cavity', insulation: 'touching' },
      {},
      [21, '102'],
    ],
    ['in an insulated stud wall', { medium: 'stud-cavity' }, { insulated: true }, [13.5, '103']],
    [
      'surrounded in a stud wall for 100 mm',
      { medium: 'stud-cavity', insulation: 'surrounded', lengthMm: 100 },
      {},
      [13.5, '103'],
    ],
    [
      'in conduit in an insulated stud wall',
      { medium: 'stud-cavity', containment: 'conduit' },
      { insulated: true },
      [20, 'A'],
    ],
    ['in a stud wall that nobody described', { medium: 'stud-cavity' }, {}, [null, null]],
    ['in a floor void that nobody described', { medium: 'void-along' }, {}, [17, '101']],
    ['in a floor void without insulation', { medium: 'void-across', insulation: 'none' }, {}, [27, 'C']],
    ['in a floor void with 0 mm of it', { medium: 'void-open' }, { floor: { insulationMm: 0 } }, [27, 'C']],
    [
      'in conduit in a floor void without insulation',
      { medium: 'void-along', containment: 'conduit' },
      { floor: { insulationMm: 0 } },
      [23, 'B'],
    ],
    [
      'in a floor void whose insulation is only assumed',
      { medium: 'void-along' },
      { floor: { insulationMm: 0, certainty: { insulationMm: 'assumed' } } },
      [17, '101'],
    ],
    [
      'over 100 mm of floor insulation',
      { medium: 'void-along' },
      { floor: { insulationMm: 100 } },
      [21, '100'],
    ],
    [
      'over 101 mm of floor insulation',
      { medium: 'void-along' },
      { floor: { insulationMm: 101 } },
      [17, '101'],
    ],
    [
      'touching floor insulation of unknown depth',
      { medium: 'void-open', insulation: 'touching' },
      {},
      [17, '101'],
    ],
    ['in the open loft', { medium: 'loft', insulation: 'none' }, {}, [27, 'C']],
    ['under 270 mm in the loft', { medium: 'loft' }, { loftInsulationMm: 270 }, [17, '101']],
    ['in a loft that nobody described', { medium: 'loft' }, {}, [null, null]],
    ['surrounded for half a metre', { insulation: 'surrounded', lengthMm: 500 }, {}, [13.5, 'C']],
    ['surrounded for 100 mm', { insulation: 'surrounded', lengthMm: 100 }, {}, [21.06, 'C']],
    ['in the ground', { medium: 'buried' }, {}, [null, null]],
  ])('%s', (_, segment, house, expected) => {
    expect(along(segment, house)).toEqual(expected);
  });

  it('takes 18.4 A for two ring legs in one tube or channel, and 22.95 A for two clipped touching', () => {
    expect(along({ medium: 'surface-channel', containment: 'channel' }, {}, 2)).toEqual([18.4, 'B']);
    expect(along({ medium: 'wall-chase', containment: 'oval' }, {}, 2)).toEqual([18.4, 'B']);
    expect(along({ medium: 'surface-clipped' }, {}, 2)).toEqual([22.95, 'C']);
  });

  it('names the worst stretch and the metre where it starts', () => {
    const run = runOf('e1', [
      segmentOf({ lengthMm: 1200 }),
      segmentOf({ lengthMm: 900, medium: 'wall-chase', containment: 'oval' }),
      segmentOf({ lengthMm: 400, medium: 'stud-cavity', wallId: 'v' }),
    ]);
    expect(capacityOfRun(run, { plan: planOf({ insulated: true }), cablesInBundle: none })).toEqual({
      id: 'e1',
      izA: 13.5,
      method: '103',
      worstSegment: 2,
      worstFromMm: 2100,
      groupFactor: 1,
      insulationFactor: 1,
      grade: 'seen',
    });
  });

  it('has a band in a floor void that nobody described: 17 to 27 A, and 22 to 37 A in 4 mm²', () => {
    const band = (segment: Partial<Segment>, lineMm2 = 2.5) => {
      const run = runOf('e1', [segmentOf({ medium: 'void-along', ...segment })], { cable: twinOf(lineMm2) });
      const { izA, atBest } = capacityOfRun(run, { plan: planOf({}), cablesInBundle: none });
      return [izA, atBest?.izA, atBest?.method];
    };
    expect(band({})).toEqual([17, 27, 'C']);
    expect(band({}, 4)).toEqual([22, 37, 'C']);
    expect(band({ containment: 'oval' })).toEqual([17, 23, 'B']);
    expect(band({ insulation: 'touching' })).toEqual([17, 21, '100']);
    expect(band({ insulation: 'none' })).toEqual([27, undefined, undefined]);
  });

  it('keeps the factor of insulation all round apart from the method', () => {
    const run = runOf('e1', [segmentOf({ insulation: 'surrounded', lengthMm: 500 })]);
    const { izA, method, insulationFactor } = capacityOfRun(run, { plan: planOf({}), cablesInBundle: none });
    expect([izA, method, insulationFactor]).toEqual([13.5, 'C', 0.5]);
  });

  it('proves nothing by the stretches that are told where one is not', () => {
    const run = runOf('e1', [segmentOf(), segmentOf({ medium: 'stud-cavity', wallId: 'v' })]);
    const capacity = capacityOfRun(run, { plan: planOf({}), cablesInBundle: none });
    expect([capacity.izA, capacity.atBest?.izA]).toEqual([null, 27]);
  });

  it('has no figure for a run without a path, for other cable, and for sizes not listed', () => {
    const around = { plan: planOf({}), cablesInBundle: none };
    expect(capacityOfRun(runOf('e1', []), around).izA).toBeNull();
    const imperial = { type: 'imperial', lineMm2: 2.98, cpcMm2: 1.3 } as const;
    expect(capacityOfRun(runOf('e1', [segmentOf()], { cable: imperial }), around).izA).toBeNull();
    expect(capacityOfRun(runOf('e1', [segmentOf()], { cable: twinOf(3) }), around).izA).toBeNull();
  });

  it('counts the cables of a bundle across runs and legs found', () => {
    const shared = [segmentOf({ medium: 'surface-channel', containment: 'channel', bundle: 'pair' })];
    const facts = factsOf({
      proposed: { edges: [edgeOf('leg', 'r1', 'r2')] },
      runs: [runOf('out', shared)],
      foundRuns: [runOf('leg', shared)],
    });
    const all = capacities(facts);
    expect([all.get('out')?.izA, all.get('leg')?.izA]).toEqual([18.4, 18.4]);
    expect(capacities({ ...facts, foundRuns: new Map() }).get('out')?.izA).toBe(23);
  });

  it('tells what a leg carried before new cable was laid beside it, and only then', () => {
    const shared = [segmentOf({ medium: 'surface-channel', containment: 'channel', bundle: 'pair' })];
    const facts = factsOf({
      proposed: { edges: [edgeOf('leg', 'r1', 'r2')] },
      runs: [runOf('out', shared)],
      foundRuns: [runOf('leg', shared)],
    });
    expect(capacities(facts).get('leg')?.asFound?.izA).toBe(23);
    expect(capacities(facts).get('out')?.asFound).toBeUndefined();
    expect(capacities({ ...facts, runs: [] }).get('leg')?.asFound).toBeUndefined();
  });

  describe('where a leg is cut', () => {
    const channel = { medium: 'surface-channel', containment: 'channel' } as const;
    const stretchAt = (fromMm: number, toMm: number, bundle: string | null) =>
      segmentOf({
        ...channel,
        bundle,
        from: { storeyId: 'gf', at: planPoint(fromMm, 0), heightMm: 0, levelMm: 0 },
        to: { storeyId: 'gf', at: planPoint(toMm, 0), heightMm: 0, levelMm: 0 },
        lengthMm: toMm - fromMm,
      });
    /** 3 m of channel `near`, then 3 m of channel `far`; of its 6 m of cable these parts stay. */
    const cut = (...parts: readonly (readonly [fromMm: number, toMm: number])[]) =>
      factsOf({
        proposed: {
          edges: parts.map(([fromMm, toMm], index) =>
            edgeOf(`leg/part-${index + 1}`, 'r1', 'r2', { legId: 'leg', partMm: { fromMm, toMm } }),
          ),
        },
        foundRuns: [runOf('leg', [stretchAt(0, 3000, 'near'), stretchAt(3000, 6000, 'far')])],
        runs: [runOf('a', [stretchAt(0, 3000, 'near')]), runOf('b', [stretchAt(3000, 6000, 'far')])],
      });
    const izAs = (facts: ReturnType<typeof cut>) =>
      Object.fromEntries([...capacities(facts)].map(([id, { izA }]) => [id, izA]));

    it('leaves new cable alone in the channel of what is taken out', () => {
      // 200 mm of tail at the near end: 3200 mm of cable come to 3000 mm of way.
      expect(izAs(cut([3200, 6000]))).toEqual({ 'leg/part-1': 18.4, a: 23, b: 18.4 });
      expect(izAs(cut([0, 3200]))).toEqual({ 'leg/part-1': 18.4, a: 18.4, b: 23 });
      expect(izAs(cut())).toEqual({ a: 23, b: 23 });
    });

    it('counts two parts of one leg as one cable', () => {
      expect(izAs(cut([0, 1000], [2000, 6000]))).toEqual({
        'leg/part-1': 18.4,
        'leg/part-2': 18.4,
        a: 18.4,
        b: 18.4,
      });
    });

    it('counts a cut leg of unknown length whole', () => {
      const facts = cut([3200, 6000]);
      const edges = facts.proposed.edges.map((edge) => ({ ...edge, partMm: null }));
      const unknown = { ...facts, proposed: { ...facts.proposed, edges } };
      expect(izAs(unknown)).toEqual({ 'leg/part-1': 18.4, a: 18.4, b: 18.4 });
    });
  });

  it('has no figure for a leg whose cable nobody looked at', () => {
    const { cable: _, ...unseen } = legOf('leg', 'r1', 'r2');
    const facts = factsOf({
      job: { legs: [unseen, legOf('other', 'r2', 'r3')] },
      proposed: { edges: [edgeOf('leg', 'r1', 'r2'), edgeOf('other', 'r2', 'r3')] },
      foundRuns: [runOf('leg', [segmentOf()]), runOf('other', [segmentOf()])],
    });
    expect([...capacities(facts).keys()]).toEqual(['other']);
  });
});

describe('laws of capacity', () => {
  const stretch = fc.record({
    medium: fc.constantFrom(...medium.options),
    containment: fc.constantFrom('none', 'capping', 'oval', 'channel', 'conduit'),
    insulation: fc.constantFrom(null, 'none', 'touching', 'surrounded'),
    lengthMm: fc.integer({ min: 1, max: 9000 }),
  });
  const plan = planOf({ insulated: false });

  it('a stretch more never lets a cable carry more, and no cable carries more than clipped direct', () => {
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 6 }), stretch, (parts, more) => {
        const around = { plan, cablesInBundle: none };
        const short = capacityOfRun(
          runOf(
            'e1',
            parts.map((part) => segmentOf(part)),
          ),
          around,
        );
        const long = capacityOfRun(
          runOf(
            'e1',
            [...parts, more].map((part) => segmentOf(part)),
          ),
          around,
        );
        const best = (capacity: typeof short) =>
          capacity.atBest?.izA ?? capacity.izA ?? Number.POSITIVE_INFINITY;
        expect(best(long)).toBeLessThanOrEqual(best(short));
        expect(long.izA ?? 0).toBeLessThanOrEqual(short.izA ?? Number.POSITIVE_INFINITY);
        expect(short.izA ?? 0).toBeLessThanOrEqual(27);
        expect(short.izA ?? 0).toBeLessThanOrEqual(best(short));
      }),
      { seed: 41 },
    );
  });

  it('more cables in a tube never let one carry more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), (a, b) => {
        const izA = (cables: number) =>
          capacityOfRun(runOf('e1', [segmentOf({ medium: 'surface-channel', bundle: 'b' })]), {
            plan,
            cablesInBundle: new Map([['b', cables]]),
          }).izA;
        expect(izA(Math.max(a, b)) ?? 0).toBeLessThanOrEqual(izA(Math.min(a, b)) ?? 0);
      }),
      { seed: 42 },
    );
  });

  // 35 °C: 0.94. Source: BS 7671 Table 4B1.
  it('warmer air takes its factor off, and what is said of the cable tells so', () => {
    const run = runOf('e1', [segmentOf({ medium: 'surface-clipped' })]);
    const warm = capacityOfRun(run, { plan, cablesInBundle: none, ambientFactor: 0.94 });
    expect(warm).toMatchObject({ izA: 25.38, ambientFactor: 0.94 });
    const facts = factsOf({ runs: [run] });
    expect(capacities(facts, { ambientC: 35 }).get('e1')?.izA).toBe(25.38);
    expect(capacities(facts, {}).get('e1')?.izA).toBe(27);
  });

  it('a thicker cable carries more by every method', () => {
    for (const thin of table4D5.rows)
      for (const thick of table4D5.rows)
        if (thin.method === thick.method && thin.areaMm2 < thick.areaMm2)
          expect(thick.currentA).toBeGreaterThan(thin.currentA);
  });
});

describe.each(demoNames)('capacities of cable that %s has already', (name) => {
  const job = demoJob(name);
  const library = demoLibrary();
  const house = workHouse(job, tariffOf(library), defaultLengthAllowances);

  it('are in every scheme and at every air temperature as worked out for it alone', () => {
    for (const scheme of [null, ...job.schemes])
      for (const ambientC of [undefined, 35]) {
        const limits = { ...library.limits, ...(ambientC === undefined ? {} : { ambientC }) };
        const worked = workScheme(house, scheme);
        const alone = { ...worked, foundRuns: new Map(worked.foundRuns) };
        expect([...capacities(worked, limits)]).toEqual([...capacities(alone, limits)]);
      }
  });
});
