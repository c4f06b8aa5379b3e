import { describe, expect, it } from 'vitest';
import { bathroomRcd } from '#engine/rules/bathroom-rcd.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

const points = [wantedOn(4000, 450)];

describe('circuits of bathrooms', () => {
  it('[PO8] advises wherever a bath or shower is in the room, drawn or only named', () => {
    const drawn = houseOf({ points, fixtures: [fixtureOf('bath', [0, 0], [700, 700])] });
    expect(saidBy(bathroomRcd, drawn)).toMatchObject([{ outcome: 'advice', limit: 30, unit: 'mA' }]);
    expect(saidBy(bathroomRcd, houseOf({ points, room: { use: 'bathroom' } }))).toHaveLength(1);
  });

  it('[PO8] is silent in other rooms', () => {
    expect(saidBy(bathroomRcd, houseOf({ points }))).toEqual([]);
  });
});
