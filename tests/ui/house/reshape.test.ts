import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { GRID_MM } from '../../../ui/house/grid.ts';
import {
  cornerAfterSide,
  cornersOf,
  type HousePart,
  keyOfPart,
  meantPart,
  partOfKey,
  partsOf,
  partWords,
} from '../../../ui/house/house-parts.ts';
import { pulled } from '../../../ui/house/pulled.ts';
import { isNoChange, type Reshape, reshape, reshapedCopy } from '../../../ui/house/reshape.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { snappedCorner, snappedMove } from '../../../ui/house/snap.ts';
import type { Vector } from '../../../ui/house/vector.ts';
import { moveForDepth, wallDepths } from '../../../ui/house/wall-depths.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { drawingOf, sidesMm } from './drawn.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const copyOf = (name: (typeof names)[number]): Job => structuredClone(demoJob(name));
const storeyOf = (job: Job, at = 0): Storey => {
  const storey = job.storeys[at % job.storeys.length];
  if (storey === undefined) throw new Error('No storey.');
  return storey;
};
const anyStorey = fc.record({ name: fc.constantFrom(...names), at: fc.nat(3) });

/** A fixture dragged, as the hand does it; of what is in hand nothing else is asked. */
function draggedBy(storey: Storey, part: HousePart, mm: number): Reshape {
  const map = buildPlan({ storeys: [storey], points: [], boards: [] }).wallById;
  const made = pulled(storey, { part, by: [mm, -mm / 2], reachMm: 60 }, map);
  if (made === null) throw new Error('Nothing to drag.');
  return made.asked;
}

describe('the parts of a house that can be taken hold of', () => {
  it('are found where they are drawn, and go by their words (random)', () => {
    fc.assert(
      fc.property(anyStorey, fc.nat(), ({ name, at }, pick) => {
        const storey = storeyOf(copyOf(name), at);
        const corners = cornersOf(storey);
        const corner = corners[pick % corners.length] ?? [0, 0];
        expect(meantPart({ ...storey, fixtures: [] }, corner, 300)).toEqual({ part: 'corner', at: corner });
        const wall = storey.walls[pick % storey.walls.length];
        if (wall === undefined) throw new Error('No wall.');
        const middle: Vector = [(wall.from[0] + wall.to[0]) / 2, (wall.from[1] + wall.to[1]) / 2];
        expect(meantPart({ ...storey, fixtures: [] }, middle, 1)).toEqual({ part: 'wall', wallId: wall.id });
        // The middle of a worktop with corners need not lie on it.
        for (const fixture of storey.fixtures.filter(({ kind }) => kind !== 'worktop')) {
          const inside = fixture.outline.reduce<Vector>(
            (sum, [x, y]) => [sum[0] + x / fixture.outline.length, sum[1] + y / fixture.outline.length],
            [0, 0],
          );
          // Of fixtures that lie over each other the least is meant.
          expect(meantPart(storey, inside, 1)?.part).toBe('fixture');
        }
        const marked: HousePart = {
          part: 'stretch',
          wallId: wall.id,
          side: 'right',
          marks: [500, 1200.5].slice(0, pick % 3),
        };
        expect(partOfKey(keyOfPart(marked))).toEqual(marked);
        for (const part of partsOf(storey)) expect(partOfKey(keyOfPart(part))).toEqual(part);
      }),
      { numRuns: 40 },
    );
  });

  it('are called by the rooms that have them', () => {
    const storey = storeyOf(copyOf('saltglass-row'));
    expect(partWords(storey, { part: 'wall', wallId: 'gf-hall-01' })).toBe(
      'the wall between Hall and Living room',
    );
    expect(partWords(storey, { part: 'corner', at: [1015, -150] })).toBe(
      'the corner of Hall and Living room',
    );
    expect(meantPart(storey, [-5000, -5000], 500)).toBeNull();
  });

  it('are the corners of a room after each of its sides', () => {
    const storey = storeyOf(copyOf('saltglass-row'));
    const room = storey.rooms.find(({ name }) => name === 'Kitchen');
    if (room === undefined) throw new Error('No kitchen.');
    const sides = roomSides(storey, room);
    const corners = sides.map((_, at) => cornerAfterSide(storey, sides, at));
    // Half a wall's thickness off the inner corners.
    corners.forEach((corner, at) => {
      const [x, y] = sides[at]?.to ?? [0, 0];
      expect(Math.hypot((corner?.[0] ?? 0) - x, (corner?.[1] ?? 0) - y)).toBeLessThan(250);
    });
    expect(cornerAfterSide(storey, [], 0)).toBeNull();
  });

  it('leave the middle of a short wall to the wall', () => {
    const short = {
      fixtures: [],
      walls: storeyOf(copyOf('saltglass-row'))
        .walls.slice(0, 1)
        .map((wall) => ({
          ...wall,
          from: [0, 0] as [number, number],
          to: [400, 0] as [number, number],
        })),
    };
    expect(meantPart(short, [200, 0], 2000)).toMatchObject({ part: 'wall' });
    expect(meantPart(short, [100, 0], 2000)).toMatchObject({ part: 'corner', at: [0, 0] });
  });
});

describe('a wall that is dragged', () => {
  it('comes to rest where the room beside it is so many whole steps deep', () => {
    const { storey } = drawingOf(copyOf('saltglass-row'));
    const [hall, living] = wallDepths(storey, 'gf-hall-01');
    // Moved to its left the hall shrinks, the living room grows.
    expect([hall?.sign, living?.sign]).toEqual([-1, 1]);
    expect(sidesMm(storey, 'Hall')).toContain(hall?.lengthMm);
    const { byMm, guide } = snappedMove(storey, { wallId: 'gf-hall-01', byMm: 237 }, 1);
    expect(guide).toBeNull();
    expect(((hall?.lengthMm ?? 0) - byMm) % GRID_MM).toBe(0);
    expect(Math.abs(byMm - 237)).toBeLessThanOrEqual(GRID_MM / 2);
    if (hall !== undefined) expect(moveForDepth(hall, 800)).toBe(hall.lengthMm - 800);
  });

  it('comes into line with a wall that runs the same way (random)', () => {
    fc.assert(
      fc.property(anyStorey, fc.nat(), fc.integer({ min: -600, max: 600 }), ({ name, at }, pick, byMm) => {
        const storey = storeyOf(copyOf(name), at);
        const wall = storey.walls[pick % storey.walls.length];
        if (wall === undefined) return;
        const snapped = snappedMove(storey, { wallId: wall.id, byMm }, 200);
        expect(Math.abs(snapped.byMm - byMm)).toBeLessThanOrEqual(200);
        // What rests rests: snapped once more it stays.
        expect(snappedMove(storey, { wallId: wall.id, byMm: snapped.byMm }, 200).byMm).toBeCloseTo(
          snapped.byMm,
          6,
        );
        if (snapped.guide === null) {
          const depth = wallDepths(storey, wall.id)[0];
          const mm = depth === undefined ? snapped.byMm : depth.lengthMm + snapped.byMm * depth.sign;
          expect(Math.abs(mm / GRID_MM - Math.round(mm / GRID_MM))).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('makes a side as long as is typed afterwards (random)', () => {
    fc.assert(
      fc.property(anyStorey, fc.nat(), fc.integer({ min: -200, max: 200 }), ({ name, at }, pick, moreMm) => {
        const job = copyOf(name);
        const drawing = drawingOf(job, at % job.storeys.length);
        const wall = drawing.storey.walls[pick % drawing.storey.walls.length];
        const [depth] = wall === undefined ? [] : wallDepths(drawing.storey, wall.id);
        fc.pre(wall !== undefined && depth !== undefined);
        const asked = Math.round(depth.lengthMm + moreMm);
        const outcome = reshape(drawing, { part: 'wall', wallId: wall.id, byMm: moveForDepth(depth, asked) });
        fc.pre(outcome.ok);
        expect(wallDepths(drawing.storey, wall.id)[0]?.lengthMm).toBeCloseTo(asked, 0);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a corner that is dragged', () => {
  const square = (): Storey => {
    const job = copyOf('saltglass-row');
    const storey = storeyOf(job);
    const [template] = storey.walls;
    if (template === undefined) throw new Error('No wall.');
    const corners: [number, number][] = [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ];
    storey.rooms = [];
    storey.walls = corners.map((from, i) => ({
      ...template,
      id: `w${i}`,
      openings: [],
      from,
      to: corners[(i + 1) % 4] ?? from,
    }));
    return storey;
  };

  it('is brought square to the walls at both its other ends, within reach', () => {
    const snapped = snappedCorner(square(), { at: [4000, 3000], to: [4060, 2950] }, 100);
    expect(snapped.to).toEqual([4000, 3000]);
    expect(snapped.guides).toHaveLength(2);
  });

  it('keeps one right angle and goes by steps along it where the other is out of reach', () => {
    const snapped = snappedCorner(square(), { at: [4000, 3000], to: [4612, 2990] }, 100);
    expect(snapped.to).toEqual([4600, 3000]);
    expect(snapped.guides).toEqual([{ from: [0, 3000], to: [4600, 3000] }]);
  });

  it('goes by steps across and up the plan where nothing is near', () => {
    expect(snappedCorner(square(), { at: [4000, 3000], to: [4612, 3391] }, 100)).toEqual({
      to: [4600, 3400],
      guides: [],
    });
  });

  it('never goes further from the hand than its reach or a step allows, and rests where it rests (random)', () => {
    fc.assert(
      fc.property(
        anyStorey,
        fc.nat(),
        fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
        fc.integer({ min: 20, max: 250 }),
        ({ name, at }, pick, by, reachMm) => {
          const storey = storeyOf(copyOf(name), at);
          const corners = cornersOf(storey);
          const corner = corners[pick % corners.length] ?? [0, 0];
          const to: Vector = [corner[0] + by[0], corner[1] + by[1]];
          const snapped = snappedCorner(storey, { at: corner, to }, reachMm);
          const far = Math.hypot(snapped.to[0] - to[0], snapped.to[1] - to[1]);
          expect(far).toBeLessThanOrEqual(Math.max(reachMm * 1.5, reachMm + GRID_MM / 2, GRID_MM) + 1e-6);
          for (const { from, to: end } of snapped.guides) {
            expect(cornersOf(storey)).toContainEqual(from);
            expect(end).toEqual(snapped.to);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('a reshaping that is tried', () => {
  it('does to its copy what the edit does to the job, and nothing to the job (random)', () => {
    fc.assert(
      fc.property(anyStorey, fc.nat(), fc.integer({ min: -900, max: 900 }), ({ name, at }, pick, mm) => {
        const job = copyOf(name);
        const before = JSON.stringify(job);
        const storey = storeyOf(job, at);
        const part = partsOf(storey)[pick % partsOf(storey).length];
        if (part === undefined) return;
        const asked: Reshape =
          part.part === 'wall'
            ? { ...part, byMm: mm }
            : part.part === 'corner'
              ? { ...part, to: [part.at[0] + mm, part.at[1] - mm / 2] }
              : draggedBy(storey, part, mm);
        const tried = reshapedCopy(job, storey.id, asked);
        expect(JSON.stringify(job)).toBe(before);
        const drawing = drawingOf(job, job.storeys.indexOf(storey));
        expect(tried?.outcome).toEqual(reshape(drawing, asked));
        const places = (all: Pick<Job, 'points' | 'boards'>, storeys: Job['storeys']): string =>
          JSON.stringify(
            [...buildPlan({ ...all, storeys }).positionOfPoint].filter(
              ([, one]) => one.storeyId === storey.id,
            ),
          );
        expect(
          places(
            { points: [...(tried?.plan.pointById.values() ?? [])], boards: [] },
            tried ? [tried.storey] : [],
          ),
        ).toBe(
          places(
            job,
            job.storeys.filter(({ id }) => id === storey.id),
          ).replaceAll(/new0+/g, 'held-'),
        );
        fc.pre(tried?.outcome.ok === true);
        expect(readJob(JSON.parse(JSON.stringify(job))).ok).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('knows what changes nothing, and a storey that is not there', () => {
    expect(isNoChange({ part: 'wall', wallId: 'x', byMm: 0.01 })).toBe(true);
    expect(isNoChange({ part: 'corner', at: [0, 0], to: [0, 1] })).toBe(false);
    expect(
      reshapedCopy(copyOf('saltglass-row'), 'nowhere', { part: 'wall', wallId: 'x', byMm: 1 }),
    ).toBeNull();
  });
});
