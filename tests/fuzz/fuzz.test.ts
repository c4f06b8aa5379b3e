import { describe, expect, it } from 'vitest';
import { chanceOf } from './chance.ts';
import { fuzzRun } from './fuzz-run.ts';
import { mutatedJson } from './mutate-json.ts';

// A million: npm run -s fuzz.
const CASES = 1500;
const MOST_MS = 45_000;

describe('bad input', () => {
  it('of every kind is refused in words or read, and breaks nothing', async () => {
    const seed = 1 + Math.floor(Math.random() * 1e9);
    const result = await fuzzRun({ cases: CASES, seed, mostMs: MOST_MS, holdMemory: false, say: () => {} });
    expect(result.breaches, `seed ${seed}`).toEqual([]);
    expect(result.cases).toBeGreaterThan(100);
  });
});

describe('the cases of a run', () => {
  it('are the same for the same seed, and others for another', () => {
    const text = JSON.stringify({ a: [1, 2, { b: 'x', c: [true, null] }], d: { e: 5 } });
    const made = (seed: number) =>
      Array.from({ length: 30 }, (_, i) => JSON.stringify(mutatedJson(chanceOf(seed + i), text)));
    expect(made(1)).toEqual(made(1));
    expect(made(1)).not.toEqual(made(1000));
    expect(new Set(made(1)).size).toBeGreaterThan(20);
  });
});
