import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import type { Drawing, Outcome } from '../../../ui/house/drawing.ts';
import { placeRoom } from '../../../ui/house/place-room.ts';
import type { Vector } from '../../../ui/house/vector.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';
import { areaM2, emptyDrawing, rectangle, sidesMm } from './drawn.ts';

const place = (drawing: Drawing, name: string, outline: readonly Vector[], walls = usualInner): Outcome =>
  placeRoom(drawing, {
    room: {
      id: `room-${name.toLowerCase().padEnd(5, 'x')}`.slice(0, 10),
      name,
      use: 'living',
      block: 'main',
    },
    outline,
    walls,
  });

const faultsOf = ({ job }: Drawing): readonly unknown[] => {
  const read = readJob(JSON.parse(JSON.stringify(job)));
  return read.ok ? [] : read.faults;
};

describe('a room drawn by its inner sides', () => {
  it('has the sides that were measured, whatever its walls', () => {
    const drawing = emptyDrawing();
    expect(place(drawing, 'Hall', rectangle([0, 0], 1800, 4300), usualOuter)).toEqual({ ok: true });
    expect(sidesMm(drawing.storey, 'Hall')).toEqual([1800, 4300, 1800, 4300]);
    expect(drawing.storey.walls.map(({ from }) => from)).toContainEqual([-150, -150]);
    expect(faultsOf(drawing)).toEqual([]);
  });

  it('shares the wall of the room beside it, parted where one of them ends', () => {
    const drawing = emptyDrawing();
    place(drawing, 'Hall', rectangle([0, 0], 2000, 4000));
    expect(place(drawing, 'Lounge', rectangle([2100, 0], 3500, 3000))).toEqual({ ok: true });
    expect(drawing.storey.walls).toHaveLength(8);
    const shared = drawing.storey.walls.filter(({ id }) =>
      drawing.storey.rooms.every(({ walls }) => walls.some(({ wall }) => wall === id)),
    );
    expect(shared).toHaveLength(1);
    expect(shared[0]?.external).toBe(false);
    expect(sidesMm(drawing.storey, 'Hall')).toEqual([2000, 4000, 2000, 4000]);
    expect(sidesMm(drawing.storey, 'Lounge')).toEqual([3500, 3000, 3500, 3000]);
  });

  it('lines up with what is drawn where it was measured a centimetre or two otherwise', () => {
    const drawing = emptyDrawing();
    place(drawing, 'Hall', rectangle([0, 0], 2000, 4000));
    expect(place(drawing, 'Lounge', rectangle([2108, 0], 3500, 4022))).toEqual({ ok: true });
    expect(sidesMm(drawing.storey, 'Lounge')).toEqual([3508, 4000, 3508, 4000]);
    expect(drawing.storey.walls).toHaveLength(7);
  });

  it('takes a wall from three rooms at once, and closes the last gap', () => {
    const drawing = emptyDrawing();
    place(drawing, 'A', rectangle([0, 0], 2000, 2000));
    place(drawing, 'B', rectangle([2100, 0], 2000, 2000));
    expect(place(drawing, 'C', rectangle([0, 2100], 4100, 3000))).toEqual({ ok: true });
    expect(sidesMm(drawing.storey, 'C')).toEqual([4100, 3000, 4100, 3000]);
    expect(drawing.storey.rooms[2]?.walls).toHaveLength(5);
    expect(areaM2(drawing.storey, 'C')).toBeCloseTo(12.3, 6);
  });

  it('may have more than four sides', () => {
    const drawing = emptyDrawing();
    const ell: readonly Vector[] = [
      [0, 0],
      [5000, 0],
      [5000, 2000],
      [3000, 2000],
      [3000, 4000],
      [0, 4000],
    ];
    expect(place(drawing, 'Kitchen', ell)).toEqual({ ok: true });
    expect(sidesMm(drawing.storey, 'Kitchen')).toEqual([5000, 2000, 2000, 2000, 3000, 4000]);
    expect(areaM2(drawing.storey, 'Kitchen')).toBeCloseTo(16, 6);
  });

  it('does not stand in another, and says in which', () => {
    const drawing = emptyDrawing();
    place(drawing, 'Hall', rectangle([0, 0], 2000, 4000));
    expect(place(drawing, 'Store', rectangle([1000, 1000], 2000, 1500))).toEqual({
      ok: false,
      why: 'Hall and Store would stand in each other.',
    });
  });

  it('does not end its wall in a door, and says so', () => {
    const drawing = emptyDrawing();
    place(drawing, 'Hall', rectangle([0, 0], 2000, 4000));
    const right = drawing.storey.walls.find(({ from, to }) => from[0] === 2050 && to[0] === 2050);
    right?.openings.push({
      id: 'door000001',
      kind: 'door',
      alongMm: 1600,
      widthMm: 800,
      sillMm: 0,
      headMm: 2000,
    });
    const outcome = place(drawing, 'Store', rectangle([2100, 0], 2000, 1900));
    expect(outcome).toEqual({ ok: false, why: 'A wall would meet another where a door is there.' });
  });

  it('keeps what was measured, wherever rooms of a random house lie (random)', () => {
    const sizes = fc.integer({ min: 15, max: 60 }).map((dm) => dm * 100);
    fc.assert(
      fc.property(
        fc.array(sizes, { minLength: 2, maxLength: 4 }),
        fc.array(sizes, { minLength: 1, maxLength: 3 }),
        (wide, deep) => {
          const drawing = emptyDrawing();
          const placed: { name: string; sides: readonly number[] }[] = [];
          let y = 0;
          for (const [row, depthMm] of deep.entries()) {
            let x = 0;
            // Every second row begins elsewhere, so that walls meet between each other's ends.
            for (const [column, widthMm] of (row % 2 === 0 ? wide : wide.toReversed()).entries()) {
              const name = `${row}${column}`;
              const outcome = place(drawing, name, rectangle([x, y], widthMm, depthMm));
              expect(outcome).toEqual({ ok: true });
              placed.push({ name, sides: [widthMm, depthMm, widthMm, depthMm] });
              x += widthMm + 100;
            }
            y += depthMm + 100;
          }
          for (const { name, sides } of placed) {
            const off = sidesMm(drawing.storey, name).map((mm, i) => Math.abs(mm - (sides[i] ?? 0)));
            expect(Math.max(...off)).toBeLessThanOrEqual(60);
          }
          expect(faultsOf(drawing)).toEqual([]);
          const ends = drawing.storey.walls.flatMap(({ from, to }) => [from, to]);
          for (const wall of drawing.storey.walls)
            for (const end of ends) expect([wall.id, isInterior(wall, end)]).toEqual([wall.id, false]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** Whether a place lies on a wall well away from both its ends; told by distances alone. */
function isInterior({ from, to }: { readonly from: Vector; readonly to: Vector }, at: Vector): boolean {
  const far = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  return far(from, at) > 12 && far(to, at) > 12 && far(from, at) + far(at, to) - far(from, to) < 0.01;
}
