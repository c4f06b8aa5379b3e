import { describe, expect, it } from 'vitest';
import { multiplesWithin, roundStep } from '#drawing/plot-axes.ts';

describe('the axes of a chart', () => {
  it('are divided by ones, twos and fives', () => {
    expect([roundStep(13, 6), roundStep(61, 6), roundStep(70, 14), roundStep(0.9, 6)]).toEqual([
      5, 20, 5, 0.2,
    ]);
  });

  it('show the round values from end to end, both included', () => {
    expect(multiplesWithin(0, 10, 5)).toEqual([0, 5, 10]);
    expect(multiplesWithin(7, 21, 5)).toEqual([10, 15, 20]);
    expect(multiplesWithin(6, 7, 5)).toEqual([]);
  });
});
