import { describe, expect, it } from 'vitest';
import { clipCount, clipDemands } from '#engine/takeoff/clip-lines.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import type { Segment } from '#engine/ways/run.ts';
import { runOf, segmentOf, spotAt, twinAndEarth } from '#tests/engine/connections/wiring-builder.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

function level(lengthMm: number, rest: Partial<Segment> = {}): Segment {
  return segmentOf(spotAt(0, 0, -110), spotAt(lengthMm, 0, -110), rest);
}

const run = runOf('n', 'a', 'w');

describe('clips', () => {
  it.each([
    [149, 0],
    [150, 2],
    [300, 2],
    [301, 3],
    [3000, 11],
  ])('on %i mm level of 2.5 mm² cable: %i', (lengthMm, count) => {
    expect(clipCount(run, level(lengthMm), usualCounts)).toBe(count);
  });

  it.each([
    [400, 2],
    [401, 3],
  ])('on %i mm upright: %i', (heightMm, count) => {
    const upright = segmentOf(spotAt(0, 0, 0), spotAt(0, 0, heightMm), { medium: 'surface-clipped' });
    expect(clipCount(run, upright, usualCounts)).toBe(count);
  });

  it.each([
    [1, 250],
    [1.5, 250],
    [2.5, 300],
    [6, 300],
    [10, 350],
    [16, 350],
  ])('of %f mm² cable stand %i mm apart at most', (lineMm2, spacingMm) => {
    const thick = { ...run, cable: { ...twinAndEarth, lineMm2 } };
    expect(clipCount(thick, level(spacingMm * 2), usualCounts)).toBe(3);
    expect(clipCount(thick, level(spacingMm * 2 + 1), usualCounts)).toBe(4);
  });

  it.each([
    ['drilled joists', { medium: 'void-across', joistsCrossed: 2 }],
    ['a tube', { medium: 'wall-chase', containment: 'oval' }],
    ['a stud wall', { medium: 'stud-cavity' }],
    ['a wall', { medium: 'through-wall' }],
    ['the ground', { medium: 'buried' }],
  ] as const)('are none in %s', (_, rest) => {
    expect(clipCount(run, level(1000, rest), usualCounts)).toBe(0);
  });

  it('are of metal one in three on a surface, so that cable does not hang in a fire', () => {
    const surface = { ...run, segments: [level(2400, { medium: 'surface-clipped' })] };
    expect(measuredByItem(clipDemands(workedOf({ runs: [surface] }), usualCounts))).toEqual({
      'clip-flat-2.5': 6,
      'clip-metal': 3,
    });
  });

  it('are of metal every metre inside plastic channel', () => {
    const channel = {
      ...run,
      segments: [level(2400, { medium: 'surface-channel', containment: 'channel' })],
    };
    expect(measuredByItem(clipDemands(workedOf({ runs: [channel] }), usualCounts))).toEqual({
      'clip-metal': 3,
    });
  });

  it.each([
    [1.5, 'clip-flat-1.5'],
    [1, 'clip-flat-1.5'],
    [2.5, 'clip-flat-2.5'],
    [5, 'clip-flat-6'],
  ])('fit the cable: %f mm² takes %s', (lineMm2, item) => {
    const sized = { ...run, cable: { ...twinAndEarth, lineMm2 }, segments: [level(1000)] };
    expect(Object.keys(measuredByItem(clipDemands(workedOf({ runs: [sized] }), usualCounts)))).toEqual([
      item,
    ]);
  });
});
