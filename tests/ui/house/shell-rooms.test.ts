import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { addStorey, drawRoom, type HouseEdit } from '../../../ui/edits/house.ts';
import { fittedRoom } from '../../../ui/house/fitted-room.ts';
import { firstCorner, freeCorners } from '../../../ui/house/house-corners.ts';
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
  words: string,
  [widthMm, depthMm]: readonly [number, number],
  name = 'Bedroom',
): HouseEdit => {
  const storey = job.storeys.find(({ id }) => id === storeyId);
  const corner = storey && freeCorners(storey).find((one) => one.words === words);
  if (corner === undefined) throw new Error(`No corner ${words}.`);
  return drawRoom(job, storeyId, {
    name,
    use: 'bedroom',
    outline: rectangle([0, 0], widthMm, depthMm),
    beside: null,
    corner,
    betweenMm: 100,
    walls: usualInner,
  });
};

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

const [left, right] = ['upper right, the left one', 'upper right, the right one'];
const wordsOf = (storey: Storey): readonly string[] => freeCorners(storey).map(({ words }) => words);

describe('a room on a storey of which the outer walls were copied', () => {
  it('is refused where an outer wall would run through it, with what it is and by how much', () => {
    const house = shell();
    const made = drawnIn(house, 'lower left', [3500, 5000]);
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
      sidesMm(storeyWith(house, drawnIn(house, 'lower left', [3500, 4000])), 'Bedroom').toSorted(),
    ).toEqual([3500, 3500, 4000, 4000]);
    expect(fittedRoom({ alongMm: 600, awayMm: 900, inMm: 0 }, made, 'left')).toEqual([]);
    expect(fittedRoom({ alongMm: 600, awayMm: 900, inMm: 0 }, { cut: null }, 'left')).toEqual([]);
  });

  it('has no wall running through it wherever it is accepted, and fits once it is less by what was told (random)', () => {
    let [accepted, fitted] = [0, 0];
    fc.assert(
      fc.property(
        fc.constantFrom('lower left', 'lower right', 'upper left', left, right),
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
    // In the upper right of the whole there is no house, but each arm of the L ends in one; where they part there is none.
    expect(wordsOf(empty)).toEqual(['lower left', 'lower right', 'upper left', left, right]);
    const first = drawnIn(house, 'lower left', [3000, 3000], 'Bedroom');
    if (!first.ok) throw new Error(first.why);
    const once = { ...house, job: produce(house.job, (draft) => first.edit.change(draft)) };
    const storey = storeyWith(house, first);
    expect(wordsOf(storey)).toEqual(['lower right', 'upper left', left, right]);
    const second = storeyWith(once, drawnIn(once, 'lower right', [2000, 2500], 'Study'));
    const study = second.rooms.find(({ name }) => name === 'Study');
    const sides = study === undefined ? [] : roomSides(second, study);
    expect(Math.max(...sides.map(({ from }) => from[0]))).toBeCloseTo(6000, 1);
    expect(Math.min(...sides.map(({ from }) => from[1]))).toBeCloseTo(0, 1);
    expect(wordsOf(second)).toEqual(['upper left', left, right]);
  });

  it('goes into the corner of either arm of an L, against both its walls', () => {
    const house = shell();
    const places = [left, right].map((corner) => {
      const storey = storeyWith(house, drawnIn(house, corner, [1800, 2000]));
      const [room] = storey.rooms;
      const sides = room === undefined ? [] : roomSides(storey, room);
      return [0, 1].map((axis) => Math.round(Math.max(...sides.map(({ from }) => from[axis as 0 | 1]))));
    });
    expect(places).toEqual([
      [2500, 7000],
      [6000, 4000],
    ]);
  });

  it('has a place also where no two of the outer walls meet square', () => {
    const { job } = shell();
    const slanted = job.storeys[0]?.walls.slice(0, 3) ?? [];
    const walls = slanted.map((wall, i) => ({
      ...wall,
      from: [
        [0, 0],
        [4000, 500],
        [1500, 3500],
      ][i] as [number, number],
      to: [
        [4000, 500],
        [1500, 3500],
        [0, 0],
      ][i] as [number, number],
    }));
    expect(freeCorners({ walls, rooms: [] })).toEqual([]);
    const halfMm = (walls[0]?.thicknessMm ?? 0) / 2;
    expect(firstCorner({ walls, rooms: [] }).at).toEqual([halfMm, halfMm]);
  });
});
