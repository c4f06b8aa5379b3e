import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { liftedBoards } from '#engine/ways/lifted-boards.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import { type SharedWay, sharedWays } from '#engine/ways/shared-ways.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

const chase = (x: number, fromMm: number, toMm: number, rest: Partial<Segment> = {}): Segment =>
  segmentOf(spotAt(x, 0, fromMm), spotAt(x, 0, toMm), { medium: 'wall-chase', wallId: 'w1', ...rest });

const two = (a: readonly Segment[], b: readonly Segment[]): SharedWay | undefined =>
  sharedWays([runOf('a', 'p', 'q', a), runOf('b', 'q', 'r', b)]).get('a')?.[0];

const nought = {
  runId: 'b',
  ...{ oneChaseMm: 0, ownChasesMm: 0, oneChannelMm: 0, ownChannelsMm: 0 },
  ...{ jointHoles: 0, ownHoles: 0, jointWallHoles: 0, ownWallHoles: 0, boards: 0 },
};

describe('what two cables share', () => {
  it('is a chase as far as both lie in it, whichever way each is laid', () => {
    expect(two([chase(0, 450, 0)], [chase(0, 200, 1100)])).toEqual({ ...nought, ownChasesMm: 250 });
  });

  it('is one chase where somebody said so', () => {
    expect(two([chase(0, 450, 0, { bundle: 'x' })], [chase(0, 0, 450, { bundle: 'x' })])).toEqual({
      ...nought,
      oneChaseMm: 450,
    });
  });

  it.each([
    ['60 mm apart', 60, 450],
    ['61 mm apart', 61, undefined],
  ])('counts as beside each other up to 60 mm: %s', (_, apartMm, sharedMm) => {
    expect(two([chase(0, 450, 0)], [chase(apartMm, 450, 0)])?.ownChasesMm).toBe(sharedMm);
  });

  it('is nothing on two walls, in two media, or end to end', () => {
    expect(two([chase(0, 450, 0)], [chase(0, 450, 0, { wallId: 'w2' })])).toBeUndefined();
    expect(two([chase(0, 450, 0)], [chase(0, 450, 0, { medium: 'surface-channel' })])).toBeUndefined();
    expect(two([chase(0, 450, 0)], [chase(0, 1100, 450)])).toBeUndefined();
  });

  it('is not told under 100 mm', () => {
    expect(two([chase(0, 450, 0)], [chase(0, 99, 0)])).toBeUndefined();
    expect(two([chase(0, 450, 0)], [chase(0, 100, 0)])?.ownChasesMm).toBe(100);
  });

  it('is a hole through a wall at one place', () => {
    const hole = (x: number): Segment =>
      segmentOf(spotAt(x, 0, 450), spotAt(x, 130, 450), { medium: 'through-wall', wallId: 'w1' });
    expect(two([hole(0)], [hole(60)])).toEqual({ ...nought, ownWallHoles: 1 });
    expect(two([hole(0)], [hole(61)])).toBeUndefined();
  });
});

const pairsOf = (runs: readonly Run[]) =>
  [...sharedWays(runs)].flatMap(([id, ways]) =>
    ways.map(({ runId, ...rest }) => ({ id, runId, rest: JSON.stringify(rest) })),
  );

describe('what the cables of a scheme share', () => {
  it('is said of both alike, and of none with itself', () => {
    for (const name of demoNames)
      for (const { worked } of demoEstimate(name).schemes) {
        const pairs = pairsOf(worked.runs);
        for (const { id, runId, rest } of pairs) {
          expect(id).not.toBe(runId);
          expect(pairs).toContainEqual({ id: runId, runId: id, rest });
        }
      }
  });

  it('has every board that comes up for more than one, once for each pair', () => {
    for (const name of demoNames)
      for (const { worked } of demoEstimate(name).schemes) {
        const pairs = liftedBoards(worked.runs).reduce(
          (sum, { runIds }) => sum + runIds.length * (runIds.length - 1),
          0,
        );
        const told = [...sharedWays(worked.runs).values()]
          .flat()
          .reduce((sum, { boards }) => sum + boards, 0);
        expect(told).toBe(pairs);
      }
  });

  it('is as long as the stretch that both heights have in common, for any heights', () => {
    const height = fc.integer({ min: 0, max: 2400 });
    fc.assert(
      fc.property(height, height, height, height, (a, b, c, d) => {
        const inBoth = Array.from({ length: 2400 }, (_, mm) => mm + 0.5).filter(
          (mm) => mm > Math.min(a, b) && mm < Math.max(a, b) && mm > Math.min(c, d) && mm < Math.max(c, d),
        ).length;
        const told = two([chase(0, a, b)], [chase(0, c, d)])?.ownChasesMm ?? 0;
        expect(told).toBeCloseTo(inBoth < 100 ? 0 : inBoth, 6);
      }),
    );
  });
});
