import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { type DemoName, demoJob } from './demo-jobs/demo-estimates.ts';
import { yardstick } from './yardstick.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };
const WARM_UPS = 4;
const ROUNDS = 9;

const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** The time of the clock or of the processor, whichever is less: what else the machine does counts in neither. */
function msOf(work: () => unknown): number {
  const used = process.cpuUsage();
  const start = performance.now();
  work();
  const clockMs = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  return Math.min(clockMs, (user + system) / 1000);
}

/**
 * Budgets in yardsticks: about four times what an estimate takes on a busy machine, so that they catch what makes the engine several times slower
 * and nothing less, on any machine. `liveShare` is the share of the whole that one scheme may take while something moves; a job
 * of few small schemes is mostly house.
 */
const budgets: readonly [DemoName, { whole: number; live: number; liveShare: number }][] = [
  ['saltglass-row', { whole: 16, live: 2, liveShare: 1 / 4 }],
  ['saltglass-row-quoting', { whole: 36, live: 2, liveShare: 1 / 4 }],
  ['fernlow-close', { whole: 8, live: 2, liveShare: 1 / 2 }],
];

describe('the time that an estimate takes', () => {
  it.each(budgets)('stays within bounds for %s', { timeout: 120_000 }, (name, budget) => {
    const job = demoJob(name);
    const whole = () => estimate(job, library, when);
    const lives = job.schemes.map(
      ({ id }) =>
        () =>
          estimate(job, library, when, { schemeIds: [id], depth: 'live' }),
    );
    for (let round = 0; round < WARM_UPS; round += 1) for (const work of [whole, ...lives, yardstick]) work();
    // By turns, so that what else the machine does weighs on all alike.
    const rounds = Array.from({ length: ROUNDS }, () => ({
      whole: msOf(whole),
      lives: lives.map(msOf),
      yardMs: msOf(yardstick),
    }));
    const yardMs = medianOf(rounds.map((round) => round.yardMs));
    const wholeMs = medianOf(rounds.map((round) => round.whole));
    const liveMs = medianOf(rounds.flatMap((round) => round.lives));
    expect(wholeMs / yardMs).toBeLessThan(budget.whole);
    expect(liveMs / yardMs).toBeLessThan(budget.live);
    expect(liveMs / wholeMs).toBeLessThan(budget.liveShare);
  });
});
