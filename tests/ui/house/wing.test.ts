import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Storey, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { addStorey, drawRoom } from '../../../ui/edits/house.ts';
import { freeWalls, hasShell } from '../../../ui/house/free-walls.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';
import { emptyDrawing, rectangle, sidesMm } from './drawn.ts';

type Told = readonly [name: string, widthMm: number, depthMm: number, where: string | null];

const groundOf = ({ storeys: [storey] }: Job): Storey => {
  if (storey === undefined) throw new Error('No storey.');
  return storey;
};

/** Draws rooms one after another as a person tells them, each in line with the first end of its wall. */
function drawn(rooms: readonly Told[]): Job {
  let { job } = emptyDrawing();
  for (const [name, widthMm, depthMm, where] of rooms) {
    const storey = groundOf(job);
    const wall = freeWalls(storey).find(({ words }) => words === where);
    const made = drawRoom(job, storey.id, {
      name,
      use: 'hall',
      outline: rectangle([0, 0], widthMm, depthMm),
      beside: wall === undefined ? null : { ...wall, from: wall.ends[0]?.from ?? 'left', inMm: 0 },
      betweenMm: 100,
      walls: hasShell(storey) ? usualInner : usualOuter,
    });
    if (!made.ok) throw new Error(made.why);
    job = produce(job, (draft) => made.edit.change(draft));
  }
  return job;
}

const wallOf = (storey: Storey, room: string, at: (wall: Wall) => boolean): Wall => {
  const ids = new Set(storey.rooms.find(({ name }) => name === room)?.walls.map(({ wall }) => wall));
  const found = storey.walls.find((wall) => ids.has(wall.id) && at(wall));
  if (found === undefined) throw new Error(`No such wall of ${room}.`);
  return found;
};
const isUpright = ({ from, to }: Wall): boolean => from[0] === to[0];
const highest = ({ from, to }: Wall): number => Math.max(from[1], to[1]);

describe('a wing, its wall in line with one between rooms', () => {
  const house = drawn([
    ['Hall', 1800, 4300, null],
    ['Living room', 4300, 3700, 'right of Hall'],
    ['Kitchen', 1800, 3000, 'above Hall'],
  ]);
  const storey = groundOf(house);

  it('has outer walls on its three sides, and every room its measures', () => {
    const right = wallOf(storey, 'Kitchen', (wall) => isUpright(wall) && wall.from[0] > 1000);
    expect(right.external).toBe(true);
    expect(storey.walls.filter(({ external }) => external)).toHaveLength(8);
    expect(sidesMm(storey, 'Hall').toSorted()).toEqual([1800, 1800, 4300, 4300]);
    expect(sidesMm(storey, 'Living room').toSorted()).toEqual([3700, 3700, 4300, 4300]);
    expect(sidesMm(storey, 'Kitchen').toSorted()).toEqual([1800, 1800, 3000, 3000]);
  });

  it('leaves the outer wall of the room beside it as thick as it was', () => {
    const living = wallOf(storey, 'Living room', (wall) => !isUpright(wall) && highest(wall) > 4000);
    expect(living).toMatchObject({ thicknessMm: usualOuter.thicknessMm, external: true });
  });

  it('is copied to the storey above with all of its outer walls', () => {
    const made = addStorey(house, 'First floor', 'outer-walls');
    if (made === null) throw new Error('No storey.');
    const above = produce(house, (draft) => made.edit.change(draft)).storeys.find(
      ({ id }) => id === made.storeyId,
    );
    expect(above?.walls).toHaveLength(8);
  });
});

describe('a room along all of a wall', () => {
  it('has the wall between as thick as it was told', () => {
    const storey = groundOf(
      drawn([
        ['Hall', 1800, 4300, null],
        ['Kitchen', 1800, 3000, 'above Hall'],
      ]),
    );
    const between = wallOf(storey, 'Kitchen', (wall) => !isUpright(wall) && highest(wall) < 5000);
    expect(between.thicknessMm).toBe(100);
    expect(sidesMm(storey, 'Hall').toSorted()).toEqual([1800, 1800, 4300, 4300]);
  });
});
