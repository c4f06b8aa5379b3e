import type { Table } from './table.ts';

/**
 * Greatest energy that a circuit-breaker up to 16 A with a rated short-circuit capacity of 10 kA may let through
 * at that capacity, A²s, by its energy-limiting class. These are ceilings at the full capacity, far above what a
 * device lets through at the fault level of a house: they never make a failure. What was not seen in print
 * (other capacities and ratings) is left out on purpose; the maker’s own figures go before any of this.
 */
export const letThroughClass = {
  source: {
    ref: 'BS EN 60898-1',
    where: 'Annex ZA',
    checked: 'https://electriciansforums.net/threads/adiabatic-equation.20007/post-146036',
  },
  rows: [
    { curve: 'B', energyClass: 3, uptoA: 16, breakingKA: 10, letThroughA2s: 70_000, status: 'seen' },
    { curve: 'C', energyClass: 3, uptoA: 16, breakingKA: 10, letThroughA2s: 84_000, status: 'seen' },
    { curve: 'B', energyClass: 2, uptoA: 16, breakingKA: 10, letThroughA2s: 240_000, status: 'seen' },
    { curve: 'C', energyClass: 2, uptoA: 16, breakingKA: 10, letThroughA2s: 290_000, status: 'seen' },
  ],
} as const satisfies Table;
