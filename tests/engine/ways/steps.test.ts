import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { chaseCut } from '#engine/ways/chase-cut.ts';
import { liftedBoards } from '#engine/ways/lifted-boards.ts';
import type { Segment } from '#engine/ways/run.ts';
import { cutsOf } from '#engine/ways/run-cuts.ts';
import { openLay, segmentBetween } from '#engine/ways/segment.ts';
import { stepsOf } from '#engine/ways/steps.ts';
import type { Floor, Wall } from '#model/building.ts';
import type { Cable } from '#model/cable.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { fourWalls, planOf, room, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';

const cable: Cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };
const upper = fourWalls(4000, 3000);
const under = fourWalls(4000, 3000, { prefix: 'g-' });

/** A bedroom of four metres by three on 200 mm joists along x, over a room of its size. */
const house = (floor: Partial<Floor> = {}, below: Wall[] = []) =>
  planOf([
    storey('gf', {
      walls: [...under.walls, ...below],
      rooms: [room('g', under.sides, { name: 'Kitchen' })],
    }),
    storey('ff', {
      floorLevelMm: 2700,
      floor: { ...timberFloor, joistDepthMm: 200, ...floor },
      walls: upper.walls,
      rooms: [room('r', upper.sides, { name: 'Bedroom' })],
    }),
  ]);

const at = (xMm: number, yMm: number, heightMm = -110) => ({
  storeyId: 'ff',
  at: planPoint(xMm, yMm),
  heightMm,
  levelMm: 2700 + heightMm,
});

const across = (xMm: number, joistsCrossed: number, toMm = 1300): Segment =>
  segmentBetween(at(xMm, 500), at(xMm, toMm), openLay('void-across', 'derived'), { joistsCrossed });

const said = (plan: ReturnType<typeof house>, segments: readonly Segment[]) =>
  stepsOf(plan, segments, { cuts: cutsOf(plan, segments), cable });

describe('a step', () => {
  it('says how joists are drilled: how many, how wide, where, and how many boards come up', () => {
    expect(said(house(), [across(1300, 2)])).toEqual([
      '800 mm under the floor across the joists, through 2 joists (16 mm holes on the centre line, 1.30 m from the wall of Bedroom), 2 boards up',
    ]);
    expect(said(house(), [across(1300, 1, 900)])).toEqual([
      '400 mm under the floor across the joists, through 1 joist (16 mm hole on the centre line, 1.30 m from the wall of Bedroom), 2 boards up',
    ]);
  });

  it('says of notches how deep they may be, and that a plate goes over each', () => {
    expect(said(house(), [across(500, 2)])[0]).toContain(
      ', over 2 joists in notches (25 mm deep at most, 500 mm from the wall of Bedroom), a steel plate over each,',
    );
    expect(said(house(), [across(500, 1, 900)])[0]).toContain('in a notch (25 mm deep at most');
  });

  it('says where neither is allowed, and where the span is not known or only assumed', () => {
    expect(said(house(), [across(2000, 2)])[0]).toContain(
      'through 2 joists where neither hole nor notch is allowed (2.00 m from the wall of Bedroom)',
    );
    expect(said(house(), [across(0, 2)])[0]).toContain('nor notch is allowed (at the wall of Bedroom)');
    const mid = wall('mid', [2000, -50], [2000, 3050], { core: 'timber-stud' });
    expect(said(house({}, [mid]), [across(1300, 2)])[0]).toContain('Bedroom, the span assumed)');
    const bare = planOf([storey('ff', { floorLevelMm: 2700, floor: timberFloor })]);
    expect(said(bare, [across(1300, 2)])[0]).toContain('on the centre line; the span is not known)');
  });

  it('names what carries the joists below, and drills for the cable that it is', () => {
    const below = wall('g-mid', [1900, -50], [1900, 3050]);
    const plan = house({}, [below]);
    const segments = [across(1300, 2)];
    const thick: Cable = { ...cable, lineMm2: 6, cpcMm2: 2.5 };
    expect(stepsOf(plan, segments, { cuts: cutsOf(plan, segments), cable: thick })[0]).toContain(
      '20 mm holes on the centre line, 550 mm from a wall of no named room below',
    );
  });

  it('counts traps in chipboard and floors that do not lift by their own names', () => {
    expect(said(house({ covering: 'chipboard' }), [across(1300, 2)])[0]).toMatch(
      /, 2 traps cut in the chipboard$/,
    );
    expect(said(house({ liftable: false }), [across(1300, 2)])[0]).toMatch(/, the floor opened in 2 places$/);
  });

  it('holds a chase against what its wall allows', () => {
    const chase = (depthMm: number | null, toHeightMm: number, toMm = 1000): Segment =>
      segmentBetween(
        at(1000, 0, 300),
        at(toMm, 0, toHeightMm),
        { ...openLay('wall-chase', 'derived'), depthMm },
        { wallId: 's', side: 'left' },
      );
    // 100 mm of wall, 13 mm of plaster on either side: a leaf of 74, a third of it upright, a sixth level.
    expect(said(house(), [chase(19, 1300)])).toEqual([
      'up 1.0 m chased into the brick wall, 12 mm into the masonry of 24 mm allowed',
    ]);
    expect(said(house(), [chase(25, 300, 2000)])).toEqual([
      '1.0 m chased into the brick wall, 18 mm into the masonry, too deep for this wall: 12 mm allowed',
    ]);
    expect(said(house(), [chase(13, 1300)])[0]).toContain(', 6 mm into the masonry of 24 mm allowed');
    expect(said(house(), [chase(7, 1300)])[0]).toContain(', in the plaster alone, the masonry not cut');
    expect(said(house(), [chase(null, 1300)])[0]).toContain(', no deeper than 24 mm into the masonry');
  });

  it('tell one story of a board on dabs: cable in its gap cuts the board, too narrow a gap the block', () => {
    const dabbed = (gapMm: number | undefined) => {
      const face = {
        finish: 'plasterboard',
        lining: 'dot-and-dab',
        ...(gapMm === undefined ? {} : { gapMm }),
      } as const;
      const { walls, sides } = fourWalls(4000, 3000, {
        more: { core: 'block', faces: { left: face, right: face } },
      });
      return planOf([storey('ff', { floorLevelMm: 2700, walls, rooms: [room('r', sides)] })]);
    };
    const chase = segmentBetween(
      at(1300, 0, 300),
      at(1300, 0, 1300),
      { ...openLay('wall-chase', 'derived'), depthMm: 19 },
      { wallId: 's', side: 'left' },
    );
    // Cable of 6 mm whose face is 19 mm deep wants 25 mm; a board counts 13 with its skim, so that a gap of 12 takes it.
    expect(said(dabbed(12), [chase])).toEqual([
      'up 1.0 m behind the board on the block wall, the board cut along it, the masonry not',
    ]);
    for (const gapMm of [11, undefined]) {
      const [words] = said(dabbed(gapMm), [chase]);
      expect(words).toMatch(/^up 1\.0 m chased into the block wall, \d+ mm into the masonry of/);
      expect(words).not.toMatch(/board/);
    }
  });

  it('of cable that is there already says only what it passes', () => {
    expect(stepsOf(house(), [across(1300, 2)])).toEqual([
      '800 mm under the floor across the joists, through 2 joists',
    ]);
  });
});

describe('what runs of the demo jobs cut and open', () => {
  it.each(demoNames)('is told stretch by stretch, and comes to what is counted: %s', (name) => {
    for (const { runs, worked, labour } of demoEstimate(name).schemes) {
      for (const run of runs) {
        expect(run.cuts).toHaveLength(run.segments.length);
        run.segments.forEach((segment, index) => {
          expect(run.cuts[index]?.holes).toHaveLength(segment.joistsCrossed);
          const ofWall = worked.plan.wallById.get(segment.wallId ?? '');
          expect(run.cuts[index]?.chase).toEqual(chaseCut(ofWall, segment));
        });
        const alone = liftedBoards([run]);
        const opened = run.cuts.flatMap((cuts) => cuts.opened);
        expect(opened).toHaveLength(alone.length);
      }
      const done = (tasks: readonly string[]) =>
        labour.reduce((sum, { task, quantity }) => sum + (tasks.includes(task) ? quantity : 0), 0);
      const holes = runs.flatMap((run) => run.cuts.flatMap((cuts) => cuts.holes));
      // Nothing of the demos shares a bundle under a floor.
      expect(done(['notch-joist'])).toBe(holes.filter(({ judged }) => judged === 'notch').length);
      expect(done(['drill-joist', 'barred-joist', 'notch-joist'])).toBe(holes.length);
      expect(done(['lift-board', 'chipboard-trap', 'open-fixed-floor'])).toBe(liftedBoards(runs).length);
    }
  });

  it('cut joists where they may be, save by ways that were set by hand', () => {
    for (const name of demoNames)
      for (const { runs } of demoEstimate(name).schemes)
        for (const { cuts, pinned } of runs) {
          const judged = cuts.flatMap((each) => each.holes).map((hole) => hole.judged);
          if (!pinned) expect(judged).not.toContain('neither');
        }
  });
});
