import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { MeasuredCheck, MeasuredCircuit } from '#engine/work/tests/measured-circuit.ts';
import { measuredProofs } from '#engine/work/tests/measured-proof.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { demoEstimate, demoNames, schemeOf } from '../../demo-jobs/demo-estimates.ts';
import { type Answer, asExpected, estimatedWith, readingsFor, withReadings } from './filled.ts';

const { limits } = demoLibrary();

/** The proofs of a scheme repeated once its sheet is answered. */
function measuredOf({ worked, proof }: SchemeEstimate, answer: Answer): readonly MeasuredCircuit[] {
  const after = withReadings(worked, readingsFor(testSheet({ worked, proof }), answer));
  return measuredProofs({ worked: after, proof, limits, sheet: testSheet({ worked: after, proof }) });
}

const outcomes = (checks: readonly MeasuredCheck[]): Readonly<Record<string, string>> =>
  Object.fromEntries(checks.map(({ name, outcome }) => [name, outcome]));

const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
/** The one circuit of the terrace, answered as expected but for some tests. */
function terrace(otherwise: Answer): MeasuredCircuit {
  const [circuit] = measuredOf(scheme, (test) => otherwise(test) ?? asExpected(test));
  if (circuit === undefined) throw new Error('The terrace has a ring.');
  return circuit;
}

describe('the proof with measured values', () => {
  it.each(demoNames)('of %s tells nothing while nothing is read', (name) => {
    for (const each of demoEstimate(name).schemes)
      for (const { checks, points, contradicted } of measuredOf(each, () => null)) {
        for (const { outcome } of checks) expect(outcome).toBe('not-told');
        expect(points).toEqual([]);
        expect(contradicted).toEqual([]);
      }
  });

  it.each(['saltglass-row', 'fernlow-close', 'quarrel-court'] as const)(
    'of %s is the proof itself where everything reads as expected',
    (name) => {
      for (const each of demoEstimate(name).schemes)
        for (const circuit of measuredOf(each, asExpected)) {
          const own = each.proof.find((one) => one.circuit === circuit.circuitId);
          expect(circuit.notRead).toBe(0);
          expect(circuit.contradicted).toEqual([]);
          for (const { name: check, outcome } of circuit.checks) {
            const isOver =
              check === 'drop' && (own?.points ?? []).some(({ dropV }) => (dropV ?? 0) > circuit.dropLimitV);
            expect(outcome, `${each.id} ${check}`).toBe(isOver ? 'fails' : 'holds');
          }
          expect(circuit.points).toHaveLength(own?.points.length ?? 0);
          for (const { point, dropV, zsReckonedOhm } of circuit.points) {
            const reckoned = own?.points.find((one) => one.point === point);
            const warm = own?.expected.points.find((one) => one.point === point);
            expect(dropV, point).toBeCloseTo(reckoned?.dropV ?? 0, 6);
            expect(zsReckonedOhm, point).toBeCloseTo(warm?.zsOhm ?? 0, 6);
          }
        }
    },
  );

  it('fails a ring of which one conductor does not close, and tells no volt drop of it', () => {
    const { checks } = terrace(({ mark }) => (mark === 'rn' ? 99 : null));
    expect(outcomes(checks)).toMatchObject({
      'ring-closes': 'fails',
      'ring-alike': 'look',
      drop: 'not-told',
    });
  });

  it('looks at line and neutral more than 0.05 Ω apart, and at an earth that its size does not make', () => {
    const r1 = scheme.proof[0]?.expected.ring?.r1Ohm ?? 0;
    const apart = (ohm: number) =>
      outcomes(terrace(({ mark }) => (mark === 'rn' ? r1 + ohm : null)).checks)['ring-alike'];
    expect(apart(0.05)).toBe('holds');
    expect(apart(0.051)).toBe('look');
    const r2 = scheme.proof[0]?.expected.ring?.r2Ohm ?? 0;
    const ratio = (times: number) =>
      outcomes(terrace(({ mark }) => (mark === 'r2' ? r2 * times : null)).checks)['earth-ratio'];
    expect(ratio(1.09)).toBe('holds');
    expect(ratio(1.11)).toBe('look');
  });

  it('fails the loop by R1 + R2 read, even where the loop tester shows less', () => {
    const source = scheme.proof[0]?.source.ohm ?? 0;
    const limit = scheme.proof[0]?.limit.coldOhm ?? 0;
    const far = (ohm: number) =>
      terrace(({ group, mark }) => (group === 'crossed-le' && mark === 'W1' ? ohm : null));
    const over = far(limit - source + 0.001);
    expect(outcomes(over.checks).loop).toBe('fails');
    expect(over.points.find(({ mark }) => mark === 'W1')?.outcome).toBe('fails');
    expect(over.contradicted.map(({ mark }) => mark)).toEqual(['W1']);
    expect(outcomes(far(limit - source).checks).loop).toBe('holds');
  });

  it('looks at a tester that shows more than Ze and R1 + R2', () => {
    const reckoned = terrace(() => null).points.find(({ mark }) => mark === 'W1')?.zsReckonedOhm ?? 0;
    const shown = (ohm: number) =>
      terrace(({ group, mark }) => (group === 'zs' && mark === 'W1' ? ohm : null)).points.find(
        ({ mark }) => mark === 'W1',
      )?.outcome;
    expect(shown(reckoned + 0.04)).toBe('holds');
    expect(shown(reckoned + 0.06)).toBe('look');
  });

  it('has the least insulation, the longest time, and the point that is wrong', () => {
    const { checks } = terrace(({ group, mark }) => {
      if (group === 'insulation') return mark === 'line to neutral' ? 2 : 0.4;
      if (group === 'rcd') return 320;
      return group === 'polarity' ? mark !== 'W2' : null;
    });
    const of = (name: string) => checks.find((check) => check.name === name);
    expect(of('insulation')).toMatchObject({ outcome: 'fails', actual: 0.4, limit: 1 });
    expect(of('rcd')).toMatchObject({ outcome: 'fails', actual: 320, limit: 300 });
    expect(of('polarity')).toMatchObject({ outcome: 'fails', where: 'W2' });
  });
});

describe('readings entered on the sheet', () => {
  it('move no price, no limit, no expected figure and no check', () => {
    const wild: Answer = ({ unit }) => (unit === null ? false : 99);
    const readings = readingsFor(testSheet(scheme), wild);
    expect(readings.length).toBeGreaterThan(40);
    const before = demoEstimate('saltglass-row');
    const after = estimatedWith(scheme.worked, readings);
    for (const [i, one] of after.schemes.entries()) {
      const was = before.schemes[i];
      expect(one.totals).toEqual(was?.totals);
      expect(one.range).toEqual(was?.range);
      expect(one.proof).toEqual(was?.proof);
      expect(one.findings).toEqual(was?.findings);
    }
  });
});
