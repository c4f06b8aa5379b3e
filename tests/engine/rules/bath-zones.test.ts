import { describe, expect, it } from 'vitest';
import { bathZones } from '#engine/rules/bath-zones.ts';
import type { PointKind } from '#model/installation.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

// A one-gang plate at x = 1950 reaches from x = 1907; the bath ends at `bathX`.
const said = (bathX: number, kind: PointKind = 'fused-unit', heightMm = 1100) =>
  saidBy(
    bathZones,
    houseOf({
      points: [wantedOn(2000, heightMm, { kind })],
      fixtures: [fixtureOf('bath', [0, 0], [bathX, 700])],
    }),
  );

describe('accessories and the zones of a bath', () => {
  it('[PO7] passes at exactly 0.6 m from zone 1 and fails just within', () => {
    expect(said(1307)).toMatchObject([{ outcome: 'passes', actual: 600, limit: 600 }]);
    expect(said(1308)).toMatchObject([{ outcome: 'fails', messageId: 'inZone', actual: 599 }]);
  });

  it('[PO7] ends the zones at 2.25 m', () => {
    expect(said(1308, 'fused-unit', 2250)).toMatchObject([{ outcome: 'fails' }]);
    expect(said(1308, 'fused-unit', 2251)).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PO7] lets a shaver unit be in zone 2 and not in zone 1', () => {
    expect(said(1800, 'shaver')).toMatchObject([{ outcome: 'passes' }]);
    expect(said(2000, 'shaver')).toMatchObject([{ outcome: 'fails', messageId: 'shaverInZone1' }]);
  });

  it('[PO7] leaves a flex outlet in the zones to be decided', () => {
    expect(said(1308, 'flex-outlet')).toMatchObject([{ outcome: 'decide', messageId: 'outletInZone' }]);
  });

  it('[PO7] is not proven in a bathroom whose bath nobody drew', () => {
    const facts = houseOf({
      room: { use: 'bathroom' },
      points: [wantedOn(2000, 1100, { kind: 'fused-unit' })],
    });
    expect(saidBy(bathZones, facts)).toMatchObject([{ outcome: 'not-proven' }]);
  });
});
