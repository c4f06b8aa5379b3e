import { describe, expect, it } from 'vitest';
import { partyWallChase } from '#engine/rules/party-wall-chase.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { houseOf, uprightOf } from './house-builder.ts';

const runs = [runOf('r', [uprightOf(1000, [0, 450])])];

describe('chases in party walls', () => {
  it('[RT8] leaves them to be decided', () => {
    expect(saidBy(partyWallChase, houseOf({ wall: { party: true }, runs }))).toMatchObject([
      { outcome: 'decide', messageId: 'chased', subjectId: 'r' },
    ]);
  });

  it('[RT8] is silent on other walls and on walls nobody called party', () => {
    expect(saidBy(partyWallChase, houseOf({ wall: { party: false }, runs }))).toEqual([]);
    expect(saidBy(partyWallChase, houseOf({ runs }))).toEqual([]);
  });
});
