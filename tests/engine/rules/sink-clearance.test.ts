import { describe, expect, it } from 'vitest';
import { sinkClearance } from '#engine/rules/sink-clearance.ts';
import type { Limits } from '#model/library.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

// The twin plate at x = 1950 reaches to x = 2023.
const said = (sinkX: number, limits: Limits = {}) =>
  saidBy(
    sinkClearance,
    houseOf({
      points: [wantedOn(2000, 1100)],
      fixtures: [fixtureOf('sink', [sinkX, 0], [sinkX + 800, 500])],
      limits,
    }),
  );

describe('accessories and sinks', () => {
  it('[PO4] passes at exactly 300 mm and leaves less to be decided', () => {
    expect(said(2323)).toMatchObject([{ outcome: 'passes', actual: 300, limit: 300 }]);
    expect(said(2322)).toMatchObject([{ outcome: 'decide', messageId: 'near', actual: 299 }]);
  });

  it('[PO4] takes the firm’s own limit', () => {
    expect(said(2322, { sinkClearanceMm: 1000 })).toMatchObject([{ outcome: 'decide', limit: 1000 }]);
    expect(said(2322, { sinkClearanceMm: 200 })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PO4] is silent where no sink is drawn', () => {
    expect(saidBy(sinkClearance, houseOf({ points: [wantedOn(2000, 1100)] }))).toEqual([]);
  });
});
