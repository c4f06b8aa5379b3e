import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readingsJson } from '#exports/readings-json.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { demoFile, root, runScript } from './run-script.ts';

const run = (...args: readonly string[]) => runScript('readings.ts', ...args);

describe('the readings command', () => {
  it('prints order, places, legs and what cannot be told', async () => {
    const { code, out, err } = await run(demoFile('saltglass-row'));
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('R1 – R2 – R3 – R4 – R5 – R6 – R7 – R8 – R9');
    expect(out).toMatch(/S1 .*Spur of 7\.1 m/);
    expect(out).not.toMatch(/safe to/i);
  });

  it('says the same as JSON', async () => {
    const { code, out } = await run(demoFile('fernlow-close'), '--json');
    expect(code).toBe(0);
    expect(out).toBe(readingsJson(demoJob('fernlow-close')));
  });

  it('says so where nothing was read', async () => {
    const { code, out } = await run(demoFile('saltglass-row-quoting'));
    expect(code).toBe(0);
    expect(out).toContain('no loop was read');
  });

  it('ends with 2 for a file that is not there, one that is no job, and a call without one', async () => {
    const missing = await run(demoFile('no-such-job'));
    const foreign = await run(join(root, 'package.json'));
    const nothing = await run();
    expect([missing.code, foreign.code, nothing.code]).toEqual([2, 2, 2]);
    expect(missing.err).toContain('no such job file');
    expect(foreign.err).toContain('no Ringwright job file');
    expect(nothing.err).toContain('Usage');
  });
});
