import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Room } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import {
  addOpening,
  addStorey,
  changeSide,
  changeThickness,
  drawRoom,
  type HouseEdit,
  type NewRoom,
  partRoom,
  removeOpening,
  reshapeHouse,
  setFaceFacts,
  setRoomFact,
  setWallFacts,
  takeRoom,
  uniteRooms,
} from '../../../ui/edits/house.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { besideTap, freeWalls } from '../../../ui/house/free-walls.ts';
import { leftOfOpeningMm, openingPlace } from '../../../ui/house/opening-place.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { nextRoomName } from '../../../ui/house/room-uses.ts';
import { moveForDepth, wallDepths } from '../../../ui/house/wall-depths.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const empty = (): Job =>
  newJob({ reference: 'T', title: 'T', terms: { labour: 'typical', vat: 'standard' } });
const changed = (job: Job, edit: JobEdit): Job => produce(job, (draft) => edit.change(draft));
const done = (job: Job, made: HouseEdit): Job => {
  expect(made).toMatchObject({ ok: true });
  return made.ok ? changed(job, made.edit) : job;
};
const storeyOf = (job: Job, at = 0) => {
  const storey = job.storeys[at];
  if (storey === undefined) throw new Error('The job has no such storey.');
  return storey;
};
const room = (job: Job, name: string, at = 0): Room => {
  const found = storeyOf(job, at).rooms.find((one) => one.name === name);
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found;
};
const sizes = (job: Job, name: string, at = 0): readonly number[] =>
  roomSides(storeyOf(job, at), room(job, name, at)).map(({ lengthMm }) => Math.round(lengthMm));
const faults = (job: Job): readonly unknown[] => {
  const read = readJob(JSON.parse(JSON.stringify(job)));
  return read.ok ? [] : read.faults;
};

/** A room of two sides, beside a wall by its words. */
const asked = (job: Job, name: string, [along, away]: readonly [number, number], where?: string): NewRoom => {
  const wall = freeWalls(storeyOf(job)).find(({ words }) => words === where);
  return {
    name,
    use: 'living',
    outline: [
      [0, 0],
      [along, 0],
      [along, away],
      [0, away],
    ],
    beside: wall === undefined ? null : { ...wall, from: 'right', inMm: 0 },
    betweenMm: 100,
    walls: usualOuter,
  };
};
const draw = (job: Job, ...room: readonly [string, readonly [number, number], string?]): Job =>
  done(job, drawRoom(job, storeyOf(job).id, asked(job, ...room)));

/** A hall, a lounge beside it, a kitchen above both. */
const house = (): Job => {
  const hall = draw(empty(), 'Hall', [1800, 4300]);
  const lounge = draw(hall, 'Lounge', [4300, 3700], 'right of Hall');
  return draw(lounge, 'Kitchen', [5600, 4000], 'above Hall');
};

describe('a house drawn by edits', () => {
  it('has rooms as measured, thin walls between them and thick ones round them', () => {
    const job = house();
    expect([sizes(job, 'Hall'), sizes(job, 'Lounge'), sizes(job, 'Kitchen')]).toEqual([
      [1800, 4300, 1800, 4300],
      [3700, 4300, 3700, 4300],
      [5600, 4000, 5600, 4000],
    ]);
    const walls = storeyOf(job).walls;
    expect(walls.filter(({ external }) => external).every(({ thicknessMm }) => thicknessMm === 300)).toBe(
      true,
    );
    expect(walls.filter(({ external }) => !external).map(({ thicknessMm }) => thicknessMm)).toEqual([
      100, 100, 100,
    ]);
    expect(faults(job)).toEqual([]);
  });

  it('fits a room between walls copied from below, from either end of the wall it stands beside', () => {
    const ground = draw(draw(empty(), 'Hall', [4200, 3700]), 'Kitchen', [2600, 2900], 'above Hall');
    const made = addStorey(ground, 'First floor', 'outer-walls');
    if (made === null) throw new Error('There was no storey to copy.');
    const shell = changed(ground, made.edit);
    const bed = done(shell, drawRoom(shell, made.storeyId, asked(shell, 'Bed', [4200, 3700])));
    const free = freeWalls(storeyOf(bed, 1)).filter(({ words }) => words.startsWith('above Bed'));
    const within = free.flatMap((wall) =>
      (['left', 'right'] as const).flatMap((from) => {
        const bath = {
          ...asked(bed, 'Bath', [2600, 2900]),
          beside: { wallId: wall.wallId, side: wall.side, from, inMm: 0 },
        };
        const drawn = drawRoom(bed, made.storeyId, bath);
        if (!drawn.ok) return [];
        const job = changed(bed, drawn.edit);
        return storeyOf(job, 1).walls.length === storeyOf(bed, 1).walls.length ? [sizes(job, 'Bath', 1)] : [];
      }),
    );
    expect(within).toEqual([
      [2600, 2900, 2600, 2900],
      [2600, 2900, 2600, 2900],
    ]);
  });

  it('is the same job each time an edit is made on it, ids and all', () => {
    const job = house();
    const made = drawRoom(job, storeyOf(job).id, asked(job, 'Utility', [2000, 1500], 'right of Kitchen'));
    expect(made.ok).toBe(true);
    if (made.ok) expect(changed(job, made.edit)).toEqual(changed(job, made.edit));
  });

  it('is not touched by an edit that cannot be, which says why', () => {
    const job = house();
    const made = drawRoom(job, storeyOf(job).id, {
      ...asked(job, 'Attic', [9000, 9000], 'right of Hall'),
      beside: null,
    });
    expect(made.ok).toBe(true);
    const wall = storeyOf(job).walls.find(({ external }) => !external);
    const other = changeThickness(job, 'nowhere', { wallId: wall?.id ?? '', kept: 'left', thicknessMm: 75 });
    expect(other).toEqual({ ok: false, why: 'That storey is not there any more.' });
  });

  it('offers the walls that have nothing behind them, and takes a tap on one', () => {
    const job = house();
    const storey = storeyOf(job);
    expect(freeWalls(storey).map(({ words }) => words)).toEqual([
      'below Hall',
      'left of Hall',
      'below Lounge',
      'right of Lounge',
      'right of Kitchen',
      'above Kitchen',
      'left of Kitchen',
    ]);
    const [below] = freeWalls(storey);
    const wall = storey.walls.find(({ id }) => id === below?.wallId);
    // The hall goes along its lower wall from left to right, on its left hand; a room below has the wall's right side,
    // and somebody in it who looks at the wall has its `from` on the left.
    expect(wall?.from[0]).toBeLessThan(wall?.to[0] ?? 0);
    expect(besideTap(storey, { wall: wall?.id ?? '', side: 'left', alongMm: 100 })).toMatchObject({
      side: 'right',
      from: 'left',
    });
    expect(besideTap(storey, { wall: wall?.id ?? '', side: 'left', alongMm: 1900 })).toMatchObject({
      side: 'right',
      from: 'right',
    });
    const inner = storey.walls.find(({ external }) => !external);
    expect(besideTap(storey, { wall: inner?.id ?? '', side: 'left', alongMm: 0 })).toBeNull();
  });

  it('lets a side be measured anew: the outer wall moves, and the room beside it stays', () => {
    const job = house();
    const lounge = room(job, 'Lounge');
    const longer = done(
      job,
      changeSide(job, storeyOf(job).id, room(job, 'Kitchen'), { at: 1, lengthMm: 4200 }),
    );
    expect(sizes(longer, 'Kitchen')).toEqual([5600, 4200, 5600, 4200]);
    expect(sizes(longer, 'Lounge')).toEqual(sizes(job, 'Lounge'));
    const wider = done(job, changeSide(job, storeyOf(job).id, lounge, { at: 0, lengthMm: 3800 }));
    // The wall on the right goes on past the kitchen, which becomes wider with it.
    expect([sizes(wider, 'Lounge')[0], sizes(wider, 'Hall')[0], sizes(wider, 'Kitchen')[0]]).toEqual([
      3800, 1800, 5700,
    ]);
  });

  it('has its walls and corners moved; steps by keys are one group', () => {
    const job = house();
    const storey = storeyOf(job);
    const between = storey.walls.find(({ external }) => !external);
    if (between === undefined) throw new Error('No wall.');
    const [depth] = wallDepths(storey, between.id);
    if (depth === undefined) throw new Error('No depth.');
    const byMm = moveForDepth(depth, depth.lengthMm + 250);
    const moved = done(job, reshapeHouse(job, storey.id, { part: 'wall', wallId: between.id, byMm }));
    expect(wallDepths(storeyOf(moved), between.id)[0]?.lengthMm).toBe(depth.lengthMm + 250);
    const made = reshapeHouse(job, storey.id, { part: 'wall', wallId: between.id, byMm: 10 }, 'keys-1');
    expect(made).toMatchObject({ ok: true, edit: { label: 'Move a wall', group: 'keys-1' } });
    const [[x, y]] = [storey.walls[0]?.from ?? [0, 0]];
    const askew = done(job, reshapeHouse(job, storey.id, { part: 'corner', at: [x, y], to: [x - 200, y] }));
    expect(
      storeyOf(askew).walls.filter(({ from, to }) => from[0] === x - 200 || to[0] === x - 200),
    ).toHaveLength(2);
    expect(faults(moved).concat(faults(askew))).toEqual([]);
    expect(
      reshapeHouse(job, storey.id, { part: 'wall', wallId: between.id, byMm: moveForDepth(depth, -500) }),
    ).toMatchObject({ ok: false });
  });

  it('lets a room be parted, united, taken away', () => {
    const job = house();
    const storeyId = storeyOf(job).id;
    const kitchen = room(job, 'Kitchen');
    const [lower] = roomSides(storeyOf(job), kitchen);
    const wallId = lower?.walls.at(-1)?.wallId ?? '';
    const parted = done(
      job,
      partRoom(job, storeyId, kitchen, {
        wallId,
        fromLeftMm: 3000,
        kind: usualInner,
        name: 'Utility',
        use: 'utility',
      }),
    );
    expect(storeyOf(parted).rooms.map(({ name }) => name)).toEqual(['Hall', 'Lounge', 'Kitchen', 'Utility']);
    expect(sizes(parted, 'Kitchen').toSorted()).toEqual([3000, 3000, 4000, 4000]);
    const whole = done(
      parted,
      uniteRooms(parted, storeyId, room(parted, 'Kitchen'), room(parted, 'Utility')),
    );
    expect(sizes(whole, 'Kitchen')).toEqual([5600, 4000, 5600, 4000]);
    const gone = done(job, takeRoom(job, storeyId, kitchen));
    expect(storeyOf(gone).rooms.map(({ name }) => name)).toEqual(['Hall', 'Lounge']);
    expect(faults(parted).concat(faults(whole), faults(gone))).toEqual([]);
  });

  it('gets a storey above, its walls in line with those below', () => {
    const job = house();
    const made = addStorey(job, 'First floor', 'outer-walls');
    if (made === null) throw new Error('No storey.');
    const tall = changed(job, made.edit);
    expect(storeyOf(tall, 1)).toMatchObject({ name: 'First floor', floorLevelMm: 2650, rooms: [] });
    const ends = (at: number): readonly string[] =>
      storeyOf(tall, at)
        .walls.filter(({ external }) => external)
        .map(({ from, to }) => JSON.stringify([from, to]));
    expect(ends(1)).toEqual(ends(0));
    const alike = addStorey(job, 'First floor', 'all-walls-and-rooms');
    if (alike === null) throw new Error('No storey.');
    const both = changed(job, alike.edit);
    expect(sizes(both, 'Kitchen, above', 1)).toEqual(sizes(both, 'Kitchen'));
    expect(faults(tall).concat(faults(both))).toEqual([]);
  });

  it('gets doors and windows measured from the left corner as seen from in the room', () => {
    const job = house();
    const storey = storeyOf(job);
    const [lower] = roomSides(storey, room(job, 'Lounge'));
    if (lower === undefined) throw new Error('No side.');
    const place = openingPlace(storey, lower, { leftMm: 500, widthMm: 1200 });
    if (place === null) throw new Error('No place.');
    const window = {
      kind: 'window' as const,
      alongMm: place.alongMm,
      widthMm: 1200,
      sillMm: 900,
      headMm: 2100,
    };
    const lit = done(job, addOpening(job, storey.id, place.wallId, window));
    const wall = storeyOf(lit).walls.find(({ id }) => id === place.wallId);
    const [made] = wall?.openings ?? [];
    if (made === undefined) throw new Error('No window.');
    expect(leftOfOpeningMm(storeyOf(lit), lower, place.wallId, made)).toBe(500);
    // Looking at the lower wall from the lounge its left is to the right on the plan.
    expect(lower.to[0] - 500).toBeCloseTo((wall?.from[0] ?? 0) + made.alongMm + 1200, 6);
    expect(addOpening(lit, storey.id, place.wallId, window)).toEqual({
      ok: false,
      why: 'A window is there already.',
    });
    expect(openingPlace(storey, lower, { leftMm: 3000, widthMm: 1200 })).toBeNull();
    expect(
      storeyOf(changed(lit, removeOpening(storey.id, made))).walls.flatMap(({ openings }) => openings),
    ).toEqual([]);
  });

  it('takes what is said of rooms, walls and their faces, and what was assumed is seen then', () => {
    const job = house();
    const storey = storeyOf(job);
    const [wall] = storey.walls;
    if (wall === undefined) throw new Error('No wall.');
    const built = changed(job, setWallFacts(storey.id, [wall.id], { core: 'concrete', party: true }));
    expect(storeyOf(built).walls[0]).toMatchObject({
      core: 'concrete',
      party: true,
      certainty: { thicknessMm: 'assumed' },
    });
    expect(storeyOf(built).walls[0]?.certainty?.core).toBeUndefined();
    const faced = changed(
      job,
      setFaceFacts(storey.id, [{ wallId: wall.id, side: 'left' }], { lining: 'dot-and-dab' }),
    );
    expect(storeyOf(faced).walls[0]?.faces.left).toEqual({ finish: 'plaster', lining: 'dot-and-dab' });
    const named = changed(job, setRoomFact(storey.id, room(job, 'Lounge'), 'name', 'Front room'));
    expect(storeyOf(named).rooms.map(({ name }) => name)).toContain('Front room');
    expect(nextRoomName(named.storeys, 'hall')).toBe('Hall 2');
  });
});
