import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { oddGeometry } from '#engine/plan/odd-geometry.ts';
import { oddlyDrawn } from '#engine/rules/odd-geometry.ts';
import type { Opening, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { factsOf, saidBy } from './facts-builder.ts';

const job: Job = { ...demoJob('saltglass-row'), schemes: [] };
const withWall = (id: string, change: (wall: Wall) => Wall): Job => ({
  ...job,
  storeys: job.storeys.map((storey) => ({
    ...storey,
    walls: storey.walls.map((wall) => (wall.id === id ? change(wall) : wall)),
  })),
});
const said = (of: Job) => saidBy(oddlyDrawn, factsOf({ job: of, plan: buildPlan(of) }));
const wallOf = (id: string): Wall => {
  const wall = job.storeys.flatMap(({ walls }) => walls).find((one) => one.id === id);
  if (wall === undefined) throw new Error(`no wall ${id}`);
  return wall;
};
const lengthMm = ({ from, to }: Wall): number => Math.hypot(to[0] - from[0], to[1] - from[1]);
const door = (alongMm: number, widthMm: number, id = 'door-new'): Opening => ({
  id,
  kind: 'door',
  alongMm,
  widthMm,
  sillMm: 0,
  headMm: 2000,
});

describe('a house as drawn', () => {
  it.each(demoNames)('[HG1] has nothing odd in %s', (name) => {
    const demo = demoJob(name);
    expect(oddGeometry(demo, buildPlan(demo))).toEqual([]);
  });

  it('[HG1] has a room that does not close, once a wall of it ends elsewhere', () => {
    const open = withWall('gf-hall-01', (wall) => ({ ...wall, to: [wall.to[0], wall.to[1] - 400] }));
    const told = said(open).filter(({ messageId }) => messageId === 'room-open');
    expect(told.length).toBeGreaterThan(0);
    expect(told.every(({ outcome, origin }) => outcome === 'not-proven' && origin === 'found')).toBe(true);
  });

  it('[HG1] has an opening that reaches past its wall, from more than a millimetre on', () => {
    const wall = wallOf('gf-right-1');
    const bare = { ...wall, openings: [] };
    const at = (pastMm: number) =>
      said(withWall(wall.id, () => ({ ...bare, openings: [door(lengthMm(wall) - 900 + pastMm, 900)] })));
    expect(at(1)).toEqual([]);
    expect(at(40)).toMatchObject([{ messageId: 'opening-beyond', subjectId: 'door-new', actual: 40 }]);
  });

  it('[HG1] has openings over one another, not beside', () => {
    const wall = wallOf('gf-right-1');
    const two = (gapMm: number) =>
      said(
        withWall(wall.id, () => ({
          ...wall,
          openings: [door(100, 700, 'door-one'), door(800 + gapMm, 700, 'door-two')],
        })),
      );
    expect(two(0)).toEqual([]);
    expect(two(-50)).toMatchObject([{ messageId: 'openings-overlap', subjectId: 'door-two', actual: 50 }]);
  });

  it('[HG1] has a wall without length, and walls that go through each other', () => {
    const [storey, ...others] = job.storeys;
    if (storey === undefined) throw new Error('no storey');
    const wall = (id: string, from: Wall['from'], to: Wall['to']): Wall => ({
      ...wallOf('gf-hall-01'),
      id,
      from,
      to,
      openings: [],
    });
    const more = (...walls: readonly Wall[]): Job => ({
      ...job,
      storeys: [{ ...storey, walls: [...storey.walls, ...walls] }, ...others],
    });
    const away: Wall['from'] = [50_000, 50_000];
    expect(said(more(wall('dot', away, away)))).toMatchObject([{ messageId: 'no-length', subjectId: 'dot' }]);
    const level = wall('level', away, [54_000, 50_000]);
    expect(said(more(level, wall('up', [52_000, 48_000], [52_000, 52_000])))).toMatchObject([
      { messageId: 'walls-cross', subjectId: 'level' },
    ]);
    expect(said(more(level, wall('meets', [52_000, 50_000], [52_000, 52_000])))).toEqual([]);
  });

  it('[HG1] has a point past the end of its wall, or above the ceiling', () => {
    const wall = wallOf('gf-right-1');
    const moved = (alongMm: number, heightMm: number): Job => ({
      ...job,
      points: job.points.map((point, index) =>
        index === 0 ? { ...point, place: { wall: wall.id, side: 'left', alongMm, heightMm } } : point,
      ),
    });
    expect(said(moved(lengthMm(wall), 450))).toEqual([]);
    expect(said(moved(lengthMm(wall) + 250, 450))).toMatchObject([{ messageId: 'off-wall', actual: 250 }]);
    expect(said(moved(100, 3000))).toMatchObject([{ messageId: 'above-ceiling' }]);
  });

  it('[HG1] is worked through whatever is odd of it, and never gates', () => {
    const whole = demoJob('saltglass-row');
    const shift = fc.integer({ min: -3000, max: 3000 });
    fc.assert(
      fc.property(fc.nat(27), shift, shift, (place, x, y) => {
        const walls = whole.storeys.flatMap((storey) => storey.walls.map(({ id }) => id));
        const id = walls[place % walls.length];
        const odd: Job = {
          ...whole,
          schemes: whole.schemes.slice(0, 1),
          storeys: whole.storeys.map((storey) => ({
            ...storey,
            walls: storey.walls.map((wall) =>
              wall.id === id ? { ...wall, to: [wall.to[0] + x, wall.to[1] + y] } : wall,
            ),
          })),
        };
        const findings = estimateOf(odd).asFound.findings.filter(({ rule }) => rule === 'HG1');
        const isMoved = Math.hypot(x, y) > 25;
        expect(findings.length > 0 || !isMoved).toBe(true);
        expect(findings.every(({ gates }) => !gates)).toBe(true);
      }),
      { numRuns: 8 },
    );
  });
});
