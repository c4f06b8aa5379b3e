import { describe, expect, it } from 'vitest';
import { worktopClearance } from '#engine/rules/worktop-clearance.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

const said = (heightMm: number, tops: { toMm?: number } = { toMm: 900 }) =>
  saidBy(
    worktopClearance,
    houseOf({
      points: [wantedOn(2000, heightMm)],
      fixtures: [fixtureOf('worktop', [0, 0], [4000, 600], tops)],
    }),
  );

describe('outlets above worktops', () => {
  it('[PO3] passes with the underside at exactly 150 mm', () => {
    expect(said(1093)).toMatchObject([{ outcome: 'passes', actual: 150, limit: 150 }]);
  });

  it('[PO3] shows the disagreement on the datum between underside and centre', () => {
    expect(said(1092)).toMatchObject([{ outcome: 'advice', messageId: 'underside', actual: 149 }]);
    expect(said(1050)).toMatchObject([{ outcome: 'advice', messageId: 'underside' }]);
  });

  it('[PO3] leaves a centre nearer than 150 mm to be decided', () => {
    expect(said(1049)).toMatchObject([{ outcome: 'decide', messageId: 'near', actual: 149 }]);
  });

  it('[PO3] is not proven where nobody measured the worktop', () => {
    expect(said(1100, {})).toMatchObject([{ outcome: 'not-proven', messageId: 'topUnknown' }]);
  });

  it('[PO3] is silent below the worktop', () => {
    expect(said(450)).toEqual([]);
  });
});
