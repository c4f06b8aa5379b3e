import { describe, expect, it } from 'vitest';
import { deviceItem } from '#engine/takeoff/device-item.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { paperDemands } from '#engine/takeoff/paper-lines.ts';
import { protectionDemands } from '#engine/takeoff/protection-lines.ts';
import { remedyCause } from '#engine/takeoff/remedy-cause.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { schemeOf } from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const radial: Connection = {
  id: 'c',
  kind: 'radial',
  board: 'board',
  device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 20 },
  feeds: [],
};

function withRemedies(...remedies: readonly Remedy[]) {
  return workedOf({ scheme: schemeOf({ remedies: [...remedies] }) });
}

describe('protection', () => {
  it.each([
    [{ standard: 'BS-EN-60898', curve: 'B', ratingA: 32 }, 'mcb-b32'],
    [{ standard: 'BS-EN-60898', curve: 'C', ratingA: 20 }, 'mcb-c20'],
    [{ standard: 'BS-EN-61009', curve: 'B', ratingA: 16 }, 'rcbo-b16-30-a'],
    [{ standard: 'BS-EN-61009', ratingA: 32, rcd: { type: 'F', mA: 30 } }, 'rcbo-b32-30-f'],
    [{ standard: 'BS-3036', ratingA: 30 }, 'mcb-b30'],
  ] as const)('%o is %s', (device, item) => {
    expect(deviceItem(device)).toBe(item);
  });

  it('changes the found device for an RCBO of its curve and rating', () => {
    expect(
      measuredByItem(protectionDemands(withRemedies({ kind: 'rcbo', at: 'ring' }), usualCounts)),
    ).toEqual({
      'rcbo-b32-30-a': 1,
    });
  });

  it('lowers the device to 20 A unless another is asked for', () => {
    expect(
      measuredByItem(protectionDemands(withRemedies({ kind: 'lower-device', at: 'ring' }), usualCounts)),
    ).toEqual({
      'mcb-b20': 1,
    });
    const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 16 } as const;
    expect(
      measuredByItem(
        protectionDemands(withRemedies({ kind: 'lower-device', at: 'ring', device }), usualCounts),
      ),
    ).toEqual({ 'mcb-b16': 1 });
  });

  it('buys one device for a circuit, however many remedies are about it', () => {
    const worked = withRemedies({ kind: 'lower-device', at: 'ring' }, { kind: 'rcbo', at: 'ring' });
    expect(measuredByItem(protectionDemands(worked, usualCounts))).toEqual({ 'rcbo-b20-30-a': 1 });
    expect(linesByItem(worked).get('rcbo-b20-30-a')?.causes).toEqual([
      'remedy/lower-device/ring',
      'remedy/rcbo/ring',
    ]);
  });

  it('keeps the residual current part of an RCBO that is lowered', () => {
    const device = { standard: 'BS-EN-61009', curve: 'C', ratingA: 32, rcd: { type: 'A', mA: 30 } } as const;
    const circuits = [{ id: 'ring', name: 'Ring', board: 'board', use: 'sockets' as const, device }];
    const scheme = schemeOf({ remedies: [{ kind: 'lower-device', at: 'ring' }] });
    const worked = workedOf({ scheme, job: { circuits } });
    expect(measuredByItem(protectionDemands(worked, usualCounts))).toEqual({ 'rcbo-c20-30-a': 1 });
    expect(measuredByItem(paperDemands(worked, usualCounts))['notice-rcd']).toBe(1);
  });

  it('takes a ring’s usual device where nobody looked at the one found', () => {
    const circuits = [{ id: 'ring', name: 'Ring', board: 'board', use: 'sockets' as const }];
    const scheme = schemeOf({ remedies: [{ kind: 'rcbo', at: 'ring' }] });
    expect(measuredByItem(protectionDemands(workedOf({ scheme, job: { circuits } }), usualCounts))).toEqual({
      'rcbo-b32-30-a': 1,
    });
    expect(
      measuredByItem(
        protectionDemands(workedOf({ scheme: schemeOf({ remedies: [{ kind: 'rcbo' }] }) }), usualCounts),
      ),
    ).toEqual({ 'rcbo-b32-30-a': 1 });
  });

  it('puts a breaker into an enclosure only where it is another than the one found', () => {
    const enclosure = (ratingA: number): Remedy => ({
      kind: 'rcd-enclosure',
      at: 'ring',
      device: { standard: 'BS-EN-61009', curve: 'B', ratingA },
    });
    const items = (ratingA: number) =>
      Object.keys(measuredByItem(protectionDemands(withRemedies(enclosure(ratingA)), usualCounts)));
    expect(items(32)).not.toContain('mcb-b32');
    expect(items(20)).toContain('mcb-b20');
  });

  it('counts an RCD in its own enclosure with tails', () => {
    expect(
      measuredByItem(protectionDemands(withRemedies({ kind: 'rcd-enclosure', at: 'ring' }), usualCounts)),
    ).toEqual({
      'enclosure-2-module': 1,
      'rcd-63-30-a': 1,
      'tails-16': 1,
    });
  });

  it('ranges the length of a bond, which nobody has measured', () => {
    const line = linesByItem(withRemedies({ kind: 'bond-upgrade', at: 'water' })).get('earth-single-10');
    expect(line?.lowQuantity).toBeLessThan(line?.quantity ?? 0);
    expect(line?.highQuantity).toBeGreaterThan(line?.quantity ?? 0);
    expect(line?.causes).toEqual(['remedy/bond-upgrade/water']);
  });

  it.each([
    // Source: BS 7671 Table 54.8 for PME; else 544.1.1, half the earthing conductor, up to the next size sold.
    [{ earthing: 'TN-C-S', earthingMm2: 16 }, 'earth-single-10'],
    [{ earthing: 'TN-S', earthingMm2: 10 }, 'earth-single-6'],
    [{ earthing: 'TN-S', earthingMm2: 16 }, 'earth-single-10'],
    [{ earthing: 'TN-S', earthingMm2: 25 }, 'earth-single-16'],
    [{ earthing: 'TT', earthingMm2: 70 }, 'earth-single-25'],
    [{ earthing: 'TN-S' }, 'earth-single-10'],
  ] as const)('renews a bond in the size that is asked for: %j', (supply, item) => {
    const scheme = schemeOf({ remedies: [{ kind: 'bond-upgrade', at: 'water' }] });
    const worked = workedOf({ scheme });
    const { earthing: _, earthingMm2: __, ...rest } = worked.job.supply;
    const demands = protectionDemands(
      { ...worked, job: { ...worked.job, supply: { ...rest, ...supply } } },
      usualCounts,
    );
    expect(demands.map((demand) => demand.item)).toEqual([item, 'bonding-clamp']);
  });

  it('gives a new circuit its device', () => {
    const worked = workedOf({ scheme: schemeOf({ connections: [radial] }) });
    expect(measuredByItem(protectionDemands(worked, usualCounts))).toEqual({ 'rcbo-b20-30-a': 1 });
  });

  it('names a remedy without a place', () => {
    expect(remedyCause({ kind: 'new-board' })).toBe('remedy/new-board');
  });

  it('asks nothing of the house as found', () => {
    expect(protectionDemands(workedOf({ scheme: null }), usualCounts)).toEqual([]);
    expect(paperDemands(workedOf({ scheme: null }), usualCounts)).toEqual([]);
  });
});

describe('papers', () => {
  it('are a minor works certificate for each altered circuit', () => {
    expect(measuredByItem(paperDemands(withRemedies(), usualCounts))).toEqual({
      'certificate-minor-works': 1,
      'circuit-chart': 1,
    });
  });

  it('are an installation certificate where a circuit is new', () => {
    const worked = workedOf({ scheme: schemeOf({ connections: [radial] }) });
    expect(measuredByItem(paperDemands(worked, usualCounts))).toMatchObject({
      'certificate-installation': 1,
      'notice-rcd': 1,
    });
  });

  it('leave the two-colour notice out at the low end', () => {
    const circuits = [
      { id: 'ring', name: 'Ring', board: 'board', use: 'sockets' as const, colours: 'mixed' as const },
    ];
    const line = linesByItem(workedOf({ job: { circuits } })).get('notice-mixed-colours');
    expect(line).toMatchObject({ quantity: 1, lowQuantity: 0, causes: ['ring'] });
  });

  it('tell of an RCD that is added', () => {
    expect(
      measuredByItem(paperDemands(withRemedies({ kind: 'rcbo', at: 'ring' }), usualCounts))['notice-rcd'],
    ).toBe(1);
  });
});
