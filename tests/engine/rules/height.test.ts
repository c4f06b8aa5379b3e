import { describe, expect, it } from 'vitest';
import { height } from '#engine/rules/height.ts';
import type { Limits } from '#model/library.ts';
import { jobOf, pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

const said = (heightMm: number, limits: Limits = {}, nation: 'england' | 'scotland' = 'england') =>
  saidBy(
    height,
    houseOf({ points: [wantedOn(2000, heightMm)], limits, job: { site: { ...jobOf().site, nation } } }),
  );

describe('heights of outlets', () => {
  it('[PO1] passes at exactly 450 and 1200 mm', () => {
    expect(said(450)).toMatchObject([{ outcome: 'passes', actual: 450, limit: 450 }]);
    expect(said(1200)).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PO1] advises just beyond, since it is guidance for new dwellings', () => {
    expect(said(449)).toMatchObject([{ outcome: 'advice', messageId: 'low' }]);
    expect(said(1201)).toMatchObject([{ outcome: 'advice', messageId: 'high', limit: 1200 }]);
  });

  it('[PO1] takes the Scottish figure in Scotland and the firm’s own before either', () => {
    expect(said(400, {}, 'scotland')).toMatchObject([{ outcome: 'passes' }]);
    expect(said(300, { minimumHeightMm: 300 })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PO1] names the outlet of the room that it matches', () => {
    const beside = pointOf('r1', { place: { wall: 'n', side: 'left', alongMm: 2000, heightMm: 300 } });
    const facts = houseOf({ points: [wantedOn(2000, 350), beside] });
    expect(saidBy(height, facts)).toMatchObject([{ outcome: 'advice', messageId: 'matches' }]);
    const further = houseOf({ points: [wantedOn(2000, 351), beside] });
    expect(saidBy(height, further)).toMatchObject([{ messageId: 'low' }]);
  });

  it('[PO1] is silent where the place is not known', () => {
    expect(saidBy(height, houseOf({ points: [pointOf('p', { status: 'wanted' })] }))).toEqual([]);
  });
});
