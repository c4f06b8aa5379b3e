import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { addStorey, drawRoom, type HouseEdit } from '../../../ui/edits/house.ts';
import { fittedRoom } from '../../../ui/house/fitted-room.ts';
import { freeCorners, type HouseCorner } from '../../../ui/house/house-corners.ts';
import { placeRoom } from '../../../ui/house/place-room.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';
import { wallLengthMm } from '../../../ui/house/wall-line.ts';
import { emptyDrawing, rectangle, sidesMm } from './drawn.ts';

/** The storey above an L: 6 by 4 m below, 2.5 m wide and 3 m further up on its left; its outer walls alone. */
function shell(): { readonly job: Job; readonly storeyId: string } {
  const drawing = emptyDrawing();
  const outline = [
    [0, 0],
    [6000, 0],
    [6000, 4000],
    [2500, 4000],
    [2500, 7000],
    [0, 7000],
  ] as const;
  const room = { id: 'lounge', name: 'Lounge', use: 'living', block: 'main' } as const;
  expect(placeRoom(drawing, { room, outline, walls: usualOuter })).toEqual({ ok: true });
  const made = addStorey(drawing.job, 'First floor', 'outer-walls');
  if (made === null) throw new Error('No storey.');
  return { job: produce(drawing.job, (draft) => made.edit.change(draft)), storeyId: made.storeyId };
}

const drawnIn = (
  { job, storeyId }: ReturnType<typeof shell>,
  corner: HouseCorner,
  [widthMm, depthMm]: readonly [number, number],
  name = 'Bedroom',
): HouseEdit =>
  drawRoom(job, storeyId, {
    name,
    use: 'bedroom',
    outline: rectangle([0, 0], widthMm, depthMm),
    beside: null,
    corner,
    betweenMm: 100,
    walls: usualInner,
  });

const storeyWith = ({ job, storeyId }: ReturnType<typeof shell>, made: HouseEdit): Storey => {
  if (!made.ok) throw new Error(made.why);
  const found = produce(job, (draft) => made.edit.change(draft)).storeys.find(({ id }) => id === storeyId);
  if (found === undefined) throw new Error('No storey.');
  return found;
};

/** How much of walls that are not a room's own lies in the room, mm² by places 10 mm apart along them: no polygon is clipped. */
function throughMm2(storey: Storey, name: string): number {
  const room = storey.rooms.find((one) => one.name === name);
  if (room === undefined) throw new Error('No room.');
  const outline = roomSides(storey, room).map(({ from: [x, y] }) => planPoint(x, y));
  const own = new Set(room.walls.map(({ wall }) => wall));
  let most = 0;
  for (const wall of storey.walls.filter(({ id }) => !own.has(id))) {
    const steps = Math.floor(wallLengthMm(wall) / 10);
    let within = 0;
    for (let i = 0; i < steps; i += 1) {
      const share = (i + 0.5) / steps;
      const at = planPoint(
        wall.from[0] + (wall.to[0] - wall.from[0]) * share,
        wall.from[1] + (wall.to[1] - wall.from[1]) * share,
      );
      if (isInside(outline, at)) within += 10;
    }
    most = Math.max(most, within * wall.thicknessMm);
  }
  return most;
}

describe('a room on a storey of which the outer walls were copied', () => {
  it('is refused where an outer wall would run through it, with what it is and by how much', () => {
    const house = shell();
    const made = drawnIn(house, 'lower-left', [3500, 5000]);
    expect(made).toMatchObject({
      ok: false,
      why: 'An outer wall that is drawn already would run through Bedroom, 700 mm within its upper side: make the room 1000 mm less there, or begin it elsewhere.',
      cut: { side: 'upper', byMm: 1000 },
    });
    if (made.ok) throw new Error('It stands across the wall.');
    const [along, away] = fittedRoom({ alongMm: 3500, awayMm: 5000, inMm: 0 }, made, null);
    expect([along, away]).toEqual([
      { alongMm: 2500, awayMm: 5000, inMm: 0 },
      { alongMm: 3500, awayMm: 4000, inMm: 0 },
    ]);
    expect(
      sidesMm(storeyWith(house, drawnIn(house, 'lower-left', [3500, 4000])), 'Bedroom').toSorted(),
    ).toEqual([3500, 3500, 4000, 4000]);
    expect(fittedRoom({ alongMm: 600, awayMm: 900, inMm: 0 }, made, 'left')).toEqual([]);
    expect(fittedRoom({ alongMm: 600, awayMm: 900, inMm: 0 }, { cut: null }, 'left')).toEqual([]);
  });

  it('has no wall running through it wherever it is accepted, and fits once it is less by what was told (random)', () => {
    let [accepted, fitted] = [0, 0];
    fc.assert(
      fc.property(
        fc.constantFrom<HouseCorner>('lower-left', 'lower-right', 'upper-left'),
        fc.integer({ min: 800, max: 5800 }),
        fc.integer({ min: 800, max: 6800 }),
        (corner, widthMm, depthMm) => {
          const house = shell();
          const made = drawnIn(house, corner, [widthMm, depthMm]);
          if (made.ok) {
            accepted += 1;
            expect(throughMm2(storeyWith(house, made), 'Bedroom')).toBeLessThanOrEqual(65_000);
            return;
          }
          fc.pre(made.cut != null);
          const rooms = fittedRoom({ alongMm: widthMm, awayMm: depthMm, inMm: 0 }, made, null);
          fc.pre(rooms.length === 2);
          const fits = rooms.filter(({ alongMm, awayMm }) => drawnIn(house, corner, [alongMm, awayMm]).ok);
          if (fits.length > 0) fitted += 1;
        },
      ),
      { numRuns: 60 },
    );
    expect(accepted).toBeGreaterThan(5);
    expect(fitted).toBeGreaterThan(0);
  });

  it('is offered each corner in which walls meet and no room is, for the first and for each after it', () => {
    const house = shell();
    const empty = house.job.storeys.find(({ id }) => id === house.storeyId);
    if (empty === undefined) throw new Error('No storey.');
    // In the upper right there is no house.
    expect(freeCorners(empty)).toEqual(['lower-left', 'lower-right', 'upper-left']);
    const first = drawnIn(house, 'lower-left', [3000, 3000], 'Bedroom');
    if (!first.ok) throw new Error(first.why);
    const once = { ...house, job: produce(house.job, (draft) => first.edit.change(draft)) };
    const storey = storeyWith(house, first);
    expect(freeCorners(storey)).toEqual(['lower-right', 'upper-left']);
    const second = storeyWith(once, drawnIn(once, 'lower-right', [2000, 2500], 'Study'));
    const study = second.rooms.find(({ name }) => name === 'Study');
    const sides = study === undefined ? [] : roomSides(second, study);
    expect(Math.max(...sides.map(({ from }) => from[0]))).toBeCloseTo(6000, 1);
    expect(Math.min(...sides.map(({ from }) => from[1]))).toBeCloseTo(0, 1);
    expect(freeCorners(second)).toEqual(['upper-left']);
  });
});
