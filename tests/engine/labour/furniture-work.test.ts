import { describe, expect, it } from 'vitest';
import type { Site } from '#model/building.ts';
import type { Terms } from '#model/job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');

function moving(furniture: Terms['furniture'], site: Partial<Site> = {}) {
  const terms = { ...job.terms, ...(furniture === undefined ? {} : { furniture }) };
  const schemes = job.schemes.slice(0, 1);
  const [scheme] = estimateOf({ ...job, site: { ...job.site, ...site }, terms, schemes }).schemes;
  if (scheme === undefined) throw new Error('no scheme');
  return { task: scheme.labour.find(({ task }) => task === 'move-furniture'), scheme };
}

describe('moving furniture', () => {
  it('is not priced where nobody has said who does it, or the customer does', () => {
    expect(moving(undefined).task).toBeUndefined();
    expect(moving('customer').task).toBeUndefined();
    expect(moving('customer').scheme.totals).toEqual(moving(undefined).scheme.totals);
  });

  it('is priced once for each room that is worked in, with all that causes it', () => {
    const { task } = moving('firm');
    // W1 in the living room, its cable chased in the hall at R1; W2 and W3 in a bedroom each; W4 in the kitchen.
    expect(task).toMatchObject({ unit: 'room', stage: 'before', quantity: 5, typicalMin: 75 });
    expect(task?.causes).toEqual(expect.arrayContaining(['w1-living1']));
  });

  it('is nothing in a house where nobody lives', () => {
    expect(moving('firm', { occupied: false }).task).toBeUndefined();
  });
});
