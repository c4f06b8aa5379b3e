import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stairwellShapes, worktopOutlines } from '#drawing/plan/fixtures.ts';
import { joistShapes } from '#drawing/plan/joists.ts';
import type { Shape } from '#drawing/scene.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { fromSheet, type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '../engine/demo-jobs/demo-estimates.ts';

const frame: SheetFrame = { scale: 50, origin: planPoint(0, 0), at: sheetPoint(0, 300) };
const copyOf = (name: string): Job => structuredClone(demoJob(name as 'saltglass-row'));
const ends = (shape: Shape) => (shape.kind === 'line' ? shape.points.map((at) => fromSheet(frame, at)) : []);

describe('joists on the plan', () => {
  it('run the way that is told, within the rooms, as far apart as they are (random)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -360, max: 360 }),
        fc.integer({ min: 300, max: 600 }),
        (joistsRunDeg, joistSpacingMm) => {
          const job = copyOf('fernlow-close');
          const storey = job.storeys.at(-1);
          if (storey === undefined) throw new Error('No storey.');
          for (const room of storey.rooms) delete room.floor;
          Object.assign(storey.floor, { build: 'suspended-timber', joistsRunDeg, joistSpacingMm });
          const plan = buildPlan(job);
          const joists = joistShapes(frame, plan, storey.id).map(ends);
          expect(joists.length).toBeGreaterThan(10);
          const radians = (joistsRunDeg * Math.PI) / 180;
          for (const [from, to] of joists) {
            if (from === undefined || to === undefined) throw new Error('No ends.');
            const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
            expect(Math.abs(dx * Math.sin(radians) - dy * Math.cos(radians))).toBeLessThan(0.5);
            const middle = planPoint((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
            if (Math.hypot(dx, dy) > 5)
              expect([...plan.roomById.values()].some(({ outline }) => isInside(outline, middle))).toBe(true);
          }
          const offs = [
            ...new Set(
              joists.map(([at]) =>
                Math.round((at?.[1] ?? 0) * Math.cos(radians) - (at?.[0] ?? 0) * Math.sin(radians)),
              ),
            ),
          ];
          for (const [i, off] of offs.toSorted((a, b) => a - b).entries()) {
            const steps = (off - (offs.toSorted((a, b) => a - b)[i - 1] ?? off)) / joistSpacingMm;
            expect(Math.abs(steps - Math.round(steps))).toBeLessThan(0.02);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('are none where nobody knows, or where a room’s own floor is solid', () => {
    const job = copyOf('saltglass-row');
    const [storey] = job.storeys;
    if (storey === undefined) throw new Error('No storey.');
    Object.assign(storey.floor, { build: 'suspended-timber', joistsRunDeg: 0 });
    const all = joistShapes(frame, buildPlan(job), storey.id).length;
    const [room] = storey.rooms;
    if (room === undefined) throw new Error('No room.');
    room.floor = { build: 'solid', voidMm: 0, covering: 'tile' };
    expect(joistShapes(frame, buildPlan(job), storey.id).length).toBeLessThan(all);
    delete storey.floor.joistsRunDeg;
    expect(joistShapes(frame, buildPlan(job), storey.id)).toEqual([]);
    expect(joistShapes(frame, buildPlan(job), 'nowhere')).toEqual([]);
  });
});

describe('stairwells and worktops on the screen’s plan', () => {
  it('are an outline with both diagonals, and an outline alone', () => {
    const job = copyOf('fernlow-close');
    const [storey] = job.storeys;
    if (storey === undefined) throw new Error('No storey.');
    storey.stairwells = [
      [
        [0, 0],
        [850, 0],
        [850, 2400],
        [0, 2400],
      ],
    ];
    const lines = stairwellShapes(frame, buildPlan(job), storey.id);
    expect(lines.map(ends).map(({ length }) => length)).toEqual([4, 2, 2]);
    const diagonal = ends(lines[1] ?? { kind: 'line', points: [], closed: false, ink: 'fixture' });
    expect(diagonal.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual([
      [0, 0],
      [850, 2400],
    ]);
    const tops = storey.fixtures.filter(({ kind }) => kind === 'worktop').length;
    expect(tops).toBeGreaterThan(0);
    expect(worktopOutlines(frame, buildPlan(job), storey.id)).toHaveLength(tops);
  });
});
