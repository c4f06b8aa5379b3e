import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { withPartsOf } from '../../../ui/found-ways/parts-of.ts';

const job = demoJob('saltglass-row');

describe('a copy with the parts that it had before', () => {
  it('is the earlier data where nothing differs', () => {
    expect(withPartsOf(structuredClone(job), job)).toBe(job);
  });

  it('shares all but the one thing that moved', () => {
    const copy = structuredClone(job);
    const moved = {
      ...copy,
      points: copy.points.map((point, i) => (i === 2 ? { ...point, label: 'Moved' } : point)),
    };
    const shared = withPartsOf(moved, job);
    expect(shared).toEqual(moved);
    expect(shared.storeys).toBe(job.storeys);
    expect(shared.points.map((point, i) => point === job.points[i])).toEqual(
      job.points.map((_, i) => i !== 2),
    );
  });

  it('drops keys that are gone, and takes those that are new', () => {
    const before: { a: number; b?: number[]; c?: number } = { a: 1, b: [1] };
    expect(withPartsOf<typeof before>({ a: 1, c: 2 }, before)).toEqual({ a: 1, c: 2 });
  });
});
