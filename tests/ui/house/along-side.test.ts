import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Fixture } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { addFixture, placeFixture, removeFixture, setFixtureHeight } from '../../../ui/edits/fixtures.ts';
import type { HouseEdit } from '../../../ui/edits/house.ts';
import { addStairwell, placeStairwell, removeStairwell } from '../../../ui/edits/stairwells.ts';
import { alongSide, boxAlong, isPastSide, roomHolding, sideBehind } from '../../../ui/house/along-side.ts';
import { setThickness } from '../../../ui/house/beside.ts';
import { fixtureWords, heightsRead, usualFixtures, usualHeightsOf } from '../../../ui/house/fixture-kinds.ts';
import { moveWall } from '../../../ui/house/move-walls.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';
import { drawingOf } from './drawn.ts';

const names = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const copyOf = (name: (typeof names)[number]): Job => structuredClone(demoJob(name));
const groundOf = (job: Job) => {
  const [storey] = job.storeys;
  if (storey === undefined) throw new Error('No storey.');
  return storey;
};
const sidesOf = (job: Job, roomName: string) => {
  const storey = groundOf(job);
  const room = storey.rooms.find(({ name }) => name === roomName);
  if (room === undefined) throw new Error(`There is no ${roomName}.`);
  return roomSides(storey, room);
};
const changed = (job: Job, edit: JobEdit): Job => {
  const next = structuredClone(job);
  edit.change(next);
  return next;
};
const done = (job: Job, made: HouseEdit): Job => {
  if (!made.ok) throw new Error(made.why);
  return changed(job, made.edit);
};
const isReadable = (job: Job): boolean => readJob(JSON.parse(JSON.stringify(job))).ok;

describe('a box along a side of a room', () => {
  it('is where it is told from, whichever way the side goes (random)', () => {
    const mm = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(),
        fc.record({
          leftMm: mm(2000),
          offMm: mm(300),
          widthMm: mm(2000).map((n) => n + 1),
          depthMm: mm(800).map((n) => n + 1),
        }),
        (name, pick, box) => {
          const job = copyOf(name);
          const { rooms } = groundOf(job);
          const sides = sidesOf(job, rooms[pick % rooms.length]?.name ?? '');
          const side = sides[pick % sides.length];
          fc.pre(side !== undefined);
          const back = alongSide(side, boxAlong(side, box));
          for (const key of ['leftMm', 'offMm', 'widthMm', 'depthMm'] as const)
            expect(Math.abs(back[key] - box[key])).toBeLessThanOrEqual(0.3);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('stands in the room, its back at the side that it is told along', () => {
    const job = copyOf('saltglass-row');
    const storey = groundOf(job);
    const sides = sidesOf(job, 'Kitchen');
    sides.forEach((side, at) => {
      const outline = boxAlong(side, {
        leftMm: side.lengthMm / 2 - 200,
        offMm: 0,
        widthMm: 400,
        depthMm: 300,
      });
      expect(roomHolding(storey, outline)?.name).toBe('Kitchen');
      expect(sideBehind(sides, outline)).toBe(at);
    });
    expect(roomHolding(storey, [[-9000, -9000]])).toBeNull();
    expect(sideBehind([], [[0, 0]])).toBeNull();
  });

  it('is measured from the left corner of somebody who looks at the wall', () => {
    const job = copyOf('saltglass-row');
    const sides = sidesOf(job, 'Kitchen');
    // The lowest side comes first and goes from left to right: who looks down at it has the right end on the left hand.
    const [lower] = sides;
    if (lower === undefined) throw new Error('No side.');
    const [backLeft] = boxAlong(lower, { leftMm: 100, offMm: 0, widthMm: 500, depthMm: 200 });
    expect(backLeft?.[0]).toBeCloseTo(lower.to[0] - 100, 6);
    expect(backLeft?.[1]).toBeCloseTo(lower.to[1], 6);
    expect(isPastSide(lower, { leftMm: lower.lengthMm - 400, offMm: 0, widthMm: 500, depthMm: 1 })).toBe(
      true,
    );
    expect(isPastSide(lower, { leftMm: lower.lengthMm - 500, offMm: 0, widthMm: 500, depthMm: 1 })).toBe(
      false,
    );
  });
});

describe('what is usual of fixtures', () => {
  it('has a size for each, heights that end above where they begin, and keeps those that rules read', () => {
    for (const kind of Object.keys(fixtureWords) as Fixture['kind'][]) {
      const { widthMm, depthMm, fromMm, toMm } = usualFixtures[kind];
      expect(Math.min(widthMm, depthMm)).toBeGreaterThan(0);
      expect(toMm).toBeGreaterThan(fromMm);
      const kept = { none: [], top: ['toMm'], both: ['fromMm', 'toMm'] }[heightsRead[kind]];
      expect(Object.keys(usualHeightsOf(kind))).toEqual(kept);
    }
  });
});

describe('fixtures by edits', () => {
  const withHob = (): Job => {
    const job = copyOf('saltglass-row');
    const [side] = sidesOf(job, 'Dining room');
    if (side === undefined) throw new Error('No side.');
    return done(
      job,
      addFixture(groundOf(job).id, {
        kind: 'hob',
        side,
        box: { leftMm: 300, offMm: 0, widthMm: 600, depthMm: 520 },
        heights: { toMm: 910 },
        assumed: ['outline', 'toMm'],
      }),
    );
  };
  const hobIn = (job: Job): Fixture => {
    const hob = groundOf(job).fixtures.at(-1);
    if (hob === undefined) throw new Error('No hob.');
    return hob;
  };

  it('are put in as usual and marked so, and seen once somebody measures them', () => {
    const job = withHob();
    expect(hobIn(job)).toMatchObject({
      kind: 'hob',
      toMm: 910,
      certainty: { outline: 'assumed', toMm: 'assumed' },
    });
    const [storeyId, [side]] = [groundOf(job).id, sidesOf(job, 'Dining room')];
    if (side === undefined) throw new Error('No side.');
    const box = { leftMm: 400, offMm: 0, widthMm: 580, depthMm: 510 };
    const placed = done(job, placeFixture(storeyId, hobIn(job), { side, box }));
    expect(alongSide(side, hobIn(placed).outline)).toEqual(box);
    expect(hobIn(placed).certainty).toEqual({ toMm: 'assumed' });
    const high = changed(placed, setFixtureHeight(storeyId, hobIn(placed), 'toMm', 940));
    expect(hobIn(high)).toMatchObject({ toMm: 940 });
    expect(hobIn(high).certainty).toBeUndefined();
    expect(hobIn(changed(high, setFixtureHeight(storeyId, hobIn(high), 'toMm', null))).toMm).toBeUndefined();
    const gone = changed(high, removeFixture(storeyId, hobIn(high)));
    expect(groundOf(gone).fixtures).toEqual(groundOf(copyOf('saltglass-row')).fixtures);
    expect([job, placed, high, gone].map(isReadable)).toEqual([true, true, true, true]);
  });

  it('are refused past the wall, and without a size', () => {
    const job = withHob();
    const [storeyId, [side]] = [groundOf(job).id, sidesOf(job, 'Dining room')];
    if (side === undefined) throw new Error('No side.');
    const at = (leftMm: number, widthMm: number) =>
      placeFixture(storeyId, hobIn(job), { side, box: { leftMm, offMm: 0, widthMm, depthMm: 500 } });
    expect(at(-200, 600)).toMatchObject({ ok: false });
    expect(at(side.lengthMm - 100, 600)).toEqual({ ok: false, why: 'It reaches past the wall there.' });
    expect(at(100, 0)).toEqual({ ok: false, why: 'It has to have a width and a depth.' });
  });

  it('go with the face of the wall that they stand against, and no other (random)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.nat(),
        fc.integer({ min: -120, max: 120 }),
        (name, pick, byMm) => {
          const drawing = drawingOf(copyOf(name));
          const { storey } = drawing;
          const map = () => buildPlan({ storeys: [storey], points: [], boards: [] }).wallById;
          const gaps = (): readonly (number | null)[] =>
            storey.fixtures.map(({ outline }) => {
              const room = roomHolding(storey, outline, map());
              const sides = room === null ? [] : roomSides(storey, room, map());
              // Wedged between two walls it can go with one of them only.
              const offs = sides
                .map((side) => ({ side, box: alongSide(side, outline) }))
                .filter(
                  ({ side, box }) =>
                    Math.max(0, box.leftMm) < Math.min(side.lengthMm, box.leftMm + box.widthMm),
                )
                .map(({ box }) => Math.abs(box.offMm));
              return offs.length === 0 ? null : Math.min(...offs);
            });
          const before = gaps();
          const wall = storey.walls[pick % storey.walls.length];
          fc.pre(wall !== undefined && moveWall(drawing, { wallId: wall.id, byMm }).ok);
          gaps().forEach((gap, i) => {
            const was = before[i];
            // What stood against its wall still does.
            if (typeof was === 'number' && was < 30) expect(gap).toBeCloseTo(was, 0);
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keep off a wall as far as before when it is made thicker', () => {
    const job = withHob();
    const drawing = drawingOf(job);
    const [side] = sidesOf(job, 'Dining room');
    const { wallId, side: face } = side?.walls[0] ?? { wallId: '', side: 'left' as const };
    const kept = face === 'left' ? 'right' : 'left';
    expect(setThickness(drawing, { wallId, kept, thicknessMm: 200 })).toEqual({ ok: true });
    const [now] = sidesOf(job, 'Dining room');
    if (now === undefined) throw new Error('No side.');
    expect(alongSide(now, hobIn(job).outline).offMm).toBeCloseTo(0, 0);
  });
});

describe('stairwells by edits', () => {
  it('are cut beside a wall, moved, and closed', () => {
    const job = copyOf('saltglass-row');
    const storey = groundOf(job);
    const [side] = sidesOf(job, 'Living room');
    if (side === undefined) throw new Error('No side.');
    const box = { leftMm: 0, offMm: 0, widthMm: 2400, depthMm: 850 };
    const before = storey.stairwells.length;
    const cut = done(job, addStairwell(storey.id, side, box));
    const moved = done(
      cut,
      placeStairwell(storey.id, before, { side, box: { ...box, leftMm: 500, widthMm: 2600 } }),
    );
    expect(groundOf(cut).stairwells[before]).toEqual(boxAlong(side, box));
    expect(alongSide(side, groundOf(moved).stairwells[before] ?? [])).toMatchObject({
      leftMm: 500,
      widthMm: 2600,
    });
    expect(groundOf(changed(moved, removeStairwell(storey.id, before))).stairwells).toEqual(
      storey.stairwells,
    );
    expect(addStairwell(storey.id, side, { ...box, depthMm: 0 })).toMatchObject({ ok: false });
    expect([cut, moved].map(isReadable)).toEqual([true, true]);
  });
});
