import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LegProof } from '#engine/proof/circuit-proof.ts';
import type { ProofInput } from '#engine/proof/proof-case.ts';
import { proveCircuits } from '#engine/proof/prove.ts';
import { demoEstimate, demoNames, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { boardOf, circuitOf } from '../rules/facts-builder.ts';
import { at, proofOf, ringOf, wiredJob } from './wired-job.ts';

const lengths = fc.array(fc.integer({ min: 1, max: 15 }), { minLength: 3, maxLength: 14 });
/** Everything of these circuits is reached: NaN, which fails every comparison, where it were not. */
const currentOf = ({ currentA }: LegProof): number => currentA ?? Number.NaN;
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe('the handbook’s load on a circuit', () => {
  it('is the device’s rating, all of it out of the board and none of it lost on the way', () => {
    fc.assert(
      fc.property(lengths, (lengthsM) => {
        const { legs, points } = proofOf(wiredJob(ringOf(lengthsM)));
        const leaving = legs.filter(({ from }) => from === 'c').map(currentOf);
        const arriving = legs.filter(({ to }) => to === 'c').map(currentOf);
        expect(sum(leaving) - sum(arriving)).toBeCloseTo(32, 9);
        const drawn = points.map(({ point }) => {
          const into = legs.filter(({ to }) => to === point).map(currentOf);
          const out = legs.filter(({ from }) => from === point).map(currentOf);
          return sum(into) - sum(out);
        });
        // 12 A in equal shares, and at one point 20 A besides.
        const share = 12 / points.length;
        const besides = drawn.map((currentA) => Math.abs(Math.round((currentA - share) * 1e6) / 1e6));
        expect(besides.toSorted((a, b) => a - b)).toEqual([...points.slice(1).map(() => 0), 20]);
      }),
    );
  });

  it('drops alike whichever way round the ring is told', () => {
    fc.assert(
      fc.property(lengths, (lengthsM) => {
        const wires = ringOf(lengthsM);
        const turned = wires.toReversed().map(({ from, to, lengthM }) => ({ from: to, to: from, lengthM }));
        const [one, other] = [proofOf(wiredJob(wires)), proofOf(wiredJob(turned))];
        for (const { point, dropV } of one.points) expect(at(other, point).dropV).toBeCloseTo(dropV ?? -1, 9);
      }),
    );
  });

  // The same source: 20 A at the far point and the rest spread evenly count as 26 A there (IET On-Site Guide 7.2.2, as quoted
  // at https://dev-www.diynot.com/diy/threads/correct-cable-size.470256/page-3).
  it('comes to 26 A at the far point of a ring with many points', () => {
    const proof = proofOf(wiredJob(ringOf(Array.from({ length: 80 }, () => 1))));
    const worstV = Math.max(...proof.points.map(({ dropV }) => dropV ?? 0));
    // 18 mV a ampere and metre, 80 m, a quarter of it from the board to the middle by both ways.
    expect(worstV / ((26 * 0.018 * 80) / 4)).toBeCloseTo(1, 2);
  });

  it('is no more behind a fused unit than its fuse lets through', () => {
    const wires = [...ringOf([4, 4, 4]), { from: 'p1', to: 'u1', lengthM: 40 }];
    const { legs } = proofOf(wiredJob(wires));
    const fuse = legs.find(({ leg }) => leg === 'u1/fuse');
    expect(fuse?.currentA).toBeGreaterThan(0);
    expect(fuse?.currentA).toBeLessThanOrEqual(3 + 1e-9);
    expect(fuse?.izA).toBeNull();
  });

  it('takes a radial’s whole rating at its end where that is no more than 20 A', () => {
    const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
    const wires = [
      { from: 'c', to: 'p1', lengthM: 10 },
      { from: 'p1', to: 'p2', lengthM: 10 },
    ];
    const proof = proofOf(wiredJob(wires, { circuits: [circuitOf('c', { shape: 'radial', device })] }));
    expect(proof.shape).toBe('radial');
    expect(at(proof, 'p2').dropV).toBeCloseTo(20 * 20 * 0.018, 9);
    expect(proof.ring).toBeUndefined();
  });
});

describe('the demo jobs as found', () => {
  // Invented figures, made to fit each other: end to end, spur readings crossed, Zs in the middle and at the spur, cold.
  const expected = {
    'saltglass-row': {
      r1: 0.45,
      r2: 0.74,
      spur: 's1-bedroom',
      step2: 0.33,
      step3: 0.43,
      middle: 0.54,
      zs: 0.67,
    },
    'fernlow-close': {
      r1: 0.52,
      r2: 0.86,
      spur: 'a10-lounge',
      step2: 0.32,
      step3: 0.41,
      middle: 0.76,
      zs: 0.83,
    },
  } as const;

  it.each(['saltglass-row', 'fernlow-close'] as const)('%s reads what its lengths make it read', (name) => {
    const [proof] = demoEstimate(name).asFound.proof;
    const { r1, r2, spur, step2, step3, middle, zs } = expected[name];
    expect(proof?.isWhole).toBe(true);
    expect(proof?.ring?.r1Ohm).toBeCloseTo(r1, 2);
    expect(proof?.ring?.rnOhm).toBeCloseTo(r1, 2);
    expect(proof?.ring?.r2Ohm).toBeCloseTo(r2, 2);
    const read = (list: readonly { point: string; ohm: number }[] = []): number =>
      list.find(({ point }) => point === spur)?.ohm ?? -1;
    expect(read(proof?.ring?.step2)).toBeCloseTo(step2, 2);
    expect(read(proof?.ring?.step3)).toBeCloseTo(step3, 2);
    const onRing = new Set(proof?.ring?.order.map(({ point }) => point));
    const cold = (proof?.points ?? [])
      .filter(({ point }) => onRing.has(point))
      .map((one) => one.zsColdOhm ?? 0);
    expect(Math.abs(Math.max(...cold) - middle)).toBeLessThan(0.01);
    expect(Math.abs((proof?.points.find(({ point }) => point === spur)?.zsColdOhm ?? 0) - zs)).toBeLessThan(
      0.01,
    );
  });

  it('has Zs 0.59 Ω cold in the middle of the flat’s ring, from 0.33 Ω at its board', () => {
    const [proof] = demoEstimate('quarrel-court').asFound.proof;
    expect(proof?.source).toEqual({ ohm: 0.33, from: 'board' });
    expect(Math.max(...(proof?.points ?? []).map(({ zsColdOhm }) => zsColdOhm ?? 0))).toBeCloseTo(0.59, 2);
  });

  it('has Zs 0.91 Ω warm in the middle of the ring that is carried through the kitchen', () => {
    const [proof] = schemeOf(demoEstimate('fernlow-close'), 'ring-to-b3').proof;
    expect(proof?.ring?.lengthMm).toBeCloseTo(83_500, -3);
    const onRing = new Set(proof?.ring?.order.map(({ point }) => point));
    const hot = (proof?.points ?? [])
      .filter(({ point }) => onRing.has(point))
      .map(({ zsHotOhm }) => zsHotOhm ?? 0);
    expect(Math.max(...hot)).toBeCloseTo(0.91, 2);
  });

  it('tells every circuit concerned once, in order', () => {
    for (const name of demoNames) {
      const estimated = demoEstimate(name);
      for (const { proof, worked } of [estimated.asFound, ...estimated.schemes])
        expect(proof.map(({ circuit }) => circuit)).toEqual(worked.circuitIds);
    }
  });
});

describe('what is not known', () => {
  const wires = ringOf([5, 5, 5]);

  it('is nothing where no cable is recorded, and said so', () => {
    const proof = proofOf({ ...wiredJob(wires), legs: [] });
    expect(proof).toMatchObject({ legs: [], points: [], isWhole: false });
    expect(proof.assumptions).toHaveLength(1);
  });

  it('keeps a proof from being whole: a length, a cable, the device', () => {
    const job = wiredJob(wires);
    const withLeg = (change: object) => ({
      ...job,
      legs: job.legs.map((leg, i) => {
        const { lengthMm: _, cable: __, ...bare } = leg;
        return i === 0 ? { ...bare, ...change } : leg;
      }),
    });
    const cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 } as const;
    const { device: _, ...noDevice } = circuitOf('c', { shape: 'ring' });
    expect(proofOf(job).isWhole).toBe(true);
    expect(proofOf(withLeg({ cable })).isWhole).toBe(false);
    expect(proofOf(withLeg({ lengthMm: 5000 })).isWhole).toBe(false);
    expect(proofOf(withLeg({ cable, lengthMm: 5000, certainty: { length: 'assumed' } })).isWhole).toBe(false);
    expect(proofOf({ ...job, circuits: [noDevice] }).isWhole).toBe(false);
  });

  it('leaves Zs out without the loop before the circuit, and its limit without the device', () => {
    const job = wiredJob(wires);
    const { zeOhm: _, ...supply } = job.supply;
    const without = at(proofOf({ ...job, supply }), 'p1');
    expect(without).toMatchObject({ zsColdOhm: null, zsHotOhm: null });
    expect(without.r1r2ColdOhm).toBeGreaterThan(0);
    const { device: __, ...noDevice } = circuitOf('c', { shape: 'ring' });
    expect(at(proofOf({ ...job, circuits: [noDevice] }), 'p1').zsMaxOhm).toBeNull();
  });

  it('leaves points out of reach without figures', () => {
    const proof = proofOf(wiredJob([...wires, { from: 'p8', to: 'p9', lengthM: 3 }]));
    expect(at(proof, 'p9')).toMatchObject({ dropV: null, r1r2ColdOhm: null, zsColdOhm: null });
    expect(at(proof, 'p1').dropV).toBeGreaterThan(0);
  });
});

describe('the limits of a fault loop', () => {
  const wires = [...ringOf([5, 5, 5]), { from: 'p1', to: 'u1', lengthM: 3 }];

  it('are the device’s, at a unit as well, whose cable it protects up to the fuse', () => {
    const proof = proofOf(wiredJob(wires));
    // B32: 218.5 V by five times 32 A. Source: BS 7671 411.4.4.
    expect(at(proof, 'p1').zsMaxOhm).toBeCloseTo(218.5 / 160, 9);
    expect(at(proof, 'u1').zsMaxOhm).toBeCloseTo(218.5 / 160, 9);
    expect(proof.limit.coldOhm).toBeCloseTo((0.8 * 218.5) / 160, 9);
  });

  it('are compared with cold readings by the rule that the firm has chosen', () => {
    const { limit } = proofOf(wiredJob(wires), { coldLoopRule: 'guide-divisor' });
    expect(limit.coldRule).toBe('guide-divisor');
    expect(limit.coldOhm).toBeCloseTo(218.5 / 160 / 1.24, 9);
  });

  it('are the RCD’s on TT, and none without one', () => {
    const job = wiredJob(wires);
    const supply = { ...job.supply, earthing: 'TT' } as const;
    const rcd = { id: 'q', type: 'A', mA: 30 } as const;
    const boards = [boardOf('b1', { rcds: [rcd] })];
    const circuits = [circuitOf('c', { shape: 'ring', upstreamRcd: 'q' })];
    const proof = proofOf({ ...job, supply, boards, circuits });
    expect(proof.limit.by).toBe('rcd');
    // 50 V by 30 mA. Source: BS 7671 411.5.3, Table 41.5.
    expect(at(proof, 'u1').zsMaxOhm).toBeCloseTo(1666.7, 1);
    expect(proofOf({ ...job, supply }).limit).toMatchObject({ by: null, maximumOhm: null });
  });

  it('never lets the ring in service read more than is recorded for it', () => {
    fc.assert(
      fc.property(lengths, (lengthsM) => {
        for (const { zsServiceColdOhm, zsColdOhm } of proofOf(wiredJob(ringOf(lengthsM))).points)
          expect(zsServiceColdOhm).toBeLessThanOrEqual((zsColdOhm ?? 0) + 1e-12);
      }),
    );
  });
});

describe('volt drop at the conductors’ own temperature', () => {
  const job = wiredJob(ringOf([10, 10, 10]));
  const { worked } = estimateOf(job).asFound;
  const capacity = {
    izA: 20,
    method: 'A',
    worstSegment: 0,
    worstFromMm: 0,
    groupFactor: 1,
    insulationFactor: 1,
    grade: 'memory',
  } as const;
  const capacities = new Map(job.legs.map(({ id }) => [id, { id, ...capacity }]));
  const correctionOf = (change: Partial<ProofInput>): number | undefined =>
    proveCircuits({ worked, capacities, limits: { voltDropCorrected: true }, ...change })[0]?.dropCorrection;

  // BS 7671 Appendix 4 §6.1, by http://www.theiet.org/forums/forum/messageview.cfm?catid=205&threadid=47433.
  it('is that of the cable which carries most of its capacity', () => {
    const [proof] = proveCircuits({ worked, capacities, limits: {} });
    const mostA = Math.max(...(proof?.legs ?? []).map(currentOf));
    expect(mostA).toBeLessThan(20);
    expect(correctionOf({})).toBeCloseTo((300 - (1 - (mostA / 20) ** 2) * 40) / 300, 9);
  });

  it('is not reckoned where the firm does not want it, or some cable is not judged', () => {
    expect(correctionOf({ limits: {} })).toBe(1);
    expect(correctionOf({ capacities: new Map([...capacities].slice(1)) })).toBe(1);
  });

  it('is not reckoned behind a rewireable fuse', () => {
    const device = { standard: 'BS-3036', ratingA: 30 } as const;
    const rewireable = { ...job, circuits: [circuitOf('c', { shape: 'ring', device })] };
    expect(correctionOf({ worked: estimateOf(rewireable).asFound.worked })).toBe(1);
  });
});

describe('what a tester has to show besides', () => {
  const wires = ringOf([5, 5, 5]);

  // BS 7671 Table 64 and Table 41.1; the RCD's time by 643.7.1 since Amendment 2 (from memory).
  it('is insulation, the RCD’s time and the time to disconnect', () => {
    const job = wiredJob(wires);
    expect(proofOf(job).tests).toEqual({
      insulation: { testV: 500, minimumMegohm: 1 },
      rcd: null,
      disconnectWithinS: 0.4,
    });
    const boards = [boardOf('b1', { rcds: [{ id: 'q', type: 'A', mA: 30 }] })];
    const circuits = [circuitOf('c', { shape: 'ring', upstreamRcd: 'q' })];
    const supply = { ...job.supply, earthing: 'TT' } as const;
    const { rcd, disconnectWithinS } = proofOf({ ...job, boards, circuits, supply }).tests;
    expect([rcd?.testMa, rcd?.maximumMs, disconnectWithinS]).toEqual([30, 300, 0.2]);
  });
});

describe('the longest that the circuit could be', () => {
  // 26 A at the middle, 18 mV a ampere and metre, 11.5 V: 98.3 m; worked out by hand from the figures that give the printed
  // 106 m with the correction for temperature (IET On-Site Guide Table 7.1).
  it('is 98 m for 2.5/1.5 mm² behind a B32 in TN-C-S, by volt drop without correction', () => {
    const { longest } = proofOf(wiredJob(ringOf([5, 5, 5])));
    expect(longest?.by).toBe('volt-drop');
    expect(longest?.lengthMm).toBeCloseTo((11.5 * 4 * 1e6) / (18 * 26), 3);
  });

  it('is not told where cables differ', () => {
    const [one, ...rest] = ringOf([5, 5, 5]);
    const thick = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } as const;
    if (one === undefined) throw new Error('no ring');
    expect(proofOf(wiredJob([{ ...one, cable: thick }, ...rest])).longest).toBeNull();
  });
});

describe('the other scenarios of a ring', () => {
  it('put all of the rating into one cable where it is open at its worst leg', () => {
    const [open] = proofOf(wiredJob(ringOf([5, 5, 5, 5]))).otherScenarios.filter(
      ({ scenario }) => scenario === 'open-at-worst-leg',
    );
    expect(Math.max(...(open?.legs ?? []).map(currentOf))).toBeCloseTo(32, 9);
    expect(open?.legs.find(({ leg }) => leg === open.openLeg)?.currentA).toBe(0);
  });

  it('load the cable at one end the more, the nearer the loads are to it', () => {
    const near = (lengthsM: readonly number[]): number => {
      const scenario = proofOf(wiredJob(ringOf(lengthsM))).otherScenarios.find(
        (each) => each.scenario === 'near-one-end',
      );
      return Math.max(...(scenario?.legs ?? []).map(currentOf));
    };
    expect(near([1, 1, 9, 9, 9])).toBeGreaterThan(near([5, 5, 5, 5, 5]));
    expect(near([1, 1, 9, 9, 9])).toBeLessThan(32);
  });

  it('count plugged-in loads with diversity, fixed ones in full, and all of them at once besides', () => {
    const job = wiredJob(ringOf([5, 5, 5, 5]));
    const watts = [2300, 1150, 460];
    const points = job.points.map((point, i) => ({
      ...point,
      load: { watts: watts[i] ?? 0, use: 'x', fixed: i === 2 },
    }));
    const drawn = (scenario: string): number => {
      const { legs = [] } =
        proofOf({ ...job, points }).otherScenarios.find((each) => each.scenario === scenario) ?? {};
      return sum(legs.filter(({ from }) => from === 'c').map(currentOf));
    };
    // 100 % of the largest and 40 % of the other on plugs, from memory of IET On-Site Guide Table A2: 10 + 0.4 × 5 + 2 A.
    expect(drawn('named-loads')).toBeCloseTo(14, 9);
    expect(drawn('all-named-loads')).toBeCloseTo(17, 9);
  });
});
