import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fixture, Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { alongSide, boxAlong, roomHolding } from '../../../ui/house/along-side.ts';
import {
  corneredFixture,
  draggedFixture,
  fixtureStand,
  steppedFixture,
  whyNotThere,
} from '../../../ui/house/fixture-place.ts';
import { lengthTyped, partLengths } from '../../../ui/house/part-lengths.ts';
import { pulled, steppedByKey } from '../../../ui/house/pulled.ts';
import { reshape } from '../../../ui/house/reshape.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import type { Vector } from '../../../ui/house/vector.ts';
import { wallMap } from '../../../ui/house/wall-map.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { drawingOf } from './drawn.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const copyOf = (name: (typeof names)[number]): Job => structuredClone(demoJob(name));

/** The ground floor of a demo job with a hob 600 by 520 against a side of one of its rooms. */
function withHob(roomName = 'Dining room', at = 0, leftMm = 500): { storey: Storey; hob: Fixture; job: Job } {
  const job = copyOf('saltglass-row');
  const [storey] = job.storeys;
  const room = storey?.rooms.find(({ name }) => name === roomName);
  const side = storey && room && roomSides(storey, room)[at];
  if (storey === undefined || side === undefined) throw new Error('No side.');
  storey.fixtures = [];
  const hob: Fixture = {
    id: 'hob',
    kind: 'hob',
    outline: boxAlong(side, { leftMm, offMm: 0, widthMm: 600, depthMm: 520 }),
    certainty: { outline: 'assumed' },
  };
  storey.fixtures.push(hob);
  return { storey, hob, job };
}

const sidesOf = (outline: readonly Vector[]): readonly number[] =>
  outline
    .map(([x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length] ?? [x, y];
      return Math.hypot(nextX - x, nextY - y);
    })
    .toSorted((a, b) => a - b);

describe('a fixture that is dragged', () => {
  it('keeps its size and, near a wall of its room, stands against it, between its corners (random)', () => {
    const any = fc.integer({ min: -4000, max: 4000 });
    let against = 0;
    fc.assert(
      fc.property(any, any, fc.integer({ min: 20, max: 300 }), (x, y, reachMm) => {
        const { storey, hob } = withHob();
        const map = wallMap(storey);
        const to = draggedFixture(storey, hob, { by: [x, y], reachMm }, map);
        sidesOf(to).forEach((mm, i) => {
          expect(mm).toBeCloseTo(sidesOf(hob.outline)[i] ?? 0, 0);
        });
        const middle: Vector = [
          hob.outline.reduce((sum, at) => sum + at[0] / 4, x),
          hob.outline.reduce((sum, at) => sum + at[1] / 4, y),
        ];
        const room = roomHolding(storey, [middle], map);
        if (room === null) return;
        // How near its back would be, turned to the nearest wall: in a room without a corner that points inwards, to the nearest line.
        const sides = roomSides(storey, room, map);
        fc.pre(sides.length === 4);
        const offMm = Math.min(...sides.map((side) => alongSide(side, [middle]).offMm)) - 260;
        fc.pre(Math.abs(offMm - reachMm) > 1 && Math.min(...sides.map(({ lengthMm }) => lengthMm)) > 700);
        if (offMm > reachMm) return;
        const stand = fixtureStand(storey, to, map);
        against += 1;
        expect(stand?.box.offMm).toBeCloseTo(0, 0);
        expect(stand?.box.leftMm).toBeGreaterThanOrEqual(-0.3);
        expect((stand?.box.leftMm ?? 0) + (stand?.box.widthMm ?? 0)).toBeLessThanOrEqual(
          (stand?.side.lengthMm ?? 0) + 0.3,
        );
      }),
      { numRuns: 150 },
    );
    expect(against).toBeGreaterThan(15);
  });

  it('is turned with the wall that it comes to, stops in its corner and beside what stands there', () => {
    const { storey, hob } = withHob();
    const map = wallMap(storey);
    const sides = fixtureStand(storey, hob.outline, map)?.sides ?? [];
    sides.forEach((side, at) => {
      const want = boxAlong(side, { leftMm: side.lengthMm / 2 - 300, offMm: 15, widthMm: 600, depthMm: 520 });
      const middle = (outline: readonly Vector[]): Vector => [
        outline.reduce((sum, [x]) => sum + x / outline.length, 0),
        outline.reduce((sum, [, y]) => sum + y / outline.length, 0),
      ];
      const [from, to] = [middle(hob.outline), middle(want)];
      const moved = draggedFixture(storey, hob, { by: [to[0] - from[0], to[1] - from[1]], reachMm: 60 }, map);
      expect(fixtureStand(storey, moved, map)?.at).toBe(at);
      expect(alongSide(side, moved)).toMatchObject({ offMm: 0, widthMm: 600, depthMm: 520 });
    });
    const [side] = sides;
    if (side === undefined) throw new Error('No side.');
    storey.fixtures.push({
      id: 'sink',
      kind: 'sink',
      outline: boxAlong(side, { leftMm: 1300, offMm: 0, widthMm: 500, depthMm: 500 }),
    });
    const way = [(side.from[0] - side.to[0]) / side.lengthMm, (side.from[1] - side.to[1]) / side.lengthMm];
    const by = (mm: number): Vector => [(way[0] ?? 0) * mm, (way[1] ?? 0) * mm];
    const dragged = (mm: number) =>
      alongSide(side, draggedFixture(storey, hob, { by: by(mm), reachMm: 60 }, map));
    expect(dragged(170).leftMm).toBeCloseTo(700, 1);
    expect(dragged(-460).leftMm).toBeCloseTo(0, 1);
    expect(dragged(-1460).leftMm).toBeCloseTo(0, 1);
    expect(dragged(-123).leftMm).toBeCloseTo(380, 1);
  });

  it('goes by whole steps out in the room, and freely where there is no room', () => {
    const { storey, hob } = withHob();
    const map = wallMap(storey);
    const stand = fixtureStand(storey, hob.outline, map);
    if (stand === null) throw new Error('No stand.');
    const { side } = stand;
    const into = [-(side.to[1] - side.from[1]) / side.lengthMm, (side.to[0] - side.from[0]) / side.lengthMm];
    const by: Vector = [(into[0] ?? 0) * 333, (into[1] ?? 0) * 333];
    const island = alongSide(side, draggedFixture(storey, hob, { by, reachMm: 40 }, map));
    expect([island.leftMm, island.offMm]).toEqual([500, 350]);
    const outside = { ...hob, outline: hob.outline.map(([x, y]): [number, number] => [x - 50_000, y]) };
    const moved = draggedFixture(storey, outside, { by: [12.34, -7], reachMm: 40 }, map);
    expect(moved[0]?.[0]).toBeCloseTo((outside.outline[0]?.[0] ?? 0) + 12.3, 1);
    expect(fixtureStand(storey, outside.outline, map)).toBeNull();
  });

  it('is refused in a wall, and marked as measured only where a length was typed', () => {
    const { storey, hob, job } = withHob();
    const map = wallMap(storey);
    expect(whyNotThere(storey, hob.outline)).toBeNull();
    const stand = fixtureStand(storey, hob.outline, map);
    if (stand === null) throw new Error('No stand.');
    const inWall = boxAlong(stand.side, { leftMm: 500, offMm: -80, widthMm: 600, depthMm: 520 });
    expect(whyNotThere(storey, inWall)).toBe('It would stand in a wall.');
    const part = { part: 'fixture', fixtureId: 'hob' } as const;
    const dragged = pulled(storey, { part, by: [100, 100], reachMm: 80 }, map);
    if (dragged === null) throw new Error('Not dragged.');
    const drawing = drawingOf(job);
    expect(reshape(drawing, dragged.asked)).toEqual({ ok: true });
    expect(storey.fixtures[0]?.certainty).toEqual({ outline: 'assumed' });
    const typed = lengthTyped(storey, part, { id: 'right', mm: 250 });
    if (typed.do !== 'reshape') throw new Error('Not moved.');
    expect(reshape(drawing, typed.asked)).toEqual({ ok: true });
    expect(storey.fixtures[0]?.certainty).toBeUndefined();
    expect(partLengths(storey, part)[1]?.lengthMm).toBeCloseTo(250, 0);
    expect(lengthTyped(storey, part, { id: 'left', mm: 90_000 })).toMatchObject({ do: 'nothing' });
  });
});

describe('a fixture that is moved by keys', () => {
  it('goes along its wall and off it by steps, and stops at corners (random)', () => {
    const keys = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'] as const;
    fc.assert(
      fc.property(
        fc.nat(3),
        fc.array(fc.tuple(fc.constantFrom(...keys), fc.constantFrom(10, 100)), { maxLength: 25 }),
        (at, presses) => {
          const { storey, hob } = withHob('Dining room', at, 300);
          const map = wallMap(storey);
          const part = { part: 'fixture', fixtureId: 'hob' } as const;
          let before: Parameters<typeof steppedByKey>[1] = { part, by: [0, 0], asked: null };
          for (const [key, mm] of presses) {
            const step = steppedByKey(storey, before, [key, mm], map);
            if (step === null || step.asked.part !== 'fixture') throw new Error('No step.');
            before = { part, by: step.by, asked: step.asked };
            expect(roomHolding(storey, step.asked.to, map)?.name).toBe('Dining room');
            sidesOf(step.asked.to).forEach((side, i) => {
              expect(side).toBeCloseTo(sidesOf(hob.outline)[i] ?? 0, 0);
            });
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('goes round the corner when it stands in it', () => {
    const { storey, hob } = withHob();
    const map = wallMap(storey);
    const stand = fixtureStand(storey, hob.outline, map);
    if (stand === null) throw new Error('No stand.');
    const once = corneredFixture(storey, hob.outline, 'left', map);
    expect(alongSide(stand.side, once)).toMatchObject({ leftMm: 0, offMm: 0 });
    const next = stand.sides[(stand.at + 1) % stand.sides.length];
    const twice = corneredFixture(storey, once, 'left', map);
    if (next === undefined) throw new Error('No next side.');
    expect(alongSide(next, twice).leftMm + 600).toBeCloseTo(next.lengthMm, 0);
    expect(alongSide(next, twice).offMm).toBeCloseTo(0, 0);
    const way: Vector = [1, 0];
    expect(steppedFixture(storey, hob.outline, [way, 0], map)).toHaveLength(4);
  });
});
