import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { type DemoName, demoJob } from './demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };
const WARM_UPS = 8;
const ROUNDS = 15;

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
 * Budgets, ms: about four times what a small busy machine with two cores takes, so that they catch what makes
 * the engine several times slower and nothing less. The share of the whole that one scheme may take while
 * something moves does not depend on the machine; a job of few small schemes is mostly house.
 */
const budgets: readonly [DemoName, { wholeMs: number; liveMs: number; liveShare: number }][] = [
  ['saltglass-row', { wholeMs: 400, liveMs: 60, liveShare: 1 / 4 }],
  ['saltglass-row-quoting', { wholeMs: 480, liveMs: 60, liveShare: 1 / 4 }],
  ['fernlow-close', { wholeMs: 140, liveMs: 60, liveShare: 1 / 2 }],
];

describe('the time that an estimate takes', () => {
  it.each(budgets)('stays within bounds for %s', { timeout: 60_000 }, (name, budget) => {
    const job = demoJob(name);
    const whole = () => estimate(job, library, when);
    const lives = job.schemes.map(
      ({ id }) =>
        () =>
          estimate(job, library, when, { schemeIds: [id], depth: 'live' }),
    );
    for (let round = 0; round < WARM_UPS; round += 1) for (const work of [whole, ...lives]) work();
    // Whole and live by turns, so that what else the machine does weighs on both alike.
    const rounds = Array.from({ length: ROUNDS }, () => ({ whole: msOf(whole), lives: lives.map(msOf) }));
    const wholeMs = medianOf(rounds.map((round) => round.whole));
    const liveMs = medianOf(rounds.flatMap((round) => round.lives));
    expect(wholeMs).toBeLessThan(budget.wholeMs);
    expect(liveMs).toBeLessThan(budget.liveMs);
    expect(liveMs / wholeMs).toBeLessThan(budget.liveShare);
  });
});
