import { describe, expect, it } from 'vitest';
import { readingsChart } from '#drawing/proof/readings-chart.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import type { Reading } from '#model/installation.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { groupsOf, outside, overlaps, textsOf } from './scene-parts.ts';

const { asFound } = demoEstimate('fernlow-close');
const proof = ((): CircuitProof => {
  const [first] = asFound.proof;
  if (first === undefined) throw new Error('no proof');
  return first;
})();
const { readings } = asFound.worked.job;
const chart = (some: readonly Reading[], widthMm: number, phase: 'before' | 'after' = 'before') =>
  readingsChart({
    compared: comparedReadings(proof, some, phase),
    labelOf: (id) => id.slice(0, 3),
    phase,
    conductorC: proof.expected.conductorC,
    widthMm,
  });

const ends = (ohm: number, more: Partial<Extract<Reading, { kind: 'loop' }>> = {}): Reading => ({
  id: 'reading-01',
  circuit: proof.circuit,
  kind: 'loop',
  loop: 'L',
  from: 'end-to-end',
  ohm,
  phase: 'before',
  ...more,
});
const r1 = (some: readonly Reading[], phase: 'before' | 'after' = 'before') =>
  comparedReadings(proof, some, phase).find(({ name }) => name === 'r1');

describe('readings beside what is expected', () => {
  it('find the demo’s own readings within the band', () => {
    const compared = comparedReadings(proof, readings, 'before');
    const measured = compared.filter(({ measuredOhm }) => measuredOhm !== null);
    expect(measured.length).toBeGreaterThan(20);
    expect(measured.filter(({ fits }) => fits !== true)).toEqual([]);
  });

  it('fit up to the greater of 0.05 Ω and 5 %, and no further', () => {
    const expected = proof.ring?.r1Ohm ?? 0;
    expect(expected).toBeLessThan(1);
    expect(r1([ends(expected + 0.049)])?.fits).toBe(true);
    expect(r1([ends(expected - 0.051)])?.fits).toBe(false);
    expect(r1([ends(expected + 0.051)])?.fits).toBe(false);
  });

  it('are brought to 20 °C, leads taken off', () => {
    // 1 + 0.004 × 25 K is 1.1.
    expect(r1([ends(0.6, { conductorC: 45, nullOhm: 0.05 })])?.measuredOhm).toBeCloseTo(0.5, 9);
  });

  it('count by their phase, the last of several, and only of their circuit', () => {
    expect(r1([ends(0.5), ends(0.6)])?.measuredOhm).toBe(0.6);
    expect(r1([ends(0.5)], 'after')?.measuredOhm).toBeNull();
    expect(r1([ends(0.5, { circuit: 'another-ring' })])?.measuredOhm).toBeNull();
  });

  it('may have the loop as the tester shows it, or as it is reckoned from the crossed test', () => {
    const far = proof.points.find(({ point }) => point === 'a10-lounge');
    const zs = (ohm: number) =>
      comparedReadings(
        proof,
        [{ id: 'reading-02', kind: 'zs', at: 'a10-lounge', ohm, phase: 'before' }],
        'before',
      ).find(({ group, subject }) => group === 'zs' && subject === 'a10-lounge')?.fits;
    expect(zs(far?.zsServiceColdOhm ?? 0)).toBe(true);
    expect(zs(far?.zsColdOhm ?? 0)).toBe(true);
    expect(zs((far?.zsColdOhm ?? 0) + 0.06)).toBe(false);
  });
});

describe('the chart of readings', () => {
  it('has a row for everything that can be measured, and no lettering over another', () => {
    for (const widthMm of [73, 120]) {
      const scene = chart(readings, widthMm);
      expect(groupsOf(scene, 'readings').length).toBe(comparedReadings(proof, readings, 'before').length);
      expect(overlaps(scene)).toEqual([]);
      expect(outside(scene)).toEqual([]);
    }
  });

  it('says that the band is ours, and plainly that nothing was measured', () => {
    const told = (some: readonly Reading[], phase: 'before' | 'after') =>
      textsOf(chart(some, 200, phase)).map(({ text }) => text);
    expect(told(readings, 'before').some((text) => text.includes('The band is ours'))).toBe(true);
    expect(told([], 'before').some((text) => text.startsWith('Nothing was measured of this circuit'))).toBe(
      true,
    );
    expect(
      told(readings, 'after').some((text) => text.startsWith('Nothing was measured after the work')),
    ).toBe(true);
  });

  it('says how far off a reading is that does not fit', () => {
    const expected = proof.ring?.r1Ohm ?? 0;
    const texts = textsOf(chart([ends(expected + 0.3)], 120)).map(({ text }) => text);
    expect(texts).toContain('+0.30 off');
  });
});
