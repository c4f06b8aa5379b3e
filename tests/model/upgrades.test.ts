import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { type Upgrade, upgradeJob } from '#model/upgrades.ts';
import { put } from './change.ts';
import { smallJob } from './small-job.ts';

// A made-up version 0 that measured legs in metres, and a version -1 before it that had no stock.
const fromZero: Upgrade = {
  from: 0,
  upgrade: (job) => ({
    ...job,
    legs: (job.legs as { lengthM: number }[]).map(({ lengthM, ...leg }) => ({
      ...leg,
      lengthMm: lengthM * 1000,
    })),
  }),
};
const fromBeforeZero: Upgrade = { from: -1, upgrade: (job) => ({ ...job, stock: [] }) };

function jobOfVersionZero(): Record<string, unknown> {
  const job = smallJob();
  const legs = (job.legs as { lengthMm: number }[]).map(({ lengthMm, ...leg }) => ({
    ...leg,
    lengthM: lengthMm / 1000,
  }));
  return { ...job, version: 0, legs };
}

describe('a job of an older version', () => {
  it('is brought up to the present one and read', () => {
    expect(readJob(jobOfVersionZero(), [fromZero])).toEqual({ ok: true, job: smallJob() });
  });

  it('goes through every step in turn, in whatever order they are listed', () => {
    const { stock: _, ...rest } = jobOfVersionZero();
    const older = { ...rest, version: -1 };
    const result = upgradeJob(older, [fromZero, fromBeforeZero]);
    expect(result).toEqual({ ok: true, job: { ...smallJob(), stock: [] } });
  });

  it('is not itself changed', () => {
    const input = jobOfVersionZero();
    upgradeJob(input, [fromZero]);
    expect(input).toEqual(jobOfVersionZero());
  });

  it('has its faults told by the paths of the present version', () => {
    const result = readJob(put(jobOfVersionZero(), ['legs', 0, 'lengthM'], -1), [fromZero]);
    expect(result.ok ? [] : result.faults.map(({ path, code }) => [path, code])).toEqual([
      ['legs[0].lengthMm', 'out-of-range'],
    ]);
  });

  it('that trips a step is one fault and no exception', () => {
    const result = readJob({ ...jobOfVersionZero(), legs: 'none' }, [fromZero]);
    expect(result.ok ? [] : result.faults.map(({ path, code }) => [path, code])).toEqual([
      ['version', 'upgrade-failed'],
    ]);
  });

  it('is refused where a step is missing', () => {
    const result = readJob({ ...jobOfVersionZero(), version: -1 }, [fromZero]);
    expect(result.ok ? [] : result.faults.map(({ code }) => code)).toEqual(['no-upgrade']);
  });
});

describe('a job of the present version', () => {
  it('is left as it is', () => {
    const input = smallJob();
    const result = upgradeJob(input, [fromZero]);
    expect(result.ok && result.job).toBe(input);
  });
});
