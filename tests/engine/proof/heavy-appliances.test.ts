import { describe, expect, it } from 'vitest';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { proofOf, ringOf, type Wire, wiredJob } from './wired-job.ts';

/** The same job with loads named at some of its points, W. */
function named(wires: readonly Wire[], watts: Readonly<Record<string, number>>): Job {
  const job = wiredJob(wires);
  const points = job.points.map((point) => {
    const load = watts[point.id];
    return load === undefined ? point : { ...point, load: { watts: load, use: 'x', fixed: false } };
  });
  return { ...job, points };
}

const scenarioOf = ({ otherScenarios }: CircuitProof) =>
  otherScenarios.find(({ scenario }) => scenario === 'heavy-appliances');

/** A by leg id. */
const currentsOf = (proof: CircuitProof): ReadonlyMap<string, number> =>
  new Map((scenarioOf(proof)?.legs ?? []).map(({ leg, currentA }) => [leg, currentA ?? Number.NaN]));

describe('where heavy appliances are likely', () => {
  it('is where 2 kW or more is named, not where less is, and untold where neither load nor room is', () => {
    const { heavyAppliances } = proofOf(named(ringOf([3, 3, 3, 3]), { p1: 1999, p2: 2000 }));
    expect(heavyAppliances).toEqual({ points: ['p2'], untold: ['p3'] });
  });

  it('is in the kitchen, in the ring’s order, without anything named', () => {
    const estimate = demoEstimate('fernlow-close');
    const [proof] = estimate.asFound.proof;
    const labels = new Map(estimate.asFound.worked.job.points.map(({ id, label }) => [id, label]));
    expect(proof?.heavyAppliances?.points.map((id) => labels.get(id))).toEqual([
      'A4',
      'A5',
      'A6',
      'A7',
      'A8',
      'A9',
    ]);
    expect(proof?.heavyAppliances?.untold).toEqual([]);
  });

  it('is not asked of a radial', () => {
    const [, ...open] = ringOf([3, 3, 3]).toReversed();
    const job = named(open, { p1: 3000 });
    expect(proofOf(job).heavyAppliances).toBeUndefined();
    expect(scenarioOf(proofOf(job))).toBeUndefined();
  });
});

describe('the load of heavy appliances', () => {
  it('is 20 A and the rest of the rating at the two nearest the worse end, by the law of the ring', () => {
    // Points at 6, 14 and 17 m of 20: from end B p3 is the nearest, then p2. A load I at the fraction x of a ring sends
    // I·(1 − x) by end A and I·x by end B: 20 × 17/20 + 12 × 14/20 = 25.4 A by B, 6.6 A by A.
    const currents = currentsOf(proofOf(named(ringOf([6, 8, 3, 3]), { p1: 2500, p2: 3000, p3: 2500 })));
    expect(currents.get('leg-03')).toBeCloseTo(25.4, 9);
    expect(currents.get('leg-00')).toBeCloseTo(6.6, 9);
  });

  it('counts a point on a spur where the spur hangs', () => {
    const spur = { from: 'p1', to: 's1', lengthM: 4 };
    const currents = currentsOf(proofOf(named([...ringOf([5, 5, 5, 5]), spur], { s1: 3000, p3: 3000 })));
    // s1 hangs at 5 of 20 m, p3 lies at 15: either end is as bad; 20 A is at the nearer one.
    expect(Math.max(currents.get('leg-00') ?? 0, currents.get('leg-03') ?? 0)).toBeCloseTo(
      20 * 0.75 + 12 * 0.25,
      9,
    );
  });

  it('is spread over all points beyond 20 A where there is one such point only', () => {
    const proof = proofOf(named(ringOf([5, 5, 5, 5]), { p1: 3000, p2: 100, p3: 100 }));
    // 20 A at a quarter, and 12 A in three equal shares at 1/4, 2/4 and 3/4: by end A 15 + 4 × (3 + 2 + 1)/4.
    expect(currentsOf(proof).get('leg-00')).toBeCloseTo(20 * 0.75 + 4 * 1.5, 9);
    expect(scenarioOf(proof)?.assumptions.join(' ')).toContain('one such point');
  });
});
