import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cableOhms } from '#engine/proof/conductor-ohms.ts';
import { crossedOhm } from '#engine/proof/expected-readings.ts';
import type { Cable } from '#model/cable.ts';
import { denseFlow } from './flow/dense-flow.ts';
import { proofOf, ringOf, type Wire, wiredJob } from './wired-job.ts';

const cables: readonly Cable[] = [
  { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
  { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1 },
  { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 },
];

/** Rings of several cables with spurs of several points. */
const wiredRings = fc
  .record({
    ring: fc.array(
      fc.record({ lengthM: fc.integer({ min: 1, max: 15 }), cable: fc.constantFrom(...cables) }),
      {
        minLength: 3,
        maxLength: 9,
      },
    ),
    spurs: fc.array(
      fc.record({ at: fc.nat(), lengthM: fc.integer({ min: 1, max: 9 }), cable: fc.constantFrom(...cables) }),
      {
        maxLength: 4,
      },
    ),
  })
  .map(({ ring, spurs }): readonly Wire[] => {
    const around = ringOf(ring.map(({ lengthM }) => lengthM)).map((wire, i) => ({ ...wire, ...ring[i] }));
    const names = around.slice(1).map(({ from }) => from);
    const hung = spurs.map(({ at, lengthM, cable }, i): Wire => {
      const earlier = spurs.slice(0, i).map((_, k) => `s${k}`);
      return { from: [...names, ...earlier][at % (names.length + i)] ?? 'p1', to: `s${i}`, lengthM, cable };
    });
    return [...around, ...hung];
  });

/**
 * What is read between two conductors at a place, worked out from nothing but wires: both conductors of every cable as
 * resistors, end A of each joined to end B of the other, and 1 A let in at the one and out at the other.
 */
function readFromWires(
  wires: readonly Wire[],
  place: string,
  second: 'lineMilliohmPerM' | 'cpcMilliohmPerM',
): number {
  const names = [...new Set(wires.flatMap(({ from, to }) => [from, to]))].filter((name) => name !== 'c');
  const lineAt = (name: string): number => 2 + names.indexOf(name);
  const otherAt = (name: string): number => 2 + names.length + names.indexOf(name);
  const lastOfRing = wires.findIndex(({ to }) => to === 'c');
  const legs = wires.flatMap(({ from, to, lengthM, cable }, i) => {
    const ohms = cableOhms(cable ?? { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 });
    // Node 0 joins line A to the other's end B, node 1 line B to the other's end A.
    const line = [i === 0 ? 0 : lineAt(from), i === lastOfRing ? 1 : lineAt(to)];
    const other = [i === 0 ? 1 : otherAt(from), i === lastOfRing ? 0 : otherAt(to)];
    return [
      { ends: line, ohm: ((ohms?.lineMilliohmPerM ?? 0) * lengthM) / 1000 },
      { ends: other, ohm: ((ohms?.[second] ?? 0) * lengthM) / 1000 },
    ];
  });
  const nodeCount = 2 + 2 * names.length;
  const loadA = new Float64Array(nodeCount);
  loadA[lineAt(place)] = 1;
  const network = {
    nodeCount,
    source: otherAt(place),
    from: Int32Array.from(legs, ({ ends }) => ends[0] ?? 0),
    to: Int32Array.from(legs, ({ ends }) => ends[1] ?? 0),
    ohm: Float64Array.from(legs, ({ ohm }) => ohm),
  };
  return denseFlow({ network, loadA }).dropV[lineAt(place)] ?? Number.NaN;
}

describe('expected readings of a ring', () => {
  it('are what the wires themselves give, with lines crossed with neutrals and with protective conductors', () => {
    fc.assert(
      fc.property(wiredRings, (wires) => {
        const { ring } = proofOf(wiredJob(wires));
        const names = new Set(wires.flatMap(({ from, to }) => [from, to]).filter((name) => name !== 'c'));
        expect(ring?.step2).toHaveLength(names.size);
        expect(ring?.step3).toHaveLength(names.size);
        for (const { point, ohm } of ring?.step2 ?? [])
          expect(ohm).toBeCloseTo(readFromWires(wires, point, 'lineMilliohmPerM'), 9);
        for (const { point, ohm } of ring?.step3 ?? [])
          expect(ohm).toBeCloseTo(readFromWires(wires, point, 'cpcMilliohmPerM'), 9);
      }),
      { numRuns: 60 },
    );
  });

  it('are, end to end, the sums of the legs', () => {
    fc.assert(
      fc.property(wiredRings, (wires) => {
        const { ring } = proofOf(wiredJob(wires));
        const around = wires.filter(({ to }) => !to.startsWith('s'));
        const ohmOf = (key: 'lineMilliohmPerM' | 'cpcMilliohmPerM'): number =>
          around.reduce(
            (sum, { cable, lengthM }) =>
              sum + ((cable ? (cableOhms(cable)?.[key] ?? 0) : 0) * lengthM) / 1000,
            0,
          );
        expect(ring?.r1Ohm).toBeCloseTo(ohmOf('lineMilliohmPerM'), 9);
        expect(ring?.rnOhm).toBeCloseTo(ohmOf('lineMilliohmPerM'), 9);
        expect(ring?.r2Ohm).toBeCloseTo(ohmOf('cpcMilliohmPerM'), 9);
      }),
      { numRuns: 60 },
    );
  });

  // A worked example on line: r1 0.54, r2 0.90 give 0.36 in the middle and 0.3375 at the board
  // (https://www.diynot.com/diy/threads/calculating-r1-r2.79317/).
  it('are 0.36 Ω in the middle and 0.3375 Ω at the board for r1 0.54 and r2 0.90', () => {
    expect(crossedOhm(0.27, 0.54, 0.45, 0.9)).toBeCloseTo(0.36, 12);
    expect(crossedOhm(0, 0.54, 0, 0.9)).toBeCloseTo(0.3375, 12);
  });

  // How far the readings differ along a ring: 6 %, 20 % and 18 % for 2.5/1.5, 4/1.5 and 2.5/1.0 mm², as published
  // (https://www.electriciansforums.net/threads/r1-r2-4-the-myth-expelled.176045/page-3).
  it.each([
    [cables[0], 0.06],
    [cables[2], 0.2],
    [cables[1], 0.18],
  ] as const)('spread as published for %o', (cable, published) => {
    const ohms = cable === undefined ? null : cableOhms(cable);
    const [r1, r2] = [ohms?.lineMilliohmPerM ?? 0, ohms?.cpcMilliohmPerM ?? 0];
    const spread = 1 - crossedOhm(0, r1, 0, r2) / crossedOhm(r1 / 2, r1, r2 / 2, r2);
    expect(Math.abs(spread - published)).toBeLessThan(0.005);
  });
});
