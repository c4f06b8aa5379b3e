import { describe, expect, it } from 'vitest';
import { bathSocketDistance } from '#engine/rules/bath-socket-distance.ts';
import type { Room } from '#model/building.ts';
import type { Point } from '#model/installation.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

// The twin plate at x = 3950 reaches from x = 3877; the bath ends at `bathX`.
const said = (bathX: number, point: Partial<Point> = {}) =>
  saidBy(
    bathSocketDistance,
    houseOf({
      points: [wantedOn(4000, 450, point)],
      fixtures: [fixtureOf('bath', [0, 0], [bathX, 700])],
    }),
  );
const bathroom: Partial<Room> = { use: 'bathroom' };

describe('socket-outlets and baths', () => {
  it('[PO6] passes at exactly 3 m, the stricter of the two figures', () => {
    expect(said(877)).toMatchObject([{ outcome: 'passes', messageId: 'far', actual: 3000 }]);
  });

  it('[PO6] shows the disagreement from 2.5 to 3 m', () => {
    expect(said(878)).toMatchObject([{ outcome: 'decide', messageId: 'disputed', actual: 2999 }]);
    expect(said(1377)).toMatchObject([{ outcome: 'decide', messageId: 'disputed', actual: 2500 }]);
  });

  it('[PO6] fails just nearer than 2.5 m, as the scheme’s doing or as found', () => {
    expect(said(1378)).toMatchObject([{ outcome: 'fails', actual: 2499, limit: 2500, origin: 'scheme' }]);
    expect(said(1378, { status: 'existing' })).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  it('[PO6] leaves shaver units alone', () => {
    expect(said(1378, { kind: 'shaver' })).toEqual([]);
  });

  it('[PO6] measures from 1.2 m round the head of a shower without a tray', () => {
    const shower = { ...fixtureOf('shower', [0, 0], [0, 0]), outline: [[177, 0]] as [number, number][] };
    const facts = houseOf({ points: [wantedOn(4000, 450)], fixtures: [shower] });
    expect(saidBy(bathSocketDistance, facts)).toMatchObject([{ outcome: 'decide', actual: 2500 }]);
  });

  it('[PO6] does not look through partitions', () => {
    const beyond = houseOf({
      points: [wantedOn(4000, 450)],
      fixtures: [fixtureOf('bath', [4200, 0], [4900, 1700])],
    });
    expect(saidBy(bathSocketDistance, beyond)).toEqual([]);
  });

  it('[PO6] is not proven in a bathroom whose bath nobody drew', () => {
    const facts = houseOf({ room: bathroom, points: [wantedOn(4000, 450)] });
    expect(saidBy(bathSocketDistance, facts)).toMatchObject([
      { outcome: 'not-proven', messageId: 'notDrawn' },
    ]);
  });
});
