import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { cutPlan } from '#engine/price/buying/cut-plan.ts';
import { randomCutList } from '../engine/price/buying/random-cut-list.ts';
import { cutListShape, cuttingModel, leastCutByHighs } from './cutting-in-highs.ts';
import type { Highs } from './partition-in-highs.ts';

/** Another seed gives other lists; the failure message names the one list that it is about. */
const SEED = 20_261_126;
const LISTS = 300;
const LONG_LISTS = 16;
const STEPS = 5_000_000;

const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

describe('buying for a cut list against an integer programming solver', () => {
  let highs: Highs;
  beforeAll(async () => {
    highs = await loadHighs();
  });

  it(`costs the same in ${LISTS} random cut lists of 3 to 20 pieces, and says that it is proved`, () => {
    const oursMs: number[] = [];
    const theirsMs: number[] = [];
    for (let i = 0; i < LISTS; i++) {
      const list = randomCutList(SEED + i, cutListShape(i));
      const model = cuttingModel(list);
      const start = performance.now();
      const ours = cutPlan(list.pieces, list.offers, list.vanMm, STEPS);
      const between = performance.now();
      const theirs = leastCutByHighs(highs, model);
      oursMs.push(between - start);
      theirsMs.push(performance.now() - between);
      const what = `seed ${SEED + i}, ${list.pieces.length} pieces`;
      expect(ours.millipence / 1000, what).toBe(theirs);
      expect(ours.boundMillipence, what).toBe(ours.millipence);
      expect(ours.unserved, what).toEqual([]);
    }
    const sum = (times: readonly number[]) => times.reduce((all, ms) => all + ms, 0);
    console.info(
      `${LISTS} cut lists: ours ${sum(oursMs).toFixed(0)} ms (median ${medianOf(oursMs).toFixed(3)}, worst ${Math.max(...oursMs).toFixed(1)}), ` +
        `HiGHS ${sum(theirsMs).toFixed(0)} ms (median ${medianOf(theirsMs).toFixed(1)}); ${(sum(theirsMs) / sum(oursMs)).toFixed(0)} times, by the median ${(medianOf(theirsMs) / medianOf(oursMs)).toFixed(0)}`,
    );
  }, 240_000);

  it('tells a bound and a gap beyond twenty pieces that hold against its optimum', () => {
    for (let i = 0; i < LONG_LISTS; i++) {
      const pieces = 22 + ((i * 5) % 24);
      const list = randomCutList(SEED + 1000 + i, {
        pieces,
        fromMm: 2500,
        toMm: 11_500,
        kinds: 4,
        wholesM: [25],
        stepsMm: i % 2 === 0 ? [1000] : [],
        van: 2,
      });
      const theirs = leastCutByHighs(highs, cuttingModel(list));
      for (const steps of [0, 200, STEPS]) {
        const ours = cutPlan(list.pieces, list.offers, list.vanMm, steps);
        const what = `seed ${SEED + 1000 + i}, ${pieces} pieces, ${steps} steps`;
        expect(ours.boundMillipence / 1000, what).toBeLessThanOrEqual(theirs);
        expect(ours.millipence / 1000, what).toBeGreaterThanOrEqual(theirs);
      }
    }
  }, 120_000);
});
