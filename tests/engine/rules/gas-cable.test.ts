import { describe, expect, it } from 'vitest';
import { gasCable } from '#engine/rules/gas-cable.ts';
import { runOf, saidBy, segmentOf } from './facts-builder.ts';
import { fixtureOf, houseOf } from './house-builder.ts';

// The run goes along y = 0 at the floor; the pipe starts `y` away from it.
const said = (y: number, heights: { fromMm?: number; toMm?: number } = {}) =>
  saidBy(
    gasCable,
    houseOf({
      fixtures: [fixtureOf('gas-pipe', [200, y], [230, y + 30], heights)],
      runs: [runOf('r', [segmentOf()])],
    }),
  );

describe('cable and gas pipes', () => {
  it('[RT12] passes at exactly 25 mm', () => {
    expect(said(25)).toMatchObject([{ outcome: 'passes', actual: 25, limit: 25 }]);
  });

  it('[RT12] leaves less to be decided', () => {
    expect(said(24)).toMatchObject([{ outcome: 'decide', messageId: 'near', actual: 24 }]);
  });

  it('[RT12] counts the height where it is told, and takes any where it is not', () => {
    expect(said(0, { fromMm: 25, toMm: 900 })).toMatchObject([{ outcome: 'passes', actual: 25 }]);
    expect(said(0)).toMatchObject([{ outcome: 'decide', actual: 0 }]);
  });

  it('[RT12] is silent where no gas is drawn', () => {
    expect(saidBy(gasCable, houseOf({ runs: [runOf('r', [segmentOf()])] }))).toEqual([]);
  });
});
