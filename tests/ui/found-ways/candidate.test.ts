import { describe, expect, it } from 'vitest';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { candidatesOf } from '../../../ui/found-ways/candidate.ts';
import { foundAmong } from './made-searcher.ts';

describe('a candidate', () => {
  it.each(demoNames)('is plain data that another thread can send, for %s', (name) => {
    const candidates = candidatesOf(foundAmong(demoEstimate(name)).schemes);
    expect(candidates.length).toBeGreaterThan(0);
    expect(structuredClone(candidates)).toEqual(candidates);
    expect(JSON.stringify(candidates).length).toBeLessThan(12_000 * candidates.length);
  });

  it.each(demoNames)('is efficient where none is as cheap and as little disturbing, of %s', (name) => {
    const candidates = candidatesOf(foundAmong(demoEstimate(name)).schemes);
    for (const one of candidates) {
      const beaten = candidates.some(
        (other) =>
          other.totals.grossPence <= one.totals.grossPence &&
          other.messPoints <= one.messPoints &&
          (other.totals.grossPence < one.totals.grossPence || other.messPoints < one.messPoints),
      );
      expect(one.efficient).toBe(!beaten);
    }
    expect(candidates[0]?.efficient || candidates.length === 0).toBe(true);
  });

  it.each(demoNames)('is called least disturbing where none disturbs less, and it alone, of %s', (name) => {
    const candidates = candidatesOf(foundAmong(demoEstimate(name)).schemes);
    const calmest = candidates.filter((one) => one.calmest);
    expect(calmest).toHaveLength(candidates.length > 1 ? 1 : 0);
    for (const { messPoints, totals } of calmest)
      for (const other of candidates) {
        expect(other.messPoints).toBeGreaterThanOrEqual(messPoints);
        if (other.messPoints === messPoints)
          expect(other.totals.grossPence).toBeGreaterThanOrEqual(totals.grossPence);
      }
    expect(calmest.every(({ efficient }) => efficient)).toBe(true);
    expect(candidatesOf(foundAmong(demoEstimate(name)).schemes.slice(0, 1)).some((one) => one.calmest)).toBe(
      false,
    );
  });

  it('counts the holes and the boards that its labour has', () => {
    const found = foundAmong(demoEstimate('saltglass-row')).schemes;
    const [one] = candidatesOf(found);
    const labour = found[0]?.estimate.labour ?? [];
    const done = (...tasks: readonly string[]): number =>
      labour.filter(({ task }) => tasks.includes(task)).reduce((sum, { quantity }) => sum + quantity, 0);
    expect(one?.holes).toBe(done('drill-joist', 'drill-stud', 'drill-wall'));
    expect(one?.boards).toBe(done('lift-board', 'chipboard-trap', 'open-fixed-floor'));
    expect(one?.boards).toBeGreaterThan(0);
  });

  it('says on its face that a fuse will operate with the loads named behind it', () => {
    const candidates = candidatesOf(foundAmong(demoEstimate('fernlow-close')).schemes);
    const fused = candidates.filter(({ scheme }) =>
      scheme.connections.some(({ kind }) => kind === 'fused-spur'),
    );
    expect(fused.length).toBeGreaterThan(0);
    // Kettle 3.0, toaster 1.4 and air fryer 1.7 kW: 26.52 A at 230 V.
    for (const { cautions } of fused) expect(cautions.join(' ')).toMatch(/26\.5\d? A/);
    const ring = candidates.find(({ scheme }) =>
      scheme.connections.some(({ kind }) => kind === 'ring-extension'),
    );
    expect(ring?.cautions).toEqual([]);
  });
});
