import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { partOfPath } from '#engine/ways/part-of-path.ts';
import { positionInLeg } from '#engine/ways/position-in-leg.ts';
import { pathLengthMm } from '#engine/ways/segment.ts';
import { runOf, segmentOf } from '../rules/facts-builder.ts';

const at = (x: number) => ({ storeyId: 'gf', at: planPoint(x, 0), heightMm: 0, levelMm: 0 });
const stretch = (fromMm: number, toMm: number) =>
  segmentOf({ from: at(fromMm), to: at(toMm), lengthMm: toMm - fromMm });

/** 1 m, 2 m and 3 m of way, and 6.4 m of cable with its tails of 200 mm. */
const run = runOf('leg', [stretch(0, 1000), stretch(1000, 3000), stretch(3000, 6000)], {
  endsMm: 400,
  lengthMm: 6400,
});
const spans = (fromMm: number, toMm: number) =>
  partOfPath(run, { fromMm, toMm }, defaultLengthAllowances).map(({ from, to }) => [from.at[0], to.at[0]]);

describe('the part of a path that a part of its cable lies in', () => {
  it('is cut where the cable is', () => {
    expect(spans(700, 4200)).toEqual([
      [500, 1000],
      [1000, 3000],
      [3000, 4000],
    ]);
  });

  it('leaves out what it does not come into, at a corner as well', () => {
    expect(spans(1200, 3200)).toEqual([[1000, 3000]]);
    expect(spans(4200, 5200)).toEqual([[4000, 5000]]);
  });

  it('is a spot at that end for what lies in a tail', () => {
    expect(spans(0, 150)).toEqual([[0, 0]]);
    expect(spans(6250, 6400)).toEqual([[6000, 6000]]);
  });

  it('is the whole path for the whole cable, and parts end to end make it up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6400 }), (cutMm) => {
        const parts = [
          { fromMm: 0, toMm: cutMm },
          { fromMm: cutMm, toMm: 6400 },
        ].map((part) => partOfPath(run, part, defaultLengthAllowances));
        expect(parts.map(pathLengthMm).reduce((a, b) => a + b)).toBeCloseTo(6000, 6);
        const spot = positionInLeg(run, cutMm, defaultLengthAllowances);
        expect(parts[0]?.at(-1)?.to.at[0]).toBeCloseTo(spot?.at[0] ?? Number.NaN, 6);
        expect(parts[1]?.[0]?.from.at[0]).toBeCloseTo(spot?.at[0] ?? Number.NaN, 6);
      }),
      { seed: 43 },
    );
    expect(partOfPath(run, { fromMm: 0, toMm: 6400 }, defaultLengthAllowances)).toEqual(run.segments);
  });
});
