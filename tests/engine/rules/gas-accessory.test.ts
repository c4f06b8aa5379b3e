import { describe, expect, it } from 'vitest';
import { gasAccessory } from '#engine/rules/gas-accessory.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

// The twin plate at x = 1950, 450 mm up, reaches to x = 2023 and from 407 to 493 mm.
const said = (pipeX: number, heights: { fromMm?: number; toMm?: number } = { fromMm: 0, toMm: 2400 }) =>
  saidBy(
    gasAccessory,
    houseOf({
      points: [wantedOn(2000, 450)],
      fixtures: [fixtureOf('gas-pipe', [pipeX, 0], [pipeX + 22, 22], heights)],
    }),
  );

describe('accessories and gas', () => {
  it('[PO12] passes at exactly 150 mm and fails just nearer', () => {
    expect(said(2173)).toMatchObject([{ outcome: 'passes', actual: 150, limit: 150 }]);
    expect(said(2172)).toMatchObject([{ outcome: 'fails', messageId: 'near', actual: 149 }]);
  });

  it('[PO12] counts the height', () => {
    expect(said(1950, { fromMm: 643, toMm: 900 })).toMatchObject([{ outcome: 'passes', actual: 150 }]);
    expect(said(1950, { fromMm: 642, toMm: 900 })).toMatchObject([{ outcome: 'fails', actual: 149 }]);
  });

  it('[PO12] is not proven where the pipe’s height is not told', () => {
    expect(said(2172, {})).toMatchObject([{ outcome: 'not-proven', messageId: 'heightUnknown' }]);
    expect(said(2173, {})).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PO12] is silent where no gas is drawn', () => {
    expect(saidBy(gasAccessory, houseOf({ points: [wantedOn(2000, 450)] }))).toEqual([]);
  });
});
