import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { estimateOf } from '../../demo-jobs/demo-estimates.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();

describe('a search for fourteen points', () => {
  const job = randomHouse(3, { found: 5, wanted: 14 });
  const found = findSchemes(job, library);

  it('finds a scheme that joins every one of them and passes when it is estimated from scratch', () => {
    const [best] = found.schemes;
    expect(best).toBeDefined();
    const again = estimateOf({ ...job, schemes: best ? [{ ...best.scheme, id: 'again' }] : [] });
    expect(again.schemes[0]?.complies).not.toBe('no');
    expect(again.schemes[0]?.totals).toEqual(best?.estimate.totals);
  });

  it('says what it may lie above the cheapest, and calls it the cheapest only where it is its bound', () => {
    const least = Math.min(...found.schemes.map(({ worksPence }) => worksPence));
    expect(found.boundPence).toBeGreaterThan(0);
    expect(found.boundPence).toBeLessThanOrEqual(least);
    expect(found.gap).toBeCloseTo(least / found.boundPence - 1, 9);
    expect(found.optimal).toBe(least === found.boundPence);
    expect(found.gap).toBeLessThan(0.05);
  });

  it('says the same of the least disturbing, and of one in between', () => {
    const { disturbance, schemes } = found;
    const points = schemes.map(({ worksPoints }) => worksPoints);
    const least = schemes.find(({ scheme }) => scheme.id === disturbance?.schemeId);
    expect(least?.worksPoints).toBe(Math.min(...points));
    expect(disturbance?.boundPoints).toBeGreaterThan(0);
    expect(disturbance?.boundPoints).toBeLessThanOrEqual(least?.worksPoints ?? 0);
    expect(disturbance?.optimal).toBe(least?.worksPoints === disturbance?.boundPoints);
    // Many choices disturb alike: their bound lies lower than that of money.
    expect(disturbance?.gap).toBeLessThan(0.15);
    for (const { estimate } of schemes) expect(estimate.complies, estimate.name).not.toBe('no');
  });

  it('says in plain words which sets it left out', () => {
    expect(found.leftOut.join()).toContain('more than 4 of them at one place');
    const branch = found.bestOfKind.find(({ kind }) => kind === 'fused-branch');
    expect(branch?.reason).toContain('no more than 4');
    // With sets left out nothing that has a place at all is called impossible.
    expect(branch?.why).toBe('not-searched');
    for (const { why, reason, schemeId } of found.bestOfKind) {
      expect(schemeId === null).toBe(why !== null);
      if (why === 'not-searched') expect(reason).toContain('no more than 4 are joined at one place');
      expect(why).not.toBe('given-up');
    }
  });
});
