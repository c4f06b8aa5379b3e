import { describe, expect, it } from 'vitest';
import { crossedOhm } from '#engine/proof/expected-readings.ts';
import { loopLimit } from '#engine/proof/loop-limit.ts';
import { bandAbout, fitsBand } from '#engine/proof/reading-band.ts';
import { voltDropPerMetre } from '#engine/proof/volt-drop-per-metre.ts';
import { outcomeAt } from '#engine/work/tests/measured-proof.ts';

/** The loop of a B32 breaker on warm conductors, and what a cold one is held to. */
const b32Ohm =
  loopLimit({ standard: 'BS-EN-60898', ratingA: 32, curve: 'B' } as Parameters<typeof loopLimit>[0])
    ?.maximumOhm ?? 0;

describe('published rings proved with what was measured of them', () => {
  it('Ze 0.56, r1 1.09 and r2 1.82 Ω: the loop reckoned is 1.29 Ω, 1.26 Ω was measured, and a B32 is not served', () => {
    // https://community.screwfix.com/threads/using-a-temporarily-long-ring-and-high-zs.245934/: its limit is 1.1 Ω.
    const r1r2Ohm = crossedOhm(0.5 * 1.09, 1.09, 0.5 * 1.82, 1.82);
    const zsReckonedOhm = 0.56 + r1r2Ohm;
    expect(zsReckonedOhm).toBeCloseTo(1.29, 2);
    const zsLimitOhm = b32Ohm * 0.8;
    expect(zsLimitOhm).toBeCloseTo(1.1, 1);
    const held = { zsReadOhm: 1.26, zsReckonedOhm, zsLimitOhm, dropV: null };
    expect(outcomeAt(held, 11.5)).toBe('fails');
    // By the limit for warm conductors, 1.37 Ω, it would be; and the two loops do not contradict each other.
    expect(outcomeAt({ ...held, zsLimitOhm: b32Ohm }, 11.5)).toBe('holds');
    expect(fitsBand(bandAbout(zsReckonedOhm), 1.26)).toBe(true);
  });

  it('r1 1.15 and r2 1.80 Ω: 0.69 Ω measured crossed is within our band of the 0.7017 to 0.7375 Ω of its points', () => {
    // https://electriciansforums.net/threads/working-out-the-length-of-a-ring-finals-circuit.212811/post-1861540
    const at = (x: number) => crossedOhm(x * 1.15, 1.15, x * 1.8, 1.8);
    expect(fitsBand(bandAbout(at(0), at(0.5)), 0.69)).toBe(true);
    // The mistake named there, a quarter of the length, would be a ring of 35 m: r1 0.26, r2 0.42.
    expect(fitsBand(bandAbout(crossedOhm(0.13, 0.26, 0.21, 0.42)), 0.69)).toBe(false);
  });

  it('a ring of 21.7 V by the tables fails its volt drop, whatever its loop', () => {
    // Same page: 18 mV/A/m, 151 m, 32 A in the middle, a quarter: 21.7 V, over 5 % of 230 V.
    const millivolt = voltDropPerMetre({ type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 })?.millivoltPerAM ?? 0;
    const dropV = (millivolt / 1000) * 151 * 32 * 0.25;
    expect(dropV).toBeCloseTo(21.7, 1);
    const held = { zsReadOhm: 0.9, zsReckonedOhm: 0.93, zsLimitOhm: b32Ohm * 0.8 };
    expect(outcomeAt({ ...held, dropV }, 11.5)).toBe('fails');
    expect(outcomeAt({ ...held, dropV: 11.5 }, 11.5)).toBe('holds');
  });
});
