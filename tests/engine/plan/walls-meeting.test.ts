import { describe, expect, it } from 'vitest';
import { distanceMm, planPoint, planPointOf } from '#engine/plan/plane.ts';
import { JOIN_MM } from '#engine/plan/room-outline.ts';
import { wallsMeeting } from '#engine/plan/walls-meeting.ts';
import { houseOf } from '../../houses/house-of.ts';
import { planOf, storey, wall } from './small-house.ts';

describe('wallsMeeting', () => {
  it('gives every wall that joins at an end of any wall, in the order of the plan', () => {
    const plan = planOf(houseOf({ seed: 5, rooms: 20, wanted: 1 }).storeys);
    const meeting = wallsMeeting(plan.wallById);
    const walls = [...plan.wallById.values()];
    for (const { wall: asked, storeyId } of walls)
      for (const at of [planPointOf(asked.from), planPointOf(asked.to)]) {
        const joins = ({ wall: other }: (typeof walls)[number]): boolean =>
          [other.from, other.to].some((end) => distanceMm(planPointOf(end), at) <= JOIN_MM);
        const given = meeting(storeyId, at);
        expect(given.filter(joins)).toEqual(
          walls.filter((each) => each.storeyId === storeyId && joins(each)),
        );
        expect(given.length).toBeLessThanOrEqual(4);
      }
  });

  it('finds a wall whose end is just as far off as joins, and none where there is no wall', () => {
    const walls = [wall('a', [0, 0], [2000, 0]), wall('b', [0, 500], [0, 2000], { core: 'open' })];
    const meeting = wallsMeeting(planOf([storey('gf', { walls })]).wallById);
    const idsAt = (x: number, y: number) => meeting('gf', planPoint(x, y)).map(({ wall: each }) => each.id);
    expect([idsAt(-10, 0), idsAt(2010, 0), idsAt(0, -10)]).toEqual([['a'], ['a'], ['a']]);
    expect([idsAt(0, 500), idsAt(0, 100), meeting('ff', planPoint(0, 0))]).toEqual([[], [], []]);
  });
});
