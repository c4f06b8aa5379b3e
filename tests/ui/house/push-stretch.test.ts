import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Side, Storey } from '#model/building.ts';
import { readJob } from '#model/read-job.ts';
import type { Drawing } from '../../../ui/house/drawing.ts';
import { lengthTyped, partLengths } from '../../../ui/house/part-lengths.ts';
import { placeRoom } from '../../../ui/house/place-room.ts';
import { pushStretch } from '../../../ui/house/push-stretch.ts';
import { partAfter, reshape } from '../../../ui/house/reshape.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { faceOfWall, firstFace, otherFace, tappedMark, withMark } from '../../../ui/house/stretch-marks.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { drawingOf, emptyDrawing, rectangle } from './drawn.ts';

const THICK_MM = usualOuter.thicknessMm;

/** A room of 4 by 3 m inside, and one of 3 by 3 m to its right where that is asked for. */
function house(withSecond = false): Drawing {
  const drawing = emptyDrawing();
  const draw = (name: string, x: number, widthMm: number) => {
    const room = { id: name.toLowerCase(), name, use: 'living', block: 'main' } as const;
    const outline = rectangle([x, 0], widthMm, 3000);
    expect(placeRoom(drawing, { room, outline, walls: usualOuter })).toEqual({ ok: true });
  };
  draw('Lounge', 0, 4000);
  if (withSecond) draw('Kitchen', 4000 + THICK_MM, 3000);
  return drawing;
}

/** The area of an inner outline by the shoelace formula, written out here anew, mm². Source: Meister 1769, Generalia de genesi figurarum planarum; from memory. */
function shoelaceMm2(storey: Storey, roomName: string): number {
  const room = storey.rooms.find(({ name }) => name === roomName);
  if (room === undefined) throw new Error(`There is no ${roomName}.`);
  const corners = roomSides(storey, room).map(({ from }) => from);
  let doubled = 0;
  corners.forEach(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [x, y];
    doubled += x * nextY - nextX * y;
  });
  return doubled / 2;
}

/** The wall of the room on its upper side, and the face that looks into the room. */
function upperWall(storey: Storey, roomName = 'Lounge'): { readonly wallId: string; readonly side: Side } {
  const room = storey.rooms.find(({ name }) => name === roomName);
  const side = room && roomSides(storey, room)[2];
  const [face] = side?.walls ?? [];
  if (face === undefined) throw new Error('No upper wall.');
  return face;
}

/** To the wall's left is out of the room on its right. */
const outOf = (side: Side, mm: number): number => (side === 'left' ? -mm : mm);

describe('a stretch of a wall that is pushed', () => {
  it('makes the room larger or smaller by what is between the marks, whichever way (random, against the shoelace)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 400, max: 1800 }),
        fc.integer({ min: 750, max: 1400 }),
        fc.oneof(fc.integer({ min: -1500, max: -60 }), fc.integer({ min: 60, max: 3000 })),
        (from, width, outMm) => {
          const drawing = house();
          const { storey } = drawing;
          const face = upperWall(storey);
          const { lowMm } = faceOfWall(storey, face);
          const before = shoelaceMm2(storey, 'Lounge');
          expect(before).toBeCloseTo(4000 * 3000, 0);
          const marks = [lowMm + from, lowMm + from + width] as const;
          const outcome = pushStretch(drawing, { ...face, marks, byMm: outOf(face.side, outMm) });
          expect(outcome).toEqual({ ok: true });
          expect(shoelaceMm2(storey, 'Lounge')).toBeCloseTo(before + width * outMm, -1);
          const sides = roomSides(storey, storey.rooms[0] as Storey['rooms'][number]);
          expect(sides).toHaveLength(8);
          // What is between the marks is as wide inside as the marks are apart.
          expect(sides.map(({ lengthMm }) => Math.round(lengthMm))).toContain(width);
          expect(readJob(JSON.parse(JSON.stringify(drawing.job))).ok).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('takes from the room behind what it gives to this one, and as much again for the walls that lead back', () => {
    const drawing = house(true);
    const { storey } = drawing;
    const kitchen = storey.rooms.find(({ name }) => name === 'Kitchen');
    const left = kitchen && roomSides(storey, kitchen)[3];
    const [face] = left?.walls ?? [];
    if (face === undefined) throw new Error('No wall between.');
    const [lounge, kitchenArea] = ['Lounge', 'Kitchen'].map((name) => shoelaceMm2(storey, name)) as [
      number,
      number,
    ];
    const { lowMm } = faceOfWall(storey, face);
    const asked = { ...face, marks: [lowMm + 900, lowMm + 2100] as const, byMm: outOf(face.side, 500) };
    expect(pushStretch(drawing, asked)).toEqual({ ok: true });
    expect(shoelaceMm2(storey, 'Kitchen') - kitchenArea).toBeCloseTo(1200 * 500, 0);
    expect(shoelaceMm2(storey, 'Lounge') - lounge).toBeCloseTo(-(1200 + 2 * THICK_MM) * 500, 0);
  });

  it('slides along the wall that stands in its corner: an L of six sides', () => {
    const drawing = house();
    const { storey } = drawing;
    const face = upperWall(storey);
    const { lowMm, highMm } = faceOfWall(storey, face);
    const walls = storey.walls.length;
    const asked = { ...face, marks: [lowMm, lowMm + 1500] as const, byMm: outOf(face.side, 2000) };
    expect(pushStretch(drawing, asked)).toEqual({ ok: true });
    expect(highMm - lowMm).toBeCloseTo(4000, 6);
    const sides = roomSides(storey, storey.rooms[0] as Storey['rooms'][number]);
    expect(sides.map(({ lengthMm }) => Math.round(lengthMm)).toSorted((a, b) => a - b)).toEqual([
      1500, 2000, 2500, 3000, 4000, 5000,
    ]);
    // The one that leads back, and the two halves of the one that was.
    expect(storey.walls).toHaveLength(walls + 2);
    expect(shoelaceMm2(storey, 'Lounge')).toBeCloseTo(4000 * 3000 + 1500 * 2000, 0);
  });

  it('takes what is on it along, and leaves what is beside it where it is', () => {
    const job = structuredClone(demoJob('saltglass-row'));
    const drawing = drawingOf(job);
    const { storey } = drawing;
    const placesOf = () => {
      const plan = buildPlan({ storeys: job.storeys, points: job.points, boards: job.boards });
      return new Map([...plan.positionOfPoint].map(([id, { at }]) => [id, at] as const));
    };
    const found = job.points.flatMap(({ id, place }) =>
      place !== undefined && 'wall' in place && storey.walls.some((wall) => wall.id === place.wall)
        ? [{ id, ...place }]
        : [],
    );
    let moved = 0;
    for (const point of found) {
      const copy = drawingOf(structuredClone(job));
      const before = placesOf();
      const asked = {
        wallId: point.wall,
        side: point.side,
        marks: [point.alongMm - 300, point.alongMm + 300] as const,
        byMm: outOf(point.side, -200),
      };
      if (!pushStretch(copy, asked).ok) continue;
      const plan = buildPlan({ storeys: copy.job.storeys, points: copy.job.points, boards: copy.job.boards });
      for (const [id, was] of before) {
        const now = plan.positionOfPoint.get(id)?.at ?? [0, 0];
        const far = Math.hypot(now[0] - was[0], now[1] - was[1]);
        if (id === point.id) expect(far).toBeCloseTo(200, 0);
        const other = found.find((one) => one.id === id);
        if (other === undefined || other.wall !== point.wall || Math.abs(other.alongMm - point.alongMm) > 700)
          expect(far).toBeLessThan(0.2);
      }
      moved += 1;
    }
    expect(moved).toBeGreaterThan(3);
  });

  it('is refused through an opening, beside the end of the wall, and for marks that are one', () => {
    const drawing = house();
    const { storey } = drawing;
    const face = upperWall(storey);
    const wall = storey.walls.find(({ id }) => id === face.wallId);
    const { lowMm } = faceOfWall(storey, face);
    wall?.openings.push({ id: 'o', kind: 'window', alongMm: 1400, widthMm: 900, sillMm: 900, headMm: 2100 });
    const push = (a: number, b: number, out = 500) =>
      pushStretch(drawing, { ...face, marks: [a, b], byMm: outOf(face.side, out) });
    expect(push(1000, 2000)).toMatchObject({ ok: false, why: expect.stringContaining('a window is there') });
    expect(push(lowMm + 30, 1000)).toMatchObject({
      ok: false,
      why: expect.stringContaining('too near the end'),
    });
    expect(push(3000, 3010, -500)).toMatchObject({
      ok: false,
      why: expect.stringContaining('too near each other'),
    });
    expect(push(lowMm + 400, lowMm + 600, 3000).ok).toBe(true);
    expect(pushStretch(drawing, { ...face, wallId: 'nowhere', marks: [0, 1], byMm: 1 })).toMatchObject({
      ok: false,
    });
  });

  it('becomes the wall in hand, which goes on by itself', () => {
    const drawing = house();
    const { storey } = drawing;
    const before = structuredClone(storey);
    const face = upperWall(storey);
    const { lowMm } = faceOfWall(storey, face);
    const asked = {
      part: 'stretch',
      ...face,
      marks: [lowMm + 1000, lowMm + 2500],
      byMm: outOf(face.side, 400),
    } as const;
    expect(reshape(drawing, asked)).toEqual({ ok: true });
    const held = partAfter(asked, before, storey);
    if (held.part !== 'wall') throw new Error('No wall in hand.');
    expect(reshape(drawing, { ...held, byMm: outOf(face.side, 350) })).toEqual({ ok: true });
    expect(shoelaceMm2(storey, 'Lounge')).toBeCloseTo(4000 * 3000 + 1500 * 750, 0);
  });
});

describe('marks on a wall', () => {
  it('are typed from the corners on both hands, and read back as typed (random)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1900 }),
        fc.integer({ min: 0, max: 1900 }),
        fc.nat(3),
        (left, right, at) => {
          const { storey } = house();
          const [room] = storey.rooms;
          const side = room && roomSides(storey, room)[at];
          const [face] = side?.walls ?? [];
          if (face === undefined || side === undefined) throw new Error('No side.');
          const first = lengthTyped(
            storey,
            { part: 'stretch', ...face, marks: [] },
            { id: 'left', mm: left },
          );
          if (first.do !== 'part') throw new Error('Not marked.');
          const second = lengthTyped(storey, first.part, {
            id: 'right',
            mm: Math.min(right, side.lengthMm - left - 1),
          });
          if (second.do !== 'part') throw new Error('Not marked.');
          const told = partLengths(storey, second.part);
          expect(told.map(({ id }) => id)).toEqual(['left', 'right', 'out', 'in']);
          expect(told[0]?.lengthMm).toBeCloseTo(left, 4);
          expect(told[1]?.lengthMm).toBeCloseTo(Math.min(right, side.lengthMm - left - 1), 4);
          const pushed = lengthTyped(storey, second.part, { id: 'out', mm: 250 });
          expect(pushed).toMatchObject({
            do: 'reshape',
            asked: { part: 'stretch', byMm: outOf(face.side, 250) },
          });
          const beyond = lengthTyped(storey, first.part, { id: 'left', mm: side.lengthMm + 5 });
          expect(beyond).toMatchObject({ do: 'nothing' });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('come to rest in corners and beside openings, else by steps; a third moves the nearer', () => {
    const { storey } = house();
    const face = upperWall(storey);
    const wall = storey.walls.find(({ id }) => id === face.wallId);
    if (wall === undefined) throw new Error('No wall.');
    wall.openings.push({ id: 'o', kind: 'window', alongMm: 1403, widthMm: 900, sillMm: 900, headMm: 2100 });
    const { lowMm, highMm } = faceOfWall(storey, face);
    const at = (mm: number) => {
      const share = mm / Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
      return [
        wall.from[0] + (wall.to[0] - wall.from[0]) * share,
        wall.from[1] + (wall.to[1] - wall.from[1]) * share,
      ] as const;
    };
    expect(tappedMark(storey, face, at(lowMm + 60), 80)).toBeCloseTo(lowMm, 6);
    expect(tappedMark(storey, face, at(1380), 80)).toBe(1403);
    // No part of a wall ends in a window.
    expect(tappedMark(storey, face, at(1700), 20)).toBe(1403);
    expect(tappedMark(storey, face, at(2000), 20)).toBe(2303);
    const stepped = tappedMark(storey, face, at(3012), 20);
    expect(Math.abs((highMm - stepped) / 50 - Math.round((highMm - stepped) / 50))).toBeLessThan(1e-6);
    expect(Math.abs(stepped - 3012)).toBeLessThanOrEqual(25);
    expect(withMark([], 5)).toEqual([5]);
    expect(withMark([5], 900)).toEqual([5, 900]);
    expect(withMark([5, 900], 700)).toEqual([5, 700]);
    expect(withMark([5, 900], 100)).toEqual([100, 900]);
  });

  it('are told from the room on either side', () => {
    const { storey } = house(true);
    const kitchen = storey.rooms.find(({ name }) => name === 'Kitchen');
    const wallId = (kitchen && roomSides(storey, kitchen)[3])?.walls[0]?.wallId ?? '';
    const first = firstFace(storey, wallId);
    const other = otherFace(storey, first);
    if (other === null) throw new Error('No other side.');
    expect([faceOfWall(storey, first).room, faceOfWall(storey, other).room].toSorted()).toEqual([
      'Kitchen',
      'Lounge',
    ]);
    const outer = upperWall(storey);
    expect(firstFace(storey, outer.wallId)).toEqual(outer);
    expect(otherFace(storey, outer)).toBeNull();
    expect(usualInner.thicknessMm).toBeLessThan(THICK_MM);
  });
});
