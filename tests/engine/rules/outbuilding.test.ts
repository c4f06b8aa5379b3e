import { describe, expect, it } from 'vitest';
import { outbuilding } from '#engine/rules/outbuilding.ts';
import type { Room } from '#model/building.ts';
import { pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

const said = (room: Partial<Room>) => saidBy(outbuilding, houseOf({ room, points: [wantedOn(2000, 450)] }));

describe('outbuildings', () => {
  it('[SC2] are out of scope', () => {
    expect(said({ block: 'detached', name: 'Shed' })).toMatchObject([
      { outcome: 'decide', subjectId: 'p', actual: 'Shed' },
    ]);
  });

  it('[SC2] are not conservatories, nor the house', () => {
    expect(said({ block: 'conservatory' })).toEqual([]);
    expect(said({})).toEqual([]);
  });

  it('[SC2] cannot be told of a point without a place', () => {
    const facts = houseOf({ room: { block: 'detached' }, points: [pointOf('p', { status: 'wanted' })] });
    expect(saidBy(outbuilding, facts)).toEqual([]);
  });
});
