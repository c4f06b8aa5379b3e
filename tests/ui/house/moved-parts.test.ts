import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapesOfWall } from '#drawing/plan/walls.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Job } from '#model/job.ts';
import { partsOf } from '../../../ui/house/house-parts.ts';
import { movedParts } from '../../../ui/house/moved-parts.ts';
import { type Reshape, reshapedCopy } from '../../../ui/house/reshape.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const frame: SheetFrame = { scale: 50, origin: planPoint(0, 0), at: sheetPoint(0, 0) };

/** How each wall of a plan is drawn. */
const drawn = (plan: Plan): ReadonlyMap<string, string> => {
  const walls = [...plan.wallById.values()];
  return new Map(walls.map((wall) => [wall.wall.id, JSON.stringify(shapesOfWall(frame, wall, walls))]));
};

/** One storey by itself, as a copy of it is tried. */
function alone(job: Job, at: number) {
  const storey = job.storeys[at % job.storeys.length];
  if (storey === undefined) throw new Error('A demo job has storeys.');
  const asIs = reshapedCopy(job, storey.id, { part: 'wall', wallId: 'none', byMm: 0 });
  if (asIs === null) throw new Error('The storey is there.');
  return { storey, plan: buildPlan(job), boards: job.boards, drawnPlan: asIs.plan };
}

const positions = (plan: Plan): ReadonlyMap<string, string> =>
  new Map([...plan.positionOfPoint].map(([id, { at }]) => [id, JSON.stringify(at)]));

describe('what is drawn otherwise while a part of the house is held', () => {
  it('is all that looks otherwise, and nothing of a house that stays', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(3),
        fc.nat(200),
        fc.integer({ min: -400, max: 400 }),
        (name, at, which, mm) => {
          const job = demoJob(name);
          const before = alone(job, at);
          const parts = partsOf(before.storey).filter(({ part }) => part !== 'fixture');
          const part = parts[which % parts.length];
          const asked: Reshape | null =
            part?.part === 'wall'
              ? { part: 'wall', wallId: part.wallId, byMm: mm }
              : part?.part === 'corner'
                ? { part: 'corner', at: part.at, to: [part.at[0] + mm, part.at[1] - mm / 2] }
                : null;
          fc.pre(asked !== null);
          const tried = asked === null ? null : reshapedCopy(job, before.storey.id, asked);
          if (tried === null) throw new Error('The storey is there.');
          const moved = movedParts(before, tried);
          const [was, is] = [drawn(before.drawnPlan), drawn(tried.plan)];
          for (const [id, shapes] of is) if (was.get(id) !== shapes) expect(moved.walls).toContain(id);
          for (const id of was.keys()) if (!is.has(id)) expect(moved.walls).toContain(id);
          const [stood, stands] = [positions(before.drawnPlan), positions(tried.plan)];
          for (const [id, place] of stands) if (stood.get(id) !== place) expect(moved.points).toContain(id);
          if (mm === 0) expect([moved.walls.size, moved.points.size, moved.fixtures]).toEqual([0, 0, false]);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('leaves most of a house alone when one wall moves', () => {
    const job = demoJob('saltglass-row');
    const before = alone(job, 0);
    const tried = reshapedCopy(job, before.storey.id, {
      part: 'wall',
      wallId: before.storey.walls.at(-1)?.id ?? '',
      byMm: 40,
    });
    if (tried === null) throw new Error('The storey is there.');
    const { walls } = movedParts(before, tried);
    expect(walls.size).toBeGreaterThan(0);
    expect(walls.size).toBeLessThan(before.storey.walls.length);
  });

  it('has fixtures in it once one of them is elsewhere', () => {
    const job = demoJob('saltglass-row');
    const storey = job.storeys.find(({ fixtures }) => fixtures.length > 0);
    if (storey === undefined) throw new Error('The demo house has fixtures.');
    const before = alone(job, job.storeys.indexOf(storey));
    const other = structuredClone(storey);
    for (const fixture of other.fixtures) fixture.outline = fixture.outline.map(([x, y]) => [x + 10, y]);
    const after = { storey: other, plan: before.plan, boards: before.boards };
    expect(movedParts(before, after)).toMatchObject({ fixtures: true });
    expect(movedParts(before, { ...after, storey }).fixtures).toBe(false);
  });
});
