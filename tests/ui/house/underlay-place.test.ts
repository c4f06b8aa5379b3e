import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Underlay } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { traceRoom } from '../../../ui/edits/house.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { withoutLoose } from '../../../ui/edits/photos.ts';
import { changeUnderlay, hideUnderlay, putUnderlay, removeUnderlay } from '../../../ui/edits/underlay.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { tracedOutline } from '../../../ui/house/traced-outline.ts';
import { asWide, levelled, onPlan, shifted, toLength, turnedTo } from '../../../ui/house/underlay-place.ts';
import { lengthOf, minus, type Vector } from '../../../ui/house/vector.ts';
import { usualInner, usualOuter } from '../../../ui/house/wall-kinds.ts';

const underlays = fc.record({
  asset: fc.constant('a'),
  at: fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
  widthPx: fc.integer({ min: 200, max: 2000 }),
  heightPx: fc.integer({ min: 200, max: 2000 }),
  scaleMmPerPx: fc.double({ min: 1, max: 40, noNaN: true }),
  angleDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  opacity: fc.constant(0.5),
});
const pixels = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 }));

describe('a picture under the plan', () => {
  it('is to scale once two places on it are a length apart, and the first stays', () => {
    fc.assert(
      fc.property(
        underlays,
        pixels,
        pixels,
        fc.integer({ min: 100, max: 30_000 }),
        (lying, p, q, lengthMm) => {
          fc.pre(lengthOf(minus(p, q)) > 5);
          const [a, b] = [onPlan(lying, p), onPlan(lying, q)];
          const scaled = { ...lying, ...toLength(lying, a, b, lengthMm) } as Underlay;
          expect(lengthOf(minus(onPlan(scaled, q), onPlan(scaled, p)))).toBeCloseTo(lengthMm, 4);
          expect(lengthOf(minus(onPlan(scaled, p), a))).toBeLessThan(0.2);
        },
      ),
    );
  });

  it('is level once the line through two places is, and the first stays', () => {
    fc.assert(
      fc.property(underlays, pixels, pixels, (lying, p, q) => {
        fc.pre(lengthOf(minus(p, q)) > 20);
        const [a, b] = [onPlan(lying, p), onPlan(lying, q)];
        const level = { ...lying, ...levelled(lying, a, b) } as Underlay;
        const [x, y] = minus(onPlan(level, q), onPlan(level, p));
        expect(Math.min(Math.abs(x), Math.abs(y)) / Math.hypot(x, y)).toBeLessThan(0.001);
        expect(lengthOf(minus(onPlan(level, p), a))).toBeLessThan(1);
        const turn = Math.abs(((level.angleDeg - lying.angleDeg + 540) % 360) - 180);
        expect(turn).toBeLessThanOrEqual(45.01);
      }),
    );
  });

  it('is moved by what two places are apart, turned and made wide about its middle', () => {
    fc.assert(
      fc.property(underlays, pixels, (lying, p) => {
        const moved = { ...lying, ...shifted(lying, [10, 20], [110, -30]) } as Underlay;
        const by = minus(onPlan(moved, p), onPlan(lying, p));
        expect(by[0]).toBeCloseTo(100, 0);
        expect(by[1]).toBeCloseTo(-50, 0);
        const turned = { ...lying, ...turnedTo(lying, 30) } as Underlay;
        expect([turned.at, turned.angleDeg]).toEqual([lying.at, 30]);
        const wide = { ...lying, ...asWide(lying, 8000) } as Underlay;
        const edge = minus(onPlan(wide, [wide.widthPx, 0]), onPlan(wide, [0, 0]));
        expect(lengthOf(edge)).toBeCloseTo(8000, 4);
      }),
    );
  });

  it('tells nothing from one place tapped twice', () => {
    const lying = { at: [0, 0] as [number, number], scaleMmPerPx: 5, angleDeg: 0 };
    expect([toLength(lying, [5, 5], [5, 5], 1000), levelled(lying, [5, 5], [5.1, 5])]).toEqual([null, null]);
  });
});

const job: Job = newJob({ reference: 'J1', title: 'T', terms: { labour: 'typical', vat: 'standard' } });
const storeyOf = (of: Job) => {
  const [storey] = of.storeys;
  if (storey === undefined) throw new Error('A new job has a storey.');
  return storey;
};
const asset = { id: 'c'.repeat(64), name: 'Picture', mediaType: 'image/jpeg', bytes: 3 };
const first: Underlay = {
  asset: asset.id,
  at: [0, 0],
  widthPx: 800,
  heightPx: 600,
  scaleMmPerPx: 10,
  angleDeg: 0,
  opacity: 0.5,
};

describe('edits of the picture under a storey', () => {
  it('leave a job that can be read, and nothing of it once it is removed', () => {
    const storey = storeyOf(job);
    const steps = [
      putUnderlay(storey, first, asset),
      changeUnderlay(storey, 'Turn', { angleDeg: 12 }),
      changeUnderlay(storey, 'Fade', { opacity: 0.2 }),
      hideUnderlay(storey, true),
    ];
    const there = steps.reduce((now, { change }) => produce(now, withoutLoose(change)), job);
    expect(storeyOf(there).underlay).toEqual({ ...first, angleDeg: 12, opacity: 0.2, hidden: true });
    expect(readJob(there)).toMatchObject({ ok: true });
    const shown = produce(there, hideUnderlay(storey, false).change);
    expect(storeyOf(shown).underlay).not.toHaveProperty('hidden');
    expect(produce(there, withoutLoose(removeUnderlay(storey).change))).toEqual(job);
  });

  it('let go of the picture that another took the place of', () => {
    const storey = storeyOf(job);
    const there = produce(job, putUnderlay(storey, first, asset).change);
    const other = { ...asset, id: 'd'.repeat(64) };
    const next = produce(
      there,
      withoutLoose(putUnderlay(storey, { ...first, asset: other.id }, other).change),
    );
    expect(next.assets).toEqual([other]);
  });
});

/** Taps on the corners of a rectangle, each off by so much at most. */
const tapsOn = ([x, y]: Vector, [w, h]: Vector, off: readonly Vector[]): readonly Vector[] =>
  (
    [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ] as const
  ).map(([cx, cy], i) => [cx + (off[i]?.[0] ?? 0), cy + (off[i]?.[1] ?? 0)]);
const slips = fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 })), {
  minLength: 4,
  maxLength: 4,
});

describe('a room that is traced', () => {
  it('is square, and each side within the slips of the taps', () => {
    fc.assert(
      fc.property(slips, fc.boolean(), (off, isClockwise) => {
        const taps = tapsOn([0, 0], [4000, 3000], off);
        const outline = tracedOutline(storeyOf(job), isClockwise ? taps.toReversed() : taps);
        if (outline === null) throw new Error('No outline.');
        const sides = outline.map((from, i) => minus(outline[(i + 1) % 4] ?? from, from));
        for (const [x, y] of sides) expect(Math.min(Math.abs(x), Math.abs(y))).toBeLessThan(0.1);
        const lengths = sides.map(lengthOf).toSorted((a, b) => a - b);
        expect(Math.abs((lengths[0] ?? 0) - 3000)).toBeLessThanOrEqual(80.2);
        expect(Math.abs((lengths[3] ?? 0) - 4000)).toBeLessThanOrEqual(80.2);
      }),
    );
  });

  it('shares the wall with the room beside it, however the taps slip', () => {
    fc.assert(
      fc.property(slips, slips, (one, two) => {
        const a = traceRoom(job, storeyOf(job).id, {
          name: 'A',
          use: 'living',
          walls: usualOuter,
          corners: tapsOn([0, 0], [4000, 3000], one),
        });
        if (!a.ok) throw new Error(a.why);
        const withA = produce(job, a.edit.change);
        const b = traceRoom(withA, storeyOf(job).id, {
          name: 'B',
          use: 'dining',
          walls: usualInner,
          corners: tapsOn([4300, 0], [3000, 3000], two),
        });
        if (!b.ok) throw new Error(b.why);
        const both = produce(withA, b.edit.change);
        expect(readJob(both)).toMatchObject({ ok: true });
        const storey = storeyOf(both);
        const [wallsA, wallsB] = storey.rooms.map(({ walls }) => walls.map(({ wall }) => wall));
        expect(wallsA?.filter((wall) => wallsB?.includes(wall))).toHaveLength(1);
        for (const room of storey.rooms) expect(roomSides(storey, room)).toHaveLength(4);
      }),
      { numRuns: 40 },
    );
  });

  it('is refused where its corners tell none', () => {
    const trace = (corners: readonly Vector[]) =>
      traceRoom(job, storeyOf(job).id, { name: 'A', use: 'living', walls: usualOuter, corners });
    for (const corners of [
      [],
      [[0, 0]],
      [
        [0, 0],
        [1000, 0],
      ],
      [
        [0, 0],
        [10, 0],
        [20, 0],
        [0, 10],
      ],
    ] as const)
      expect(trace(corners)).toMatchObject({ ok: false });
  });
});
