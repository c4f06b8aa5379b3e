import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { beginningBeside, setThickness } from '../../../ui/house/beside.ts';
import type { Drawing, Outcome } from '../../../ui/house/drawing.ts';
import { flawsOf } from '../../../ui/house/flaws.ts';
import { moveCorner, moveWall } from '../../../ui/house/move-walls.ts';
import { joinRooms, removeRoom } from '../../../ui/house/remove-room.ts';
import { splitRoom } from '../../../ui/house/split-room.ts';
import { usualInner } from '../../../ui/house/wall-kinds.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { areaM2, drawingOf, sidesMm } from './drawn.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const copyOf = (name: (typeof names)[number]): Job => structuredClone(demoJob(name));

const positions = (job: Job): ReadonlyMap<string, readonly number[]> => {
  const plan = buildPlan(job);
  return new Map(
    [...plan.positionOfPoint, ...plan.positionOfBoard].map(([id, { at, heightMm }]) => [
      id,
      [...at, heightMm].map((mm) => Math.round(mm)),
    ]),
  );
};
const faultsOf = (job: Job): readonly unknown[] => {
  const read = readJob(JSON.parse(JSON.stringify(job)));
  return read.ok ? [] : read.faults;
};
const roomNamed = ({ storey }: Drawing, name: string) => {
  const room = storey.rooms.find((one) => one.name === name);
  if (room === undefined) throw new Error(`There is no ${name}.`);
  return room;
};

describe('a room parted by a wall', () => {
  it('is two rooms with the wall between, and what stands on its walls stays where it is', () => {
    const job = copyOf('saltglass-row');
    const drawing = drawingOf(job);
    const before = positions(job);
    const dining = roomNamed(drawing, 'Dining room');
    const wholeM2 = areaM2(drawing.storey, 'Dining room');
    const outcome = splitRoom(drawing, {
      roomId: dining.id,
      wallId: 'gf-right-2',
      fromLeftMm: 1200,
      kind: usualInner,
      parted: { id: 'store00001', name: 'Store', use: 'store' },
    });
    expect(outcome).toEqual({ ok: true });
    // The right-hand wall runs up the plan: who looks at it from the room has its upper end on the left.
    expect(sidesMm(drawing.storey, 'Dining room').toSorted()).toEqual([1200, 1200, 4200, 4200]);
    const widthM = 4.2;
    expect(areaM2(drawing.storey, 'Dining room') + areaM2(drawing.storey, 'Store')).toBeCloseTo(
      wholeM2 - 0.1 * widthM,
      6,
    );
    expect(positions(job)).toEqual(before);
    expect(faultsOf(job)).toEqual([]);
    expect([...flawsOf(drawing.storey)]).toEqual([]);
  });

  it('becomes the room that it was when the two are made one again', () => {
    const job = copyOf('saltglass-row');
    const drawing = drawingOf(job);
    const before = positions(job);
    const dining = roomNamed(drawing, 'Dining room');
    const sides = sidesMm(drawing.storey, 'Dining room');
    const walls = drawing.storey.walls.length;
    splitRoom(drawing, {
      roomId: dining.id,
      wallId: 'gf-right-2',
      fromLeftMm: 1200,
      kind: usualInner,
      parted: { id: 'store00001', name: 'Store', use: 'store' },
    });
    expect(joinRooms(drawing, dining.id, 'store00001')).toEqual({ ok: true });
    expect(sidesMm(drawing.storey, 'Dining room').toSorted()).toEqual(sides.toSorted());
    expect(drawing.storey.walls).toHaveLength(walls);
    expect(positions(job)).toEqual(before);
    expect(faultsOf(job)).toEqual([]);
  });

  it('has the photos of both, each once, when the two are made one', () => {
    const drawing = drawingOf(copyOf('saltglass-row'));
    const [living, dining] = ['Living room', 'Dining room'].map((name) => roomNamed(drawing, name));
    if (living === undefined || dining === undefined) throw new Error('both are wanted');
    const [a, b, c] = ['a', 'b', 'c'].map((letter) => letter.repeat(64)) as [string, string, string];
    dining.photos = [a, b];
    living.photos = [b, c];
    expect(joinRooms(drawing, dining.id, living.id)).toEqual({ ok: true });
    expect(roomNamed(drawing, 'Dining room').photos).toEqual([a, b, c]);
  });

  it.each([
    [-1, 'That wall is not so long.'],
    [9000, 'That wall is not so long.'],
  ])('is refused %s mm along, and says why', (fromLeftMm, why) => {
    const drawing = drawingOf(copyOf('saltglass-row'));
    const parted = { id: 'store00001', name: 'Store', use: 'store' as const };
    const roomId = roomNamed(drawing, 'Dining room').id;
    expect(
      splitRoom(drawing, { roomId, wallId: 'gf-right-2', fromLeftMm, kind: usualInner, parted }),
    ).toEqual({ ok: false, why });
  });
});

describe('a wall that is moved', () => {
  it('makes one room wider and the other narrower by as much, and takes its outlets along', () => {
    const job = copyOf('saltglass-row');
    const drawing = drawingOf(job);
    const before = positions(job);
    const [hall, living] = ['Hall', 'Living room'].map((name) => areaM2(drawing.storey, name));
    // Drawn from the front to the back: its left is towards the hall.
    expect(moveWall(drawing, { wallId: 'gf-hall-01', byMm: 200 })).toEqual({ ok: true });
    expect(areaM2(drawing.storey, 'Hall')).toBeLessThan(hall ?? 0);
    expect(areaM2(drawing.storey, 'Living room') - (living ?? 0)).toBeCloseTo(
      (hall ?? 0) - areaM2(drawing.storey, 'Hall'),
      6,
    );
    const onIt = new Set(
      job.points
        .filter(({ place }) => place && 'wall' in place && place.wall === 'gf-hall-01')
        .map(({ id }) => id),
    );
    expect(onIt.size).toBeGreaterThan(0);
    for (const [id, at] of positions(job)) {
      const [x = 0, ...rest] = before.get(id) ?? [];
      expect([id, at]).toEqual([id, onIt.has(id) ? [x - 200, ...rest] : [x, ...rest]]);
    }
    expect(faultsOf(job)).toEqual([]);
  });

  it('is refused where a room would turn over', () => {
    const drawing = drawingOf(copyOf('saltglass-row'));
    const outcome = moveWall(drawing, { wallId: 'gf-hall-01', byMm: 1500 });
    expect(outcome).toMatchObject({ ok: false });
  });

  it('comes back to where it was, with all that stands there (random)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(),
        fc.integer({ min: -150, max: 150 }),
        (name, pick, byMm) => {
          const job = copyOf(name);
          const drawing = drawingOf(job, pick % job.storeys.length);
          const wall = drawing.storey.walls[pick % drawing.storey.walls.length];
          if (wall === undefined) return;
          const [before, file] = [positions(job), wall.id];
          const areas = drawing.storey.rooms.map((room) => areaM2(drawing.storey, room.name));
          const there = moveWall(drawing, { wallId: file, byMm });
          fc.pre(there.ok);
          expect(faultsOf(job)).toEqual([]);
          expect(moveWall(drawing, { wallId: file, byMm: -byMm })).toEqual({ ok: true });
          expect(
            drawing.storey.rooms.map((room) => Math.round(areaM2(drawing.storey, room.name) * 1e4)),
          ).toEqual(areas.map((area) => Math.round(area * 1e4)));
          for (const [id, at] of positions(job))
            at.forEach((mm, i) => {
              expect(Math.abs(mm - (before.get(id)?.[i] ?? Number.NaN))).toBeLessThanOrEqual(1);
            });
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a corner that is moved', () => {
  it('takes every wall that meets there, and leaves outlets on the other walls where they are', () => {
    const job = copyOf('saltglass-row');
    const drawing = drawingOf(job);
    const onOthers = (): readonly unknown[] =>
      [...positions(job)].filter(([id]) => {
        const place = [...job.points, ...job.boards].find((one) => one.id === id)?.place;
        return place && 'wall' in place && !['gf-front-1', 'gf-front-2', 'gf-hall-01'].includes(place.wall);
      });
    const before = onOthers();
    expect(moveCorner(drawing, { at: [1015, -150], to: [1115, -150] })).toEqual({ ok: true });
    expect(drawing.storey.walls.filter(({ from, to }) => from[0] === 1115 || to[0] === 1115)).toHaveLength(3);
    expect(onOthers()).toEqual(before);
  });
});

describe('a wall of another thickness', () => {
  it('keeps the face that a room has, and so its measures', () => {
    const drawing = drawingOf(copyOf('saltglass-row'));
    const living = sidesMm(drawing.storey, 'Living room');
    const [hallWide = 0] = sidesMm(drawing.storey, 'Hall').toSorted((a, b) => a - b);
    expect(setThickness(drawing, { wallId: 'gf-hall-01', kept: 'right', thicknessMm: 230 })).toEqual({
      ok: true,
    });
    expect(sidesMm(drawing.storey, 'Living room')).toEqual(living);
    expect(sidesMm(drawing.storey, 'Hall').toSorted((a, b) => a - b)[0]).toBe(hallWide - 100);
  });
});

describe('a room beside a wall', () => {
  it('begins where the room on the other side does, face to face', () => {
    const drawing = drawingOf(copyOf('saltglass-row'));
    const begin = beginningBeside(
      drawing.storey,
      { wallId: 'gf-yard-01', side: 'right', from: 'right', inMm: 0 },
      2000,
    );
    // The kitchen's far wall is drawn from right to left 300 thick; beyond it a room goes round from left to right.
    expect(begin?.corner.map(Math.round)).toEqual([0, 10500]);
    expect(begin?.along.map(Math.round)).toEqual([1, 0]);
    const other = beginningBeside(
      drawing.storey,
      { wallId: 'gf-yard-01', side: 'right', from: 'left', inMm: 0 },
      2000,
    );
    expect(other?.corner.map(Math.round)).toEqual([600, 10500]);
  });
});

describe('a room that is taken away', () => {
  it('leaves the walls of others, and what stood on its own stays where it was', () => {
    const job = copyOf('saltglass-row');
    const drawing = drawingOf(job);
    const before = positions(job);
    expect(removeRoom(drawing, roomNamed(drawing, 'Kitchen').id)).toEqual({ ok: true });
    expect(drawing.storey.rooms.map(({ name }) => name)).toEqual(['Hall', 'Living room', 'Dining room']);
    expect(drawing.storey.walls.some(({ id }) => id === 'gf-yard-01')).toBe(false);
    expect(positions(job)).toEqual(before);
    expect(faultsOf(job)).toEqual([]);
  });
});

describe('any changes one after the other', () => {
  it('leave a job that can be read, rooms that close, and walls parted where they meet (random)', () => {
    const change = fc.record({
      kind: fc.constantFrom('split', 'move', 'join', 'thick', 'remove'),
      pick: fc.nat(),
      mm: fc.integer({ min: -400, max: 3000 }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.array(change, { minLength: 1, maxLength: 6 }),
        (name, changes) => {
          let job = copyOf(name);
          let made = 0;
          const newId = (): string => {
            made += 1;
            return `new${String(made).padStart(7, '0')}`;
          };
          for (const { kind, pick, mm } of changes) {
            const draft = structuredClone(job);
            const storey = draft.storeys[pick % draft.storeys.length];
            if (storey === undefined || storey.rooms.length === 0) continue;
            const outcome = changed({ job: draft, storey, newId }, { kind, pick, mm });
            if (!outcome.ok) {
              expect(outcome.why).toMatch(/\w.*\.$/);
              continue;
            }
            job = draft;
            expect(faultsOf(job)).toEqual([]);
            expect([...flawsOf(storey)].filter((flaw) => /close|turn/.test(flaw))).toEqual([]);
          }
        },
      ),
      { numRuns: 80 },
    );
  });
});

function changed(drawing: Drawing, { kind, pick, mm }: { kind: string; pick: number; mm: number }): Outcome {
  const { rooms, walls } = drawing.storey;
  const room = rooms[pick % rooms.length];
  const other = rooms[(pick + 1) % rooms.length];
  const wallId =
    kind === 'split'
      ? (room?.walls[pick % (room?.walls.length ?? 1)]?.wall ?? '')
      : (walls[pick % walls.length]?.id ?? '');
  if (kind === 'split') {
    const parted = { id: drawing.newId(), name: `N${pick}`, use: 'store' as const };
    return splitRoom(drawing, { roomId: room?.id ?? '', wallId, fromLeftMm: mm, kind: usualInner, parted });
  }
  if (kind === 'move') return moveWall(drawing, { wallId, byMm: mm });
  if (kind === 'thick')
    return setThickness(drawing, { wallId, kept: 'left', thicknessMm: 75 + (pick % 300) });
  if (kind === 'join') return joinRooms(drawing, room?.id ?? '', other?.id ?? '');
  return removeRoom(drawing, room?.id ?? '');
}
