import { describe, expect, it } from 'vitest';
import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import { worstOpenLeg } from '#engine/proof/flow/worst-open-leg.ts';
import { networkOf } from './solved-flow.ts';

type Work = () => unknown;

const POINTS = 60;
const RING_POINTS = 45;
const loadA = Float64Array.from({ length: POINTS + 1 }, (_, node) => (node % 5) / 2);

/** A ring of 45 points and 15 spurs; with a bridge from a third to two thirds of the way round as a mesh. */
function sixtyPoints(bridges: readonly (readonly [number, number, number])[]): FlowNetwork {
  const ring = Array.from({ length: RING_POINTS + 1 }, (_, i) => {
    const next = (i + 1) % (RING_POINTS + 1);
    return [i, next, 0.02 + (i % 7) / 1000] as const;
  });
  const spurs = Array.from(
    { length: POINTS - RING_POINTS },
    (_, i) => [1 + ((i * 7) % RING_POINTS), RING_POINTS + 1 + i, 0.03] as const,
  );
  return networkOf(POINTS + 1, [...ring, ...spurs, ...bridges]);
}

const ring = sixtyPoints([]);
const mesh = sixtyPoints([[15, 30, 0.05]]);
const ringLegs = Array.from({ length: RING_POINTS + 1 }, (_, leg) => leg);

const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** The time that one of many repeats takes, warmed up, µs: the median of rounds. */
function microsecondsOf(work: Work, repeats: number): number {
  for (let i = 0; i < repeats * 5; i += 1) work();
  return medianOf(
    Array.from({ length: 15 }, () => {
      const start = performance.now();
      for (let i = 0; i < repeats; i += 1) work();
      return ((performance.now() - start) / repeats) * 1000;
    }),
  );
}

/** Bytes that one of many repeats leaves, warmed up: the median of rounds, since a collection may fall in any of them. */
function bytesOf(work: Work): number {
  const repeats = 20_000;
  for (let i = 0; i < repeats; i += 1) work();
  return medianOf(
    Array.from({ length: 15 }, () => {
      const before = process.memoryUsage().heapUsed;
      for (let i = 0; i < repeats; i += 1) work();
      return (process.memoryUsage().heapUsed - before) / repeats;
    }),
  );
}

function solving(network: FlowNetwork): Work {
  const plan = prepareFlow(network);
  const result = newFlowResult(plan);
  return () => solveFlow(plan, loadA, result);
}

/** Budgets, µs: at least ten times what a small machine with two cores takes, for what else it may be doing. */
const budgets: readonly { name: string; work: Work; repeats: number; budgetUs: number }[] = [
  { name: 'solves a ring of sixty points', work: solving(ring), repeats: 2000, budgetUs: 20 },
  { name: 'solves a mesh of sixty points', work: solving(mesh), repeats: 1000, budgetUs: 60 },
  { name: 'makes a ring of sixty points ready', work: () => prepareFlow(ring), repeats: 500, budgetUs: 100 },
  { name: 'makes a mesh of sixty points ready', work: () => prepareFlow(mesh), repeats: 200, budgetUs: 400 },
  {
    name: 'opens every leg of a ring',
    work: () => worstOpenLeg(ring, loadA, ringLegs),
    repeats: 200,
    budgetUs: 350,
  },
];

describe('the time and room that flows take', () => {
  it.each(budgets)('$name within its budget', ({ work, repeats, budgetUs }) => {
    expect(microsecondsOf(work, repeats)).toBeLessThan(budgetUs);
  });

  it.each([
    ['ring', ring],
    ['mesh', mesh],
  ] as const)('leaves no garbage from solving a %s', (shape, network) => {
    expect(prepareFlow(network).shape).toBe(shape);
    expect(bytesOf(solving(network))).toBeLessThan(4);
  });

  it('would see the smallest thing that were left', () => {
    const kept: { at: number }[] = [{ at: 0 }];
    const solve = solving(ring);
    expect(
      bytesOf(() => {
        solve();
        kept[0] = { at: kept.length };
      }),
    ).toBeGreaterThan(8);
  });
});
