import { describe, expect, it } from 'vitest';
import { heatedFloor } from '#engine/rules/heated-floor.ts';
import type { Floor } from '#model/building.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { acrossOf, houseOf } from './house-builder.ts';

const said = (floor: Partial<Floor>) =>
  saidBy(heatedFloor, houseOf({ floor, runs: [runOf('r', [acrossOf(-110)])] }));

describe('heated floors', () => {
  it('[RT9] leaves a run in a heated floor to be decided', () => {
    expect(said({ heated: true })).toMatchObject([{ outcome: 'decide', messageId: 'heated' }]);
  });

  it('[RT9] is silent on a floor told to be unheated', () => {
    expect(said({ heated: false, covering: 'tile' })).toEqual([]);
  });

  it('[RT9] is not proven under tiles where nobody asked', () => {
    expect(said({ covering: 'tile' })).toMatchObject([{ outcome: 'not-proven', messageId: 'unknown' }]);
  });
});
