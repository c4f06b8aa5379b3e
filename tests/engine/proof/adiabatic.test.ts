import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  adiabaticAreaMm2,
  letThroughCeilingA2s,
  protectiveK,
  withstandA2s,
} from '#engine/proof/adiabatic.ts';
import type { Device } from '#model/installation.ts';

describe('the adiabatic equation', () => {
  it('gives the area that withstands just that fault', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 10_000, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.constantFrom(protectiveK('in-cable'), protectiveK('separate')),
        (currentA, seconds, k) => {
          const areaMm2 = adiabaticAreaMm2({ currentA, seconds, k });
          expect(withstandA2s(areaMm2, k) / (currentA ** 2 * seconds)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('lets a conductor by itself take more than one inside a cable', () => {
    expect([protectiveK('in-cable'), protectiveK('separate')]).toEqual([115, 143]);
  });
});

describe('the ceiling of a let-through', () => {
  const c10: Device = { standard: 'BS-EN-60898', curve: 'C', ratingA: 16, breakingKA: 10 };

  it('is held up to 16 A at 10 kA', () => {
    expect(letThroughCeilingA2s(c10, 3)).toBe(84_000);
    expect(letThroughCeilingA2s({ ...c10, ratingA: 6 }, 2)).toBe(290_000);
  });

  it.each<[string, Device]>([
    ['above 16 A', { ...c10, ratingA: 20 }],
    ['at another capacity', { ...c10, breakingKA: 6 }],
    ['where nobody read the capacity', { standard: 'BS-EN-60898', curve: 'C', ratingA: 16 }],
    ['for curve D', { ...c10, curve: 'D' }],
    ['for a fuse', { standard: 'BS-3036', ratingA: 15, breakingKA: 10 }],
  ])('is not told %s', (_, device) => {
    expect(letThroughCeilingA2s(device, 3)).toBeNull();
  });
});
