import { describe, expect, it } from 'vitest';
import { fireStopping } from '#engine/rules/fire-stopping.ts';
import type { Site, Wall } from '#model/building.ts';
import { jobOf, runOf, saidBy } from './facts-builder.ts';
import { acrossOf, houseOf, uprightOf } from './house-builder.ts';

const through = (wall: Partial<Wall>) =>
  saidBy(
    fireStopping,
    houseOf({ wall, runs: [runOf('r', [uprightOf(1000, [300, 300], { medium: 'through-wall' })])] }),
  );
const under = (premises: Site['premises']) =>
  saidBy(
    fireStopping,
    houseOf({ job: { site: { ...jobOf().site, premises } }, runs: [runOf('r', [acrossOf(-110)])] }),
  );

describe('runs through what keeps fire back', () => {
  it('[RT7] leaves a party wall to be decided', () => {
    expect(through({ party: true })).toMatchObject([{ outcome: 'decide', messageId: 'partyWall' }]);
  });

  it('[RT7] advises on an external wall and is silent on others', () => {
    expect(through({ external: true })).toMatchObject([{ outcome: 'advice', messageId: 'external' }]);
    expect(through({})).toEqual([]);
  });

  it('[RT7] leaves floors of flats to be decided, not those of a house', () => {
    expect(under('flat')).toMatchObject([{ outcome: 'decide', messageId: 'floor' }]);
    expect(under('house')).toEqual([]);
  });
});
