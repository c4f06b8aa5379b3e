import { describe, expect, it } from 'vitest';
import { hobClearance } from '#engine/rules/hob-clearance.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

// The twin plate at x = 1950 reaches from 1877 to 2023.
const said = (hobX: number, heightMm = 1100) =>
  saidBy(
    hobClearance,
    houseOf({
      points: [wantedOn(2000, heightMm)],
      fixtures: [fixtureOf('hob', [hobX, 0], [hobX + 600, 500])],
    }),
  );

describe('accessories and hobs', () => {
  it('[PO5] passes at exactly 300 mm to the side and leaves less to be decided', () => {
    expect(said(2323)).toMatchObject([{ outcome: 'passes', actual: 300 }]);
    expect(said(2322)).toMatchObject([{ outcome: 'decide', messageId: 'near', actual: 299 }]);
  });

  it('[PO5] leaves one above or behind the hob to be decided', () => {
    expect(said(1700)).toMatchObject([{ outcome: 'decide', messageId: 'behind' }]);
    const standingOff = houseOf({
      points: [wantedOn(2000, 1100)],
      fixtures: [fixtureOf('hob', [1700, 60], [2300, 560])],
    });
    expect(saidBy(hobClearance, standingOff)).toMatchObject([{ messageId: 'behind' }]);
  });

  it('[PO5] is silent below the hob, where its own supply is', () => {
    expect(said(1700, 500)).toEqual([]);
  });
});
