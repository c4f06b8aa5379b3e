import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type EstimateAsk, Estimating } from '../../../ui/controllers/estimating.ts';
import { TestClock } from './test-clock.ts';

const library = demoLibrary();
const date = '2026-11-25';

function begin(job: Job, schemeId: string | null = null) {
  const clock = new TestClock();
  const told = { times: 0 };
  const ask: EstimateAsk = { job, library, date, revision: 1, schemeId };
  const estimating = new Estimating(
    ask,
    () => {
      told.times++;
    },
    clock,
  );
  return { clock, told, estimating, ask };
}

/** The job with one of its points further along its wall. */
const withPointMoved = (job: Job, label: string, byMm: number): Job =>
  produce(job, ({ points }) => {
    const place = points.find((point) => point.label === label)?.place;
    if (place !== undefined && 'wall' in place) place.alongMm += byMm;
  });

describe('estimating in the browser', () => {
  it.each(demoNames)('comes to what the engine says of all of %s at once', (name) => {
    const job = demoJob(name);
    const { estimating, clock, ask } = begin(job);
    expect(estimating.worked.whole).toEqual(estimate(job, library, { date, revision: 1 }));
    const dearer = produce(job, ({ terms }) => {
      terms.markupPercent = 35;
    });
    estimating.take({ ...ask, job: dearer, revision: 2 });
    clock.pass(1000);
    expect(estimating.worked.whole).toEqual(estimate(dearer, library, { date, revision: 2 }));
    expect(estimating.worked.moving).toBe(false);
  });

  it('shows the cheapest scheme that may go ahead, unless another is asked for', () => {
    const job = demoJob('saltglass-row');
    const { estimating, ask } = begin(job);
    expect(estimating.worked.scheme?.id).toBe(estimating.worked.whole.cheapestId);
    const other = job.schemes.find(({ id }) => id !== estimating.worked.whole.cheapestId);
    estimating.take({ ...ask, schemeId: other?.id ?? '' });
    expect(estimating.worked.scheme?.id).toBe(other?.id);
    expect(estimating.worked.moving).toBe(false);
  });

  it('works the shown scheme out at once after an edit, and all of them once the hand rests', () => {
    const job = demoJob('saltglass-row');
    const { estimating, clock, told, ask } = begin(job);
    const before = estimating.worked;
    const moved = withPointMoved(job, 'W1', 300);
    estimating.take({ ...ask, job: moved });
    expect(estimating.worked.job).toBe(moved);
    expect(estimating.worked.moving).toBe(true);
    expect(estimating.worked.scheme?.totals).not.toEqual(before.scheme?.totals);
    expect(estimating.worked.whole.schemes).toBe(before.whole.schemes);
    expect(told.times).toBe(0);
    clock.pass(149);
    expect(estimating.worked.moving).toBe(true);
    clock.pass(1);
    expect(estimating.worked.moving).toBe(false);
    expect(told.times).toBe(1);
  });

  it('shows what remedies cost as it was before, until it is worked out again', () => {
    const job = demoJob('saltglass-row');
    const { estimating, clock, ask } = begin(job);
    const costs = (): readonly (number | null)[] =>
      (estimating.worked.scheme?.findings ?? [])
        .filter(({ fix, outcome }) => fix !== null && outcome !== 'passes')
        .map(({ consequencePence }) => consequencePence);
    const before = costs();
    expect(before.some((pence) => pence !== null)).toBe(true);
    const dearer = produce(job, ({ terms }) => {
      terms.markupPercent = 90;
    });
    estimating.take({ ...ask, job: dearer });
    expect(costs()).toEqual(before);
    clock.pass(1000);
    expect(costs()).not.toEqual(before);
  });

  it('works out one scheme a picture while something moves, however often the hand moves', () => {
    const job = demoJob('saltglass-row');
    const { estimating, clock, told, ask } = begin(job);
    let last = job;
    for (let i = 1; i <= 10; i++) {
      last = withPointMoved(job, 'W1', 10 * i);
      estimating.take({ ...ask, job: last }, true);
    }
    expect(estimating.worked.job).toBe(job);
    clock.draw();
    expect(clock.frames).toBe(1);
    expect(told.times).toBe(1);
    expect(estimating.worked.job).toBe(last);
    clock.pass(5000);
    expect(estimating.worked.moving).toBe(true);
  });

  it('works all schemes out when the moving thing rests where it was last', () => {
    const job = demoJob('saltglass-row');
    const { estimating, clock, ask } = begin(job);
    const moved = withPointMoved(job, 'W1', 50);
    estimating.take({ ...ask, job: moved }, true);
    clock.draw();
    estimating.take({ ...ask, job: moved }, false);
    clock.pass(150);
    expect(estimating.worked.moving).toBe(false);
    expect(estimating.worked.whole).toEqual(estimate(moved, library, { date, revision: 1 }));
  });

  it('does not put the whole estimate off for a save or a look at another scheme', () => {
    const job = demoJob('saltglass-row');
    const { estimating, clock, ask } = begin(job);
    const moved = withPointMoved(job, 'W1', 50);
    estimating.take({ ...ask, job: moved });
    clock.pass(100);
    const other = job.schemes.at(-1)?.id ?? '';
    estimating.take({ ...ask, job: moved, revision: 2, schemeId: other });
    expect(estimating.worked.scheme?.id).toBe(other);
    clock.pass(50);
    expect(estimating.worked.moving).toBe(false);
    expect(estimating.worked.scheme?.id).toBe(other);
    expect(estimating.worked.whole.revision).toBe(2);
  });

  it('has no scheme for a job without one, and finds the first that is made', () => {
    const job = produce(demoJob('fernlow-close'), (draft) => {
      draft.schemes = [];
    });
    const { estimating, clock, ask } = begin(job);
    expect(estimating.worked.scheme).toBeNull();
    const made = produce(job, ({ schemes }) => {
      schemes.push({ id: 'first', name: 'First', connections: [], remedies: [], locks: [] });
    });
    estimating.take({ ...ask, job: made });
    expect(estimating.worked.scheme?.id).toBe('first');
    estimating.take({ ...ask, job });
    expect(estimating.worked.scheme).toBeNull();
    clock.pass(1000);
    expect(estimating.worked.whole.schemes).toEqual([]);
  });

  it('works nothing out once it is stopped', () => {
    const job = demoJob('fernlow-close');
    const { estimating, clock, told, ask } = begin(job);
    estimating.take({ ...ask, job: withPointMoved(job, 'B1', 20) });
    estimating.stop();
    clock.pass(5000);
    expect(told.times).toBe(0);
    expect(clock.waiting).toBe(0);
  });
});
