import { describe, expect, it } from 'vitest';
import { boxRound, type Rectangle } from '#drawing/label-placer.ts';
import { shapesOfWall, studsFirst, wallBoxes } from '#drawing/plan/walls.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const frame: SheetFrame = { scale: 1, origin: planPoint(0, 0), at: sheetPoint(0, 0) };
const job = demoJob('saltglass-row');
const [storey] = job.storeys;
const [like] = storey?.walls ?? [];
if (storey === undefined || like === undefined) throw new Error('The demo job is bare.');

/** Walls from place to place, in millimetres of the sheet too. */
const wallsOf = (all: readonly Partial<typeof like>[]): readonly PlanWall[] => {
  const walls = all.map((one, i) => ({ ...like, openings: [], ...one, id: `w${i}` }));
  const plan = buildPlan({ storeys: [{ ...storey, walls, rooms: [] }], points: [], boards: [] });
  return [...plan.wallById.values()];
};

const boxOf = (walls: readonly PlanWall[], at: number): Rectangle => {
  const wall = walls[at];
  const [slab] = wall === undefined ? [] : shapesOfWall(frame, wall, walls);
  if (slab?.kind !== 'line') throw new Error('No slab.');
  return boxRound(slab.points);
};

describe('walls where they meet', () => {
  it('reach into each other in one line, so that no light comes through', () => {
    const walls = wallsOf([
      { from: [0, 0], to: [2000, 0] },
      { from: [2000, 0], to: [4000, 0] },
    ]);
    expect(boxOf(walls, 0).rightMm).toBeGreaterThan(2000);
    expect(boxOf(walls, 1).leftMm).toBeLessThan(2000);
    expect(boxOf(walls, 0).leftMm).toBeCloseTo(0, 6);
  });

  it('close a corner to its outer edge, and a stud wall ends within a solid one', () => {
    const walls = wallsOf([
      { from: [0, 0], to: [2000, 0], thicknessMm: 300, core: 'brick' },
      { from: [2000, 0], to: [2000, 2000], thicknessMm: 200, core: 'brick' },
      { from: [2000, 2000], to: [0, 2000], thicknessMm: 100, core: 'timber-stud' },
    ]);
    expect(boxOf(walls, 0).rightMm).toBeCloseTo(2100, 6);
    expect(boxOf(walls, 2).rightMm).toBeCloseTo(2000, 6);
    expect(studsFirst(walls).map(({ wall }) => wall.id)).toEqual(['w2', 'w0', 'w1']);
  });

  it('take the room of their corners and chimney breasts from lettering', () => {
    const breast = {
      id: 'b',
      kind: 'breast',
      alongMm: 500,
      widthMm: 900,
      sillMm: 0,
      headMm: 2400,
      side: 'left',
    } as const;
    const walls = wallsOf([
      { from: [0, 0], to: [2000, 0], thicknessMm: 300, openings: [breast] },
      { from: [2000, 0], to: [2000, 2000], thicknessMm: 200 },
    ]);
    const boxes = wallBoxes(frame, walls);
    expect(boxes).toHaveLength(3);
    expect(Math.max(...boxes.map(({ rightMm }) => rightMm))).toBeCloseTo(2100, 6);
    // The breast stands before the wall's face, which on the sheet, where y goes down, is above it.
    expect(
      boxes.some(({ topMm, leftMm, rightMm }) => topMm < -151 && leftMm === 500 && rightMm === 1400),
    ).toBe(true);
  });
});
