import { describe, expect, it } from 'vitest';
import { heatSource } from '#engine/rules/heat-source.ts';
import type { Fixture } from '#model/building.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

const said = (kind: Fixture['kind'], x: number) =>
  saidBy(
    heatSource,
    houseOf({ points: [wantedOn(2000, 450)], fixtures: [fixtureOf(kind, [x, 0], [x + 900, 100])] }),
  );

describe('accessories and heat', () => {
  it('[PO11] is silent at exactly 100 mm from a radiator and advises just nearer', () => {
    expect(said('radiator', 2123)).toEqual([]);
    expect(said('radiator', 2122)).toMatchObject([{ outcome: 'advice', actual: 99, limit: 100 }]);
  });

  it('[PO11] lets a boiler’s unit be beside it, not behind it', () => {
    expect(said('boiler', 2030)).toEqual([]);
    expect(said('boiler', 1900)).toMatchObject([{ outcome: 'advice', actual: 0 }]);
  });
});
