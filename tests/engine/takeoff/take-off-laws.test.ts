import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Worked } from '#engine/connections/worked.ts';
import { remedyCause } from '#engine/takeoff/remedy-cause.ts';
import { inSizeOrder } from '#engine/takeoff/size-order.ts';
import { takeOff } from '#engine/takeoff/take-off.ts';
import type { Run } from '#engine/ways/run.ts';
import {
  newEdge,
  pointOf,
  runOf,
  segmentOf,
  spotAt,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';
import { terrace } from './terrace.ts';
import { workedOf } from './worked-builder.ts';

const waste = { cable: 5, containment: 10, fixings: 10, fillers: 20 };

/** Spurs from one point to as many new ones, each by its own way through any media. */
const anySpurs = fc.array(
  fc.array(
    fc.record({
      medium: fc.constantFrom('void-along', 'void-across', 'wall-chase', 'stud-cavity', 'surface-channel'),
      containment: fc.constantFrom('none', 'oval', 'capping', 'channel', 'conduit'),
      lengthMm: fc.integer({ min: 1, max: 9000 }),
      bundle: fc.constantFrom(null, 'b'),
    }),
    { maxLength: 5 },
  ),
  { minLength: 1, maxLength: 6 },
);

type Ways = typeof anySpurs extends fc.Arbitrary<infer Value> ? Value : never;

function spurs(ways: Ways): Worked {
  const runs = ways.map((way, index): Run => {
    const segments = way.map(({ lengthMm, ...rest }) =>
      segmentOf(spotAt(0, index * 5000, -110), spotAt(lengthMm, index * 5000, -110), rest),
    );
    return runOf(`n${index}`, 'a', `w${index}`, segments);
  });
  return workedOf({
    points: [pointOf('a'), ...ways.map((_, index) => wanted(`w${index}`))],
    newEdges: ways.map((_, index) => newEdge(`n${index}`, 'a', `w${index}`)),
    runs,
  });
}

function knownIds({ job, runs, things, scheme, circuitIds }: Worked): ReadonlySet<string> {
  return new Set([
    ...job.points.map(({ id }) => id),
    ...runs.map(({ id }) => id),
    ...things.joints.map(({ id }) => id),
    ...things.boxes.map(({ id }) => id),
    ...things.fusedUnits.map(({ id }) => id),
    ...(scheme?.connections ?? []).map(({ id }) => id),
    ...(scheme?.remedies ?? []).map(remedyCause),
    ...circuitIds,
  ]);
}

function cableM(worked: Worked): number {
  return takeOff(worked, waste)
    .filter((line) => line.item.startsWith('cable-'))
    .reduce((sum, line) => sum + line.quantity, 0);
}

describe('laws of the take-off', () => {
  it('cable is the sum of the runs and the waste, to a tenth of a metre', () => {
    fc.assert(
      fc.property(anySpurs, (ways) => {
        const worked = spurs(ways);
        const runsM = worked.runs.reduce((sum, run) => sum + (run.lengthMm ?? 0), 0) / 1e3;
        expect(cableM(worked)).toBeGreaterThanOrEqual(runsM * 1.05 - 1e-6);
        expect(cableM(worked)).toBeLessThan(runsM * 1.05 + 0.1);
      }),
      { seed: 21 },
    );
  });

  it('what is cut to length adds up to what is measured, one piece a cable, the longest first', () => {
    const held = (worked: Worked) => {
      const lines = takeOff(worked, waste);
      for (const { pieces, measured } of lines.filter((line) => line.pieces.length > 0)) {
        const inMm = pieces.map(({ lengthMm }) => lengthMm);
        expect(inMm.reduce((sum, mm) => sum + mm, 0) / 1e3).toBeCloseTo(measured, 9);
        expect(inMm).toEqual(inMm.toSorted((a, b) => b - a));
        for (const { lowMm, lengthMm, highMm } of pieces) {
          expect(lowMm).toBeLessThanOrEqual(lengthMm);
          expect(lengthMm).toBeLessThanOrEqual(highMm);
        }
      }
      const ofCables = lines.filter(({ item }) => item.startsWith('cable-')).flatMap(({ pieces }) => pieces);
      expect(ofCables.map(({ cause }) => cause).toSorted()).toEqual(
        worked.runs.map(({ id }) => id).toSorted(),
      );
      expect(ofCables.every(({ unbroken }) => unbroken)).toBe(true);
      const cut = lines.filter(({ pieces }) => pieces.length > 0).map(({ group }) => group);
      expect(cut.filter((group) => group !== 'cable' && group !== 'containment')).toEqual([]);
    };
    fc.assert(
      fc.property(anySpurs, (ways) => held(spurs(ways))),
      { seed: 24 },
    );
    held(workedOf(terrace));
  });

  it('one connection less never asks for more cable, tube, sockets, boxes or boards', () => {
    const counted = [
      'cable-flat-2.5-1.5',
      'socket-twin',
      'box-steel-twin-35',
      'screw-floor',
      'plaster-one-coat',
    ];
    fc.assert(
      fc.property(anySpurs, (ways) => {
        const quantities = (worked: Worked) =>
          new Map(takeOff(worked, waste).map((line) => [line.item, line.quantity]));
        const all = quantities(spurs(ways));
        const fewer = quantities(spurs(ways.slice(0, -1)));
        for (const item of counted) expect(fewer.get(item) ?? 0).toBeLessThanOrEqual(all.get(item) ?? 0);
      }),
      { seed: 22 },
    );
  });

  it('every line has causes, all of them things of the job', () => {
    fc.assert(
      fc.property(anySpurs, (ways) => {
        const worked = spurs(ways);
        const known = knownIds(worked);
        for (const { causes } of takeOff(worked, waste)) {
          expect(causes.length).toBeGreaterThan(0);
          expect(causes.filter((cause) => !known.has(cause))).toEqual([]);
        }
      }),
      { seed: 23 },
    );
    const worked = workedOf(terrace);
    const causes = takeOff(worked, waste).flatMap((line) => line.causes);
    expect(causes.filter((cause) => !knownIds(worked).has(cause))).toEqual([]);
  });

  it('the order in which runs and points come changes nothing', () => {
    const worked = workedOf(terrace);
    const things = {
      ...worked.things,
      boxes: worked.things.boxes.toReversed(),
      accessories: worked.things.accessories.toReversed(),
    };
    expect(takeOff({ ...worked, runs: worked.runs.toReversed(), things }, waste)).toEqual(
      takeOff(worked, waste),
    );
  });

  it('lines come in the order of a bill, by group and then by item, each item once', () => {
    const lines = takeOff(workedOf(terrace), waste);
    const groups = [...new Set(lines.map((line) => line.group))];
    expect(groups[0]).toBe('cable');
    expect(groups.at(-1)).toBe('papers');
    const byGroup = groups.flatMap((group) =>
      [...new Set(lines.filter((line) => line.group === group).map((line) => line.item))].toSorted(
        inSizeOrder,
      ),
    );
    expect(lines.map((line) => line.item)).toEqual(byGroup);
  });
});
