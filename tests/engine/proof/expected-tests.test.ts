import { describe, expect, it } from 'vitest';
import { temperatureWords, testLimitWords } from '#drawing/proof/test-words.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { proofOf, ringOf, wiredJob } from './wired-job.ts';

const wires = [...ringOf([5, 7, 9, 4]), { from: 'p2', to: 's1', lengthM: 3 }];
const testedAt = (conductorC: number | undefined, readings: readonly Reading[] = []): Job => {
  const job = wiredJob(wires, { readings: [...readings] });
  return { ...job, site: { ...job.site, ...(conductorC === undefined ? {} : { conductorC }) } };
};
const zs = (ohm: number, more: Partial<Extract<Reading, { kind: 'zs' }>> = {}): Reading => ({
  id: 'zs-1',
  kind: 'zs',
  at: 'p2',
  ohm,
  phase: 'before',
  ...more,
});
const r1 = (ohm: number, more: Partial<Extract<Reading, { kind: 'loop' }>> = {}): Reading => ({
  id: 'r1-1',
  kind: 'loop',
  circuit: 'c',
  loop: 'L',
  from: 'end-to-end',
  ohm,
  phase: 'before',
  ...more,
});

describe('what a tester should read', () => {
  it('is the figure for 20 °C where nobody said what the conductors are at, and says so', () => {
    const proof = proofOf(testedAt(undefined));
    expect(proof.expected).toMatchObject({ conductorC: 20, isTold: false });
    expect(proof.expected.ring).toEqual({
      r1Ohm: proof.ring?.r1Ohm,
      rnOhm: proof.ring?.rnOhm,
      r2Ohm: proof.ring?.r2Ohm,
      step2: proof.ring?.step2,
      step3: proof.ring?.step3,
    });
    expect(temperatureWords(proof)).toContain('nobody said');
  });

  // Source: BS EN 60228's 20 °C resistances corrected for ambient by On-Site Guide Table I2: 0.94, 0.96, 0.98, 1.02 at
  // 5, 10, 15 and 25 °C (from memory).
  it.each([
    [5, 0.94],
    [10, 0.96],
    [15, 0.98],
    [20, 1],
    [25, 1.02],
  ])('is corrected at %i °C by %f, in every loop and at every point and spur', (conductorC, factor) => {
    const proof = proofOf(testedAt(conductorC));
    const { ring, points } = proof.expected;
    expect(proof.expected.isTold).toBe(true);
    expect(ring?.r1Ohm).toBeCloseTo((proof.ring?.r1Ohm ?? 0) * factor, 9);
    expect(ring?.r2Ohm).toBeCloseTo((proof.ring?.r2Ohm ?? 0) * factor, 9);
    for (const step of ['step2', 'step3'] as const) {
      expect(ring?.[step].map(({ point }) => point)).toContain('s1');
      ring?.[step].forEach(({ ohm }, i) => {
        expect(ohm).toBeCloseTo((proof.ring?.[step][i]?.ohm ?? 0) * factor, 9);
      });
    }
    expect(points).toHaveLength(proof.points.length);
    points.forEach(({ r1r2Ohm, zsOhm, zsServiceOhm }, i) => {
      const cold = proof.points[i];
      expect(r1r2Ohm).toBeCloseTo((cold?.r1r2ColdOhm ?? 0) * factor, 9);
      // The 0.35 Ω of the supply are none of the circuit's copper.
      expect(zsOhm).toBeCloseTo(0.35 + (cold?.r1r2ColdOhm ?? 0) * factor, 9);
      expect(zsServiceOhm).toBeCloseTo(0.35 + ((cold?.zsServiceColdOhm ?? 0) - 0.35) * factor, 9);
    });
  });

  it('leaves what is proved alone: limits hold for 20 and 70 °C', () => {
    const [cool, usual] = [proofOf(testedAt(5)), proofOf(testedAt(undefined))];
    expect(cool.points).toEqual(usual.points);
    expect(cool.ring).toEqual(usual.ring);
  });

  it('is told for a radial too, by its points', () => {
    const [, ...open] = ringOf([5, 5, 5]).toReversed();
    const job = wiredJob(open);
    const { expected, points } = proofOf({ ...job, site: { ...job.site, conductorC: 10 } });
    expect(expected.ring).toBeNull();
    expect(expected.points.map(({ r1r2Ohm }) => r1r2Ohm)).toEqual(
      points.map(({ r1r2ColdOhm }) => (r1r2ColdOhm ?? 0) * 0.96),
    );
  });
});

describe('what was read', () => {
  const compared = (job: Job, group: 'ends' | 'zs') =>
    comparedReadings(proofOf(job), readingsTaken(job), 'before').find(
      (one) => one.group === group && one.measuredOhm !== null,
    );

  it('was read at the job’s temperature where it says nothing else, and is compared there', () => {
    const cold = proofOf(testedAt(undefined)).ring?.r1Ohm ?? 0;
    const one = compared(testedAt(10, [r1(cold * 0.96)]), 'ends');
    expect(one?.measuredOhm).toBeCloseTo(cold * 0.96, 9);
    expect(one?.expectedOhm).toBeCloseTo(cold * 0.96, 9);
  });

  it('is brought there from its own', () => {
    const one = compared(testedAt(10, [r1(1.02, { conductorC: 25 })]), 'ends');
    expect(one?.measuredOhm).toBeCloseTo(0.96, 9);
  });

  it('keeps of a loop what lies before the circuit as it is', () => {
    const one = compared(testedAt(10, [zs(0.35 + 0.51, { conductorC: 25 })]), 'zs');
    expect(one?.measuredOhm).toBeCloseTo(0.35 + 0.48, 9);
  });
});

describe('what a tester shows besides', () => {
  it('is told in sentences: insulation, RCD, time, the cold limit of Zs', () => {
    const words = testLimitWords(proofOf(testedAt(undefined)));
    // Sources: BS 7671 Table 64 (500 V, 1 MΩ), Table 41.1 (0.4 s); 1.37 Ω for a B32 × 0.8.
    expect(words[0]).toContain('at 500 V no less than 1 MΩ');
    expect(words[1]).toContain('none is known of');
    expect(words).toContain('A fault to earth is cut off within 0.4 s.');
    expect(words.find((text) => text.startsWith('Zs read'))).toContain('no more than 1.09 Ω (80 % of B32');
  });

  it('has the time of the RCD where there is one', () => {
    const job = wiredJob(wires);
    const circuits = job.circuits.map((circuit) => ({
      ...circuit,
      device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 32, rcd: { type: 'A', mA: 30 } } as const,
    }));
    expect(testLimitWords(proofOf({ ...job, circuits }))[1]).toBe('RCD: opens within 300 ms at 30 mA.');
  });
});
