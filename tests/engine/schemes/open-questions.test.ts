import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const withoutPlaces = (ids: readonly string[]): Job => ({
  ...job,
  points: job.points.map((point) => {
    if (!ids.includes(point.id)) return point;
    const { place: _, ...rest } = point;
    return rest;
  }),
});
const placesAsked = (of: Job) =>
  schemeOf(estimateOf(of), 'spurs-rcbo').openQuestions.find(({ question }) => question === 'places');

describe('points without a place among the open questions', () => {
  it('are asked for by name, at what their typical lengths widen the price by', () => {
    const one = placesAsked(withoutPlaces(['w1-living1']));
    expect(one?.subjects).toEqual(['w1-living1']);
    expect(one?.worthPence).toBeGreaterThan(0);
    const two = placesAsked(withoutPlaces(['w1-living1', 'w2-bedroom']));
    expect(two?.subjects).toEqual(['w1-living1', 'w2-bedroom']);
    expect(two?.worthPence).toBeGreaterThan(one?.worthPence ?? 0);
  });

  it('are not asked for when all have one', () => {
    expect(placesAsked(job)).toBeUndefined();
  });
});
