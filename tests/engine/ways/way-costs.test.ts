import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '#engine/plan/plan.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { chaseCut } from '#engine/ways/chase-cut.ts';
import { houseWays } from '#engine/ways/house-ways.ts';
import { liftedBoards } from '#engine/ways/lifted-boards.ts';
import type { Mount } from '#engine/ways/route.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { WayTariff } from '#engine/ways/way-tariff.ts';
import type { Wall } from '#model/building.ts';
import {
  door,
  fourWalls,
  planOf,
  room,
  solidFloor,
  storey,
  timberFloor,
} from '#tests/engine/plan/small-house.ts';
import { tariff } from './demo-houses.ts';

const nothing = { millipence: 0, minutes: 0, mess: 0 };

/** What the parts of a way come to, counted on the way itself: nothing of the net is asked. */
function counted(plan: Plan, segments: readonly Segment[], by: WayTariff): number {
  const metre = (segment: Segment): number => {
    const { medium, wallId } = segment;
    const wall = plan.wallById.get(wallId ?? '');
    if (medium === 'wall-chase')
      return chaseCut(wall, segment)?.isBehindBoard === true
        ? by.chaseBoard.millipence
        : by.chase[wall?.wall.core ?? 'brick'].millipence;
    if (medium === 'surface-channel') return by.channel.millipence;
    return medium === 'through-wall' ? 0 : by.thread.millipence;
  };
  const sum = (pick: (segment: Segment, index: number) => number) =>
    segments.map(pick).reduce((a, b) => a + b, 0);
  return (
    sum((each) => ((metre(each) + by.cableMillipencePerM) * each.lengthMm) / 1000) +
    sum(({ studsCrossed }) => studsCrossed * by.stud.millipence) +
    sum(({ medium }) => (medium === 'through-wall' ? by.wallHole.millipence : 0)) +
    sum(({ medium, direction }) =>
      medium === 'stud-cavity' && direction === 'vertical' ? by.fish.millipence : 0,
    ) +
    sum((each, index) => turnIn(each, segments[index + 1], by))
  );
}

/** The fitting where channel turns: on its face, or from face to face of a room that has inside corners only. */
function turnIn(one: Segment, next: Segment | undefined, by: WayTariff): number {
  if (one.medium !== 'surface-channel' || next?.medium !== 'surface-channel') return 0;
  if (one.wallId !== next.wallId) return by.channelTurn.internal.millipence;
  return one.direction === next.direction ? 0 : by.channelTurn.flat.millipence;
}

const cores = fc.constantFrom<Wall['core']>('brick', 'timber-stud', 'metal-stud', 'concrete');
const heights = fc.constantFrom(300, 450, 1100, 1500, 2000);

/** A room on a solid floor, its walls of any build, with a door and a loft or none, and two places in it. */
const rooms = fc.record({
  cores: fc.tuple(cores, cores, cores, cores),
  sizeMm: fc.tuple(fc.integer({ min: 2500, max: 5500 }), fc.integer({ min: 2500, max: 5500 })),
  doorAtMm: fc.integer({ min: 100, max: 1500 }),
  loft: fc.boolean(),
  ends: fc.tuple(
    fc.tuple(fc.constantFrom('s', 'e', 'n', 'w'), fc.integer({ min: 150, max: 2300 }), heights),
    fc.tuple(fc.constantFrom('s', 'e', 'n', 'w'), fc.integer({ min: 150, max: 2300 }), heights),
  ),
  mount: fc.constantFrom<Mount>('flush', 'surface'),
});

describe('what a way costs', () => {
  it('is what its stretches, holes, drops and fittings come to, counted one by one', () => {
    let drops = 0;
    let turns = 0;
    fc.assert(
      fc.property(rooms, ({ cores: builds, sizeMm, doorAtMm, loft, ends, mount }) => {
        const { walls, sides } = fourWalls(...sizeMm);
        const built = walls.map((wall, index) => ({
          ...wall,
          core: builds[index] ?? 'brick',
          openings: index === 0 ? [door('d', doorAtMm)] : [],
        }));
        const ceiling = { lining: 'plasterboard', loft, insulationMm: 0 } as const;
        const plan = planOf([
          storey('gf', { walls: built, rooms: [room('r', sides)], floor: solidFloor, ceiling }),
        ]);
        const [from, to] = ends.map(([wall, alongMm, heightMm]) => {
          const position = positionOfPlace(plan, { wall, side: 'left', alongMm, heightMm });
          return position === null ? null : { position, mount };
        });
        fc.pre(from !== null && to !== null && from !== undefined && to !== undefined);
        const way = houseWays(plan, tariff).way(from, to, 'pence');
        fc.pre(way !== null && !way.cost.poor);
        drops += way.segments.filter(
          ({ medium, direction }) => medium === 'stud-cavity' && direction === 'vertical',
        ).length;
        turns += way.segments.filter(({ medium }) => medium === 'surface-channel').length;
        // Whole thousandths of a penny; a slip in a drop's beginning is a millimetre.
        expect(Math.abs(way.cost.millipence - counted(plan, way.segments, tariff))).toBeLessThan(20);
      }),
      { numRuns: 200 },
    );
    expect(drops).toBeGreaterThan(30);
    expect(turns).toBeGreaterThan(30);
  });

  it('has for floors what comes up by the count, where no more than the two ends of the cable lead to it', () => {
    const { walls, sides } = fourWalls(9000, 7000);
    const plan = planOf([storey('gf', { walls, rooms: [room('r', sides)], floor: timberFloor })]);
    const board = { millipence: 200_000, minutes: 0, mess: 0 };
    const floors: WayTariff = {
      ...tariff,
      ...{ thread: nothing, joist: nothing, joistNotch: nothing, cableMillipencePerM: 1000 },
      ...{ board: { ...tariff.board, 'lift-board': board } },
    };
    const ways = houseWays(plan, floors);
    const place = (wall: string, alongMm: number) => {
      const position = positionOfPlace(plan, { wall, side: 'left', alongMm, heightMm: 300 });
      if (position === null) throw new Error(wall);
      return { position, mount: null };
    };
    const seen = new Set<number>();
    for (const alongS of [1200, 2600, 4100, 6300, 8000])
      for (const alongW of [900, 2300, 3900, 5200]) {
        const way = ways.way(place('s', alongS), place('w', alongW), 'pence');
        const segments = way?.segments ?? [];
        // By a line of the house a third stretch would lie between them, its boards by the metre.
        if (segments.filter(({ medium }) => medium === 'void-along' || medium === 'void-across').length !== 2)
          continue;
        const boards = liftedBoards([{ id: 'a', segments }]).length;
        const chased = segments
          .filter(({ medium }) => medium === 'wall-chase')
          .reduce((sum, { lengthMm }) => sum + lengthMm * 1700, 0);
        const forFloors = (way?.cost.millipence ?? 0) - chased - (way?.cost.routeMm ?? 0);
        expect(Math.round(forFloors / board.millipence), `${alongS} ${alongW}`).toBe(boards);
        seen.add(boards);
      }
    expect(seen.size).toBeGreaterThan(2);
  });
});
