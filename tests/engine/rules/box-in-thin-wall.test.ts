import { describe, expect, it } from 'vitest';
import { boxInThinWall } from '#engine/rules/box-in-thin-wall.ts';
import type { Wall } from '#model/building.ts';
import { boxOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

const said = (wall: Partial<Wall>, depthMm: number) =>
  saidBy(
    boxInThinWall,
    houseOf({ wall, points: [wantedOn(2000, 450)], things: { boxes: [boxOf('p', { depthMm })] } }),
  );

describe('boxes in thin walls', () => {
  it('[BX2] passes a box of half a masonry wall and leaves a deeper one to be decided', () => {
    expect(said({ thicknessMm: 70 }, 35)).toMatchObject([{ outcome: 'passes', actual: 35, limit: 35 }]);
    expect(said({ thicknessMm: 69 }, 35)).toMatchObject([{ outcome: 'decide', messageId: 'masonry' }]);
  });

  it('[BX2] leaves a stud wall all but its far board', () => {
    expect(said({ core: 'timber-stud', thicknessMm: 60 }, 47)).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ core: 'timber-stud', thicknessMm: 59 }, 47)).toMatchObject([
      { outcome: 'decide', messageId: 'stud' },
    ]);
  });

  it('[BX2] is silent where the box’s place is not known', () => {
    expect(saidBy(boxInThinWall, houseOf({ things: { boxes: [boxOf('p')] } }))).toEqual([]);
  });
});
