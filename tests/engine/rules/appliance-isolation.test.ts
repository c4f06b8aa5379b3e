import { describe, expect, it } from 'vitest';
import { applianceIsolation } from '#engine/rules/appliance-isolation.ts';
import type { Point } from '#model/installation.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

const said = (heightMm: number, worktopX: number, point: Partial<Point> = {}) =>
  saidBy(
    applianceIsolation,
    houseOf({
      points: [wantedOn(2000, heightMm, point)],
      fixtures: [fixtureOf('worktop', [worktopX, 0], [4000, 600])],
    }),
  );

describe('isolation of appliances', () => {
  it('[PO10] advises on an outlet low behind a worktop', () => {
    expect(said(849, 1000)).toMatchObject([{ outcome: 'advice', messageId: 'behind' }]);
  });

  it('[PO10] is silent above the worktop and 50 mm beside it', () => {
    expect(said(850, 1000)).toEqual([]);
    expect(said(450, 2073)).toEqual([]);
  });

  it('[PO10] advises where a fixed load has no switch', () => {
    const load = { watts: 150, use: 'boiler', fixed: true };
    const unit = (switched: boolean) => said(1100, 3000, { kind: 'fused-unit', load, unit: { switched } });
    expect(unit(false)).toMatchObject([{ outcome: 'advice', messageId: 'unswitched' }]);
    expect(unit(true)).toEqual([]);
  });
});
