import { describe, expect, it } from 'vitest';
import { cornerDistance } from '#engine/rules/corner-distance.ts';
import { jobOf, pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

// The inside corner is 50 mm along the wall's centre line.
const said = (alongMm: number, nation: 'england' | 'scotland' = 'england') =>
  saidBy(
    cornerDistance,
    houseOf({ points: [wantedOn(alongMm, 450)], job: { site: { ...jobOf().site, nation } } }),
  );

describe('distance from corners', () => {
  it('[PO2] passes at exactly 300 mm and advises just nearer', () => {
    expect(said(350)).toMatchObject([{ outcome: 'passes', actual: 300, limit: 300 }]);
    expect(said(349)).toMatchObject([{ outcome: 'advice', messageId: 'near', actual: 299 }]);
  });

  it('[PO2] takes 350 mm in Scotland', () => {
    expect(said(400, 'scotland')).toMatchObject([{ outcome: 'passes', limit: 350 }]);
    expect(said(399, 'scotland')).toMatchObject([{ outcome: 'advice' }]);
  });

  it('[PO2] is silent on a point that stands free', () => {
    const free = pointOf('p', { status: 'wanted', place: { storey: 'gf', at: [100, 100], heightMm: 450 } });
    expect(saidBy(cornerDistance, houseOf({ points: [free] }))).toEqual([]);
  });
});
