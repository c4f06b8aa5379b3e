import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { standsAgainst } from '../../../ui/found-ways/stands-against.ts';

const library = demoLibrary();
const job = demoJob('quarrel-court');
const told = (of: Job, locked: readonly Connection[] = []): readonly string[] =>
  standsAgainst(of, library, locked).map(({ rule, subject }) => `${rule} ${subject}`);

describe('what stands against every way', () => {
  it('is nothing in a job that has ways that pass', () => {
    for (const name of demoNames) expect(standsAgainst(demoJob(name), library, []), name).toEqual([]);
  });

  it('is a point that is wanted where another is, told once', () => {
    const points = job.points.flatMap((point) =>
      point.id === 'w1-livingr' ? [point, { ...point, id: 'w9-again', label: 'W9' }] : [point],
    );
    expect(told({ ...job, points }).filter((one) => one.startsWith('PO14'))).toEqual(['PO14 w9-again']);
  });

  it('is what breaks a rule by itself of what is held fast', () => {
    const saltglass = demoJob('saltglass-row');
    const spur: Connection = {
      id: 'held',
      kind: 'spur',
      from: { point: 's1-bedroom' },
      to: 'w2-bedroom',
    };
    expect(told(saltglass, [spur]).some((one) => one.startsWith('SP3'))).toBe(true);
    expect(told(saltglass, [spur]).some((one) => one.startsWith('CN2'))).toBe(false);
  });
});
