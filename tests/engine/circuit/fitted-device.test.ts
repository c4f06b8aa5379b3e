import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittedDevice, isRcbo } from '#engine/circuit/fitted-device.ts';
import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';

const breaker = (ratingA: number, curve: Device['curve'] = 'B'): Device => ({
  standard: 'BS-EN-60898',
  curve,
  ratingA,
});
const rcbo = (ratingA: number, curve: Device['curve'] = 'B'): Device => ({
  standard: 'BS-EN-61009',
  curve,
  ratingA,
  rcd: { type: 'A', mA: 30 },
});

describe('the device that a remedy fits', () => {
  const cases: [string, Remedy, Device | null, Device | null][] = [
    ['an RCBO of the rating and curve found', { kind: 'rcbo' }, breaker(20, 'C'), rcbo(20, 'C')],
    // BS 7671 433.1.204 names 30 A beside 32 A; that the one takes the other's place is common practice, no source.
    [
      'an RCBO of today’s rating for an old fuse',
      { kind: 'rcbo' },
      { standard: 'BS-3036', ratingA: 30 },
      rcbo(32),
    ],
    [
      'an RCBO of curve B for an old breaker',
      { kind: 'rcbo' },
      { standard: 'BS-3871', curve: '2', ratingA: 15 },
      rcbo(16),
    ],
    ['no RCBO whose rating nobody can tell', { kind: 'rcbo' }, null, null],
    ['the RCBO named', { kind: 'rcbo', device: breaker(40) }, breaker(32), rcbo(40)],
    [
      'its own residual current part',
      { kind: 'rcbo', device: { ...rcbo(32), rcd: { type: 'F', mA: 30 } } },
      null,
      { ...rcbo(32), rcd: { type: 'F', mA: 30 } },
    ],
    ['20 A for a larger one', { kind: 'lower-device' }, breaker(32, 'C'), breaker(20, 'C')],
    ['20 A for one that nobody knows', { kind: 'lower-device' }, null, breaker(20)],
    ['16 A for 20 A', { kind: 'lower-device' }, breaker(20), breaker(16)],
    ['the same for the smallest', { kind: 'lower-device' }, breaker(6), breaker(6)],
    [
      'an RCBO for an RCBO',
      { kind: 'lower-device' },
      { ...rcbo(32), rcd: { type: 'AC', mA: 100 } },
      rcbo(20),
    ],
    ['the smaller one named', { kind: 'lower-device', device: breaker(16) }, breaker(32), breaker(16)],
    ['the one found, with an enclosure before it', { kind: 'rcd-enclosure' }, breaker(32), breaker(32)],
    ['the one named for an enclosure', { kind: 'rcd-enclosure', device: rcbo(32) }, breaker(40), rcbo(32)],
    ['an RCBO in a new board', { kind: 'new-board' }, { standard: 'BS-1361', ratingA: 30 }, rcbo(32)],
    ['the one named for a new board', { kind: 'new-board', device: breaker(32) }, breaker(40), breaker(32)],
    ['the one found, where the remedy is about something else', { kind: 're-box' }, breaker(32), breaker(32)],
  ];
  it.each(cases)('is %s', (_, remedy, current, fitted) => {
    expect(fittedDevice(remedy, current)).toEqual(fitted);
  });

  it('is the same object where nothing is exchanged', () => {
    const found = breaker(32);
    for (const kind of ['rcd-enclosure', 'rcd-unit', 'bond-upgrade'] as const)
      expect(fittedDevice({ kind }, found)).toBe(found);
  });

  const device = fc.record({
    standard: fc.constantFrom<Device['standard']>('BS-EN-60898', 'BS-EN-61009', 'BS-3036', 'BS-3871'),
    ratingA: fc.constantFrom(5, 6, 10, 15, 16, 20, 25, 30, 32, 40, 45),
    curve: fc.constantFrom<NonNullable<Device['curve']>>('B', 'C', 'D', '1', '2', '3'),
  });

  it('is never larger when it is lowered, and an RCBO when one is asked for, whatever the order', () => {
    fc.assert(
      fc.property(device, (found) => {
        const lowered = fittedDevice({ kind: 'lower-device' }, found);
        expect(lowered?.ratingA).toBeLessThanOrEqual(found.ratingA);
        expect(lowered?.ratingA).toBeLessThanOrEqual(20);
        const both = [lowered, fittedDevice({ kind: 'rcbo' }, found)];
        const [thenRcbo, thenLowered] = [
          fittedDevice({ kind: 'rcbo' }, both[0] ?? null),
          fittedDevice({ kind: 'lower-device' }, both[1] ?? null),
        ];
        for (const each of [thenRcbo, thenLowered]) expect(each !== null && isRcbo(each)).toBe(true);
      }),
      { seed: 11 },
    );
  });
});
